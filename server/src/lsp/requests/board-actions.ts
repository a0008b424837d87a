import type {
  CodeAction as ClientAction,
  Range as ClientRange,
  CodeActionParams,
  WorkspaceEdit,
} from 'vscode-languageserver';
import type { AcceptanceChange } from '../../board/kept/accepted';
import { reasonPlaceholder } from '../../features/accept-risk';
import type { BoardAction } from '../../features/board/action';
import { boardAnswers } from '../../features/board/answers';
import { acceptingLast, actionsFor, type CodeAction, codeActions } from '../../features/code-actions';
import { besideFileOf, keptText, withChange } from '../../workspace/kept-beside';
import { foundByIncluders } from '../convert/found-by-includers';
import type { BoardDocument } from '../documents/board-documents';
import { CodeActionKind } from '../library';
import type { Session } from '../session';
import type { BoardContext } from './about-script';
import { isWanted } from './action-kind';

/** How something is done in the client. */
type Done = Pick<ClientAction, 'title' | 'edit' | 'command'>;

export function boardActions(
  context: BoardContext,
  { range, context: { only } }: CodeActionParams,
): ClientAction[] {
  if (!isWanted(CodeActionKind.QuickFix, only ?? [CodeActionKind.QuickFix])) return [];
  return [...boardFixes(context, range), ...meaningAction(context, range)].map((done) => ({
    ...done,
    kind: CodeActionKind.QuickFix,
  }));
}

/** On a setting of which nobody has said what it means: where it is said. */
function meaningAction({ session, snapshot, layer }: BoardContext, { start }: ClientRange): Done[] {
  if (!session.client.own.commands) return [];
  const key = boardAnswers().settingToSay(layer, start.line);
  if (key === null) return [];
  const title = 'Say what this setting means';
  const command = { title, command: 'propsoff.sayMeaning', arguments: [snapshot.uri, key] };
  return [{ title, command }];
}

/**
 * Fixes of the engine in the board's spelling, those of the profile, and what crafts that include the text found in
 * it; what the board can't say is not offered.
 */
function boardFixes({ session, snapshot, board, layer }: BoardContext, clientRange: ClientRange): Done[] {
  const { uri, script, catalog } = snapshot;
  const isIn = (line: number) => line >= clientRange.start.line && line <= clientRange.end.line;
  const problems = boardAnswers()
    .boardProblems(layer, catalog)
    .filter(({ range }) => isIn(range.start.line));
  const findings = snapshot.findings();
  const elsewhere = foundByIncluders(session, uri, findings)
    .filter(({ place }) => isIn(session.clientRange(script, place).start.line))
    .flatMap(({ finding }) => actionsFor(finding));
  const engine = acceptingLast([...codeActions(snapshot, session.range(script, clientRange)), ...elsewhere]);
  const done = [
    ...problems.flatMap(({ fixes }) => fixes.flatMap((fix) => doneAs(session, uri, board, fix) ?? [])),
    ...engine
      .filter(({ edits }) => edits.every((file) => file.uri === script.uri))
      .flatMap((action) => doneInBoardText(session, uri, board, action) ?? []),
  ];
  return [...new Map(done.map((one) => [JSON.stringify(one), one])).values()];
}

/** What can be done in a board's text or beside it; null where neither can be. */
export function doneInBoardText(
  session: Session,
  uri: string,
  board: BoardDocument,
  action: CodeAction,
): Done | null {
  const { boardAction, boardWords } = boardAnswers();
  const words = boardWords(board.layer, session.workspace.catalog);
  const own = boardAction(board.layer, words, action);
  return own === null ? null : doneAs(session, uri, board, own);
}

function doneAs(
  session: Session,
  uri: string,
  board: BoardDocument,
  { title, edits, beside }: BoardAction,
): Done | null {
  const clientUri = session.clientUri(uri);
  if (beside !== null) return doneBeside(session, clientUri, board, title, beside);
  const inText = edits.map(({ range, newText }) => ({
    range: session.clientBoardRange(board, range),
    newText,
  }));
  return { title, edit: { changes: { [clientUri]: inText } } };
}

/** Our own client asks for the reason and writes the file; another one is given the file to change, if it can make one. */
function doneBeside(
  { client }: Session,
  uri: string,
  board: BoardDocument,
  title: string,
  change: AcceptanceChange,
): Done | null {
  if (!uri.startsWith('untitled:') && client.own.commands)
    return { title, command: { title, command: 'propsoff.acceptBeside', arguments: [uri, change] } };
  if (uri.startsWith('untitled:') || !client.createsFiles) return null;
  return { title, edit: besideEdit(besideFileOf(uri), board, change) };
}

function besideEdit(
  uri: string,
  { layer }: BoardDocument,
  { withdraw, accept }: AcceptanceChange,
): WorkspaceEdit {
  const asked = accept?.reason === '' ? { ...accept, reason: reasonPlaceholder } : accept;
  const newText = keptText(withChange(layer.kept, { board: null, withdraw, accept: asked }));
  const start = { line: 0, character: 0 };
  return {
    documentChanges: [
      { kind: 'create', uri, options: { overwrite: true } },
      { textDocument: { uri, version: null }, edits: [{ range: { start, end: start }, newText }] },
    ],
  };
}
