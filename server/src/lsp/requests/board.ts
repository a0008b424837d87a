import { entriesOf } from '../../board/entries';
import { boardsToLookThrough, recognisedProfile } from '../../board/layer/recognised-profile';
import { canBeConfirmed } from '../../board/learn/confirm';
import { learnShape } from '../../board/learn/shape';
import { profileSkeleton } from '../../board/learn/skeleton';
import { type Profile, profileOf } from '../../board/profile/profile';
import { prove } from '../../board/prove';
import { scriptFromBoardText } from '../../board/to-script';
import { handOverOf, piecesOf } from '../../board/write';
import { titleOf } from '../../catalog/board-title';
import type { Catalog } from '../../catalog/catalog';
import { readHandOver } from '../../catalog/model/hand-over';
import { CraftView } from '../../craft/view';
import { blockedText, prepareBoardText } from '../../features/board/hand-over';
import { learned } from '../../features/board/learning';
import { toldProof } from '../../features/board/proof-text';
import { readSummary } from '../../features/board/read-summary';
import type { Workspace } from '../../workspace/workspace';
import type {
  BoardChoice,
  BoardTextAnswer,
  BoardTextParams,
  CapturedText,
  Learned,
  MadeProfile,
  MakeProfileParams,
  ProveAnswer,
  ReadAnswer,
} from '../protocol';
import type { Context, Served } from './row';

/** A capture longer than this is no board's listing. */
const longestCapture = 20_000_000;

export function boards({ session }: Served): readonly BoardChoice[] {
  return choices(session.workspace.catalog);
}

export function boardTextFor({ snapshot }: Context, params: BoardTextParams): BoardTextAnswer {
  const view = new CraftView(snapshot.craft, snapshot.pack);
  const profile = chosen(snapshot.catalog, params.board ?? view.craft.boardName());
  if (typeof profile === 'string') return noBoard(snapshot.catalog, profile);
  const since = params.since === null ? null : readHandOver(params.since);
  const { reason } = params;
  const prepared = prepareBoardText({ profile, view, findings: snapshot.findings(), since, reason });
  const { written, blocking, report, unchecked } = prepared;
  if (blocking.length > 0 && reason === null && !params.isPreview)
    return { kind: 'blocked', blocking: blockedText(blocking) };
  const end = profile.text.lineEnd === 'crlf' ? '\r\n' : '\n';
  const record = handOverOf(profile, view, written, blocking.length > 0 ? reason : null);
  return {
    kind: 'text',
    board: choiceOf(profile),
    pack: view.pack,
    pieces: piecesOf(profile, written.lines).map((lines) => lines.map((line) => line + end).join('')),
    count: written.count,
    unchecked,
    report,
    record: `${JSON.stringify(record, null, 2)}\n`,
  };
}

export async function scriptFromCapture(
  { session: { workspace } }: Served,
  { capture, board }: CapturedText,
): Promise<ReadAnswer> {
  const named = board ?? (isReadable(capture) ? await recognised(workspace, capture) : null);
  if (named !== null) await workspace.boardRead(named);
  const { catalog } = workspace;
  const profile = chosen(catalog, named);
  if (typeof profile === 'string') return noBoard(catalog, profile);
  const made = scriptFromBoardText(profile, catalog, capture);
  return { kind: 'script', text: made.text, board: choiceOf(profile), summary: readSummary(made) };
}

/** By a board that is known, else by those of the workspace. */
async function recognised(workspace: Workspace, capture: string): Promise<string | null> {
  const known = recognisedProfile(workspace.catalog, capture)?.name ?? null;
  if (known !== null) return known;
  for (const name of boardsToLookThrough(workspace.catalog)) await workspace.boardRead(name);
  return recognisedProfile(workspace.catalog, capture)?.name ?? null;
}

export function proof({ snapshot }: Context, { capture, board }: CapturedText): ProveAnswer {
  const view = new CraftView(snapshot.craft, snapshot.pack);
  const profile = chosen(snapshot.catalog, board ?? view.craft.boardName());
  if (typeof profile === 'string') return noBoard(snapshot.catalog, profile);
  if (!isReadable(capture)) return noBoard(snapshot.catalog, 'This is no text of a board.');
  const { entries } = entriesOf(profile, view);
  const proved = prove(profile, snapshot.catalog, entries, capture);
  const pack = view.pack === null ? '' : `, pack ${view.pack}`;
  const name = view.text('craft.name') ?? 'The script';
  return { kind: 'proof', ...toldProof(proved, `${name} on ${profile.title}${pack}`) };
}

export function learnedFrom({ session }: Served, { capture }: { readonly capture: string }): Learned {
  return learned(shapeOf(capture), session.workspace.catalog);
}

export function confirmableParameters({ session: { workspace } }: Served): readonly string[] {
  const { catalog } = workspace;
  return [...catalog.parameters.keys()].filter((name) => canBeConfirmed(catalog, name));
}

export function madeProfile(
  { session }: Served,
  { capture, name, confirmed }: MakeProfileParams,
): MadeProfile | null {
  const { catalog } = session.workspace;
  const skeleton = profileSkeleton(shapeOf(capture), name, new Map(confirmed), catalog);
  if (skeleton === null) return null;
  const { profile, mapped } = skeleton;
  const text = `${JSON.stringify(profile, null, 2)}\n`;
  return { text, mapped: mapped.length, own: profile.settings.length - mapped.length };
}

function shapeOf(capture: string) {
  return learnShape(isReadable(capture) ? capture : '');
}

function isReadable(capture: string): boolean {
  return capture.length <= longestCapture && !capture.includes('\u0000');
}

/** The profile, or the sentence that says why there is none. */
function chosen(catalog: Catalog, name: string | null): Profile | string {
  if (name === null) return 'Nothing says which board this is for.';
  const board = catalog.board(name);
  if (catalog.isFaulty(name)) return `The profile of ${name} has a fault, which is told in its file.`;
  if (board === undefined) return `There is no board ${name}.`;
  return profileOf(board) ?? `The profile of ${titleOf(board)} does not say how it writes its settings.`;
}

function noBoard(catalog: Catalog, message: string) {
  return { kind: 'no-board' as const, message, boards: choices(catalog) };
}

function choices(catalog: Catalog): readonly BoardChoice[] {
  const unread = catalog.unreadBoards().map((name) => ({ name, title: name }));
  const read = [...catalog.boards.values()].flatMap((board) => {
    const profile = profileOf(board);
    return profile === null ? [] : [choiceOf(profile)];
  });
  return [...read, ...unread];
}

function choiceOf({ name, title }: Profile): BoardChoice {
  return { name, title };
}
