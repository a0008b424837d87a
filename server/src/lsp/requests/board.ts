import { nothingBeside } from '../../board/kept/accepted';
import { makeScript } from '../../board/layer/make-script';
import { boardsToLookThrough, recognisedProfile } from '../../board/layer/recognised-profile';
import { type Profile, profileOf } from '../../board/profile/profile';
import { compareWithCapture } from '../../board/proving/compare';
import { entriesOf } from '../../board/writing/entries';
import { recordText } from '../../board/writing/record-text';
import { handOverOf, piecesOf } from '../../board/writing/write-text';
import { titleOf } from '../../catalog/board-title';
import type { Catalog } from '../../catalog/catalog';
import { readHandOver } from '../../catalog/model/hand-over';
import type { Finding } from '../../checks/report/finding';
import type { Craft } from '../../craft/craft';
import { CraftView } from '../../craft/view';
import { blockedText, prepareBoardText } from '../../features/board/hand-over';
import { ownFindings } from '../../features/board/held-back';
import { describedProof } from '../../features/board/proof-text';
import { readSummary } from '../../features/board/read-summary';
import { includedText } from '../../workspace/included-text';
import type { Workspace } from '../../workspace/workspace';
import type {
  BoardChoice,
  BoardTextAnswer,
  BoardTextParams,
  ProveAnswer,
  ProveParams,
  ReadAnswer,
  ReadParams,
} from '../board-protocol';
import type { Session } from '../session';
import type { ScriptContext } from './about-script';
import type { Services } from './row';

/** A capture longer than this is no board's listing. */
const longestCapture = 20_000_000;

export function boards({ session }: Services): readonly BoardChoice[] {
  return choices(session.workspace.catalog);
}

export function boardTextFor({ snapshot, session }: ScriptContext, params: BoardTextParams): BoardTextAnswer {
  const { catalog, craft } = snapshot;
  const view = new CraftView(craft, snapshot.pack);
  const captured = includedText(session.workspace, craft);
  const profile = chosen(catalog, params.board ?? view.craft.boardName());
  if (typeof profile === 'string' && (captured === null || params.board !== null))
    return noBoard(catalog, profile);
  const known = typeof profile === 'string' ? null : profile;
  const since = params.since === null ? null : readHandOver(params.since);
  const { reason } = params;
  const findings = [...snapshot.findings(), ...ofBoardText(session, craft)];
  const prepared = prepareBoardText({ profile: known, captured, view, findings, since, reason });
  const { written, entries, blocking, report, unchecked } = prepared;
  if (blocking.length > 0 && reason === null && !params.isPreview)
    return { kind: 'blocked', blocking: blockedText(blocking, session.workspace) };
  const board = known === null ? nobody : choiceOf(known);
  const record = handOverOf(board.name, view.pack, entries, blocking.length > 0 ? reason : null);
  return {
    kind: 'text',
    board,
    pack: view.pack,
    isAssumed: written.isAssumed,
    pieces: piecesOf(known, written),
    count: written.count,
    unchecked,
    report,
    record: recordText(record),
  };
}

function ofBoardText({ workspace }: Session, craft: Craft): readonly Finding[] {
  const script = craft.boardText();
  const layer = script === undefined ? undefined : workspace.layer(script.uri);
  // Of one that is included, the script's own findings say so.
  const isAlone = script === craft.root;
  return script === undefined || layer === undefined || !isAlone
    ? []
    : ownFindings(layer, script, workspace.catalog);
}

/** A board that nobody has described: only its own settings go to it, over its captured text. */
const nobody: BoardChoice = { name: '', title: 'the board' };

export async function scriptFromCapture(
  { session: { workspace } }: Services,
  { capture, board, uri }: ReadParams,
): Promise<ReadAnswer> {
  if (!isReadable(capture)) return noBoard(workspace.catalog, noText);
  const named = board ?? (await recognised(workspace, capture));
  if (named !== null) await workspace.boardRead(named);
  const { catalog } = workspace;
  const profile = named === null ? null : chosen(catalog, named);
  if (typeof profile === 'string') return noBoard(catalog, profile);
  const kept = uri === null ? nothingBeside : await workspace.keptBeside(uri);
  const made = makeScript(profile, catalog, capture, kept);
  if (made.refused !== null) return noBoard(catalog, made.refused);
  const title = profile === null ? nobody : choiceOf(profile);
  return { kind: 'script', text: made.text, board: title, summary: readSummary(made) };
}

/** By a board that is known, else by those of the workspace. */
async function recognised(workspace: Workspace, capture: string): Promise<string | null> {
  const known = recognisedProfile(workspace.catalog, capture)?.name ?? null;
  if (known !== null) return known;
  for (const name of boardsToLookThrough(workspace.catalog)) await workspace.boardRead(name);
  return recognisedProfile(workspace.catalog, capture)?.name ?? null;
}

export function proof(
  { snapshot, session }: ScriptContext,
  { capture, board, omitsDefaults }: ProveParams,
): ProveAnswer {
  const { catalog, craft } = snapshot;
  const view = new CraftView(craft, snapshot.pack);
  if (!isReadable(capture)) return noBoard(catalog, noText);
  const name = board ?? view.craft.boardName();
  const profile = name === null ? null : chosen(catalog, name);
  if (typeof profile === 'string') return noBoard(catalog, profile);
  const entries = entriesOf(profile, view);
  if (profile === null && entries.entries.length === 0) return noBoard(catalog, unnamed);
  const captured = includedText(session.workspace, craft);
  const compared = compareWithCapture({
    ...{ profile, captured, entries, capture, omitsDefaults },
    except: new Set<string>(),
    ignoresExtra: false,
  });
  if (compared.kind === 'refused') return noBoard(catalog, compared.reason);
  const pack = view.pack === null ? '' : `, pack ${view.pack}`;
  const about = `${view.text('craft.name') ?? 'The script'} on ${profile?.title ?? nobody.title}${pack}`;
  return { kind: 'proof', ...describedProof(compared, about) };
}

const noText = 'This is no text of a board.';
const unnamed = 'Nothing says which board this is for.';

function isReadable(capture: string): boolean {
  return capture.length <= longestCapture && !capture.includes('\u0000');
}

/** The profile, or the sentence that says why there is none. */
function chosen(catalog: Catalog, name: string | null): Profile | string {
  if (name === null) return unnamed;
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
