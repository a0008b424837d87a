import { entriesOf } from '../../board/entries';
import { canBeConfirmed } from '../../board/learn/confirm';
import { learnShape } from '../../board/learn/shape';
import { profileSkeleton } from '../../board/learn/skeleton';
import { type Profile, profileOf } from '../../board/profile';
import { prove } from '../../board/prove';
import { recognisedBoard } from '../../board/recognise';
import { scriptFromBoardText } from '../../board/to-script';
import { handOverOf, piecesOf } from '../../board/write';
import type { Catalog } from '../../catalog/catalog';
import { readHandOver } from '../../catalog/model/hand-over';
import { CraftView } from '../../craft/view';
import { blockedText, prepareBoardText } from '../../features/board/hand-over';
import { learned } from '../../features/board/learning';
import { toldProof } from '../../features/board/proof-text';
import { readSummary } from '../../features/board/read-summary';
import type {
  BoardChoice,
  BoardTextAnswer,
  boardsRequest,
  boardTextRequest,
  learnRequest,
  makeProfileRequest,
  ProveAnswer,
  parametersRequest,
  proveRequest,
  ReadAnswer,
  readRequest,
} from '../protocol';
import type { OnServerFault } from '../server';
import type { Session } from '../session';
import type { Answers } from './on-demand';
import { answeringInFull } from './request';

/** A capture longer than this is no board's listing. */
const longestCapture = 20_000_000;

export interface BoardAnswers {
  readonly boards: Answers<typeof boardsRequest>;
  readonly boardText: Answers<typeof boardTextRequest>;
  readonly read: Answers<typeof readRequest>;
  readonly prove: Answers<typeof proveRequest>;
  readonly learn: Answers<typeof learnRequest>;
  readonly parameters: Answers<typeof parametersRequest>;
  readonly makeProfile: Answers<typeof makeProfileRequest>;
}

/** Boards' own texts: written, read and proved. */
export function boardAnswers(session: Session, onFault: OnServerFault): BoardAnswers {
  const { workspace } = session;
  return {
    boards: () => choices(workspace.catalog),
    boardText: answeringInFull(
      session,
      onFault,
      'text for the board',
      ({ snapshot }, params): BoardTextAnswer => {
        const view = new CraftView(snapshot.craft, snapshot.pack);
        const profile = chosen(snapshot.catalog, params.board ?? view.board?.name ?? null);
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
      },
    ),
    read: ({ capture, board }): ReadAnswer => {
      const { catalog } = workspace;
      const named = board ?? (isReadable(capture) ? recognisedBoard(catalog, capture) : null);
      const profile = chosen(catalog, named);
      if (typeof profile === 'string') return noBoard(catalog, profile);
      const made = scriptFromBoardText(profile, catalog, capture);
      return { kind: 'script', text: made.text, board: choiceOf(profile), summary: readSummary(made) };
    },
    prove: answeringInFull(session, onFault, 'proof', ({ snapshot }, { capture, board }): ProveAnswer => {
      const view = new CraftView(snapshot.craft, snapshot.pack);
      const profile = chosen(snapshot.catalog, board ?? view.board?.name ?? null);
      if (typeof profile === 'string') return noBoard(snapshot.catalog, profile);
      if (!isReadable(capture)) return noBoard(snapshot.catalog, 'This is no text of a board.');
      const { entries } = entriesOf(profile, view);
      const proof = prove(profile, snapshot.catalog, entries, capture);
      const pack = view.pack === null ? '' : `, pack ${view.pack}`;
      const name = view.text('craft.name') ?? 'The script';
      return { kind: 'proof', ...toldProof(proof, `${name} on ${profile.board.title}${pack}`) };
    }),
    learn: ({ capture }) => {
      const shape = learnShape(isReadable(capture) ? capture : '');
      return learned(shape, workspace.catalog);
    },
    parameters: () =>
      [...workspace.catalog.parameters.keys()].filter((name) => canBeConfirmed(workspace.catalog, name)),
    makeProfile: ({ capture, name, confirmed }) => {
      const shape = learnShape(isReadable(capture) ? capture : '');
      const skeleton = profileSkeleton(shape, name, new Map(confirmed), workspace.catalog);
      if (skeleton === null) return null;
      const { profile, mapped } = skeleton;
      return {
        text: `${JSON.stringify(profile, null, 2)}\n`,
        mapped: mapped.length,
        own: profile.own.length,
      };
    },
  };
}

function isReadable(capture: string): boolean {
  return capture.length <= longestCapture && !capture.includes('\u0000');
}

/** The profile, or the sentence that says why there is none. */
function chosen(catalog: Catalog, name: string | null): Profile | string {
  if (name === null) return 'Nothing says which board this is for.';
  const board = catalog.board(name);
  if (board === undefined) return `There is no board ${name}.`;
  return profileOf(board) ?? `The profile of ${board.title} does not say how it writes its settings.`;
}

function noBoard(catalog: Catalog, message: string) {
  return { kind: 'no-board' as const, message, boards: choices(catalog) };
}

function choices(catalog: Catalog): readonly BoardChoice[] {
  return [...catalog.boards.values()].flatMap((board) => {
    const profile = profileOf(board);
    return profile === null ? [] : [choiceOf(profile)];
  });
}

function choiceOf({ board: { name, title } }: Profile): BoardChoice {
  return { name, title };
}
