import type { SnippetTextEdit, TextEdit, WorkspaceEdit } from 'vscode-languageserver';
import type { Stop } from '../../checks/report/finding';
import { boardAnswers } from '../../features/board/answers';
import { snippetText, tabChoice, tabStop } from '../../features/completion/item';
import type { FileEdits } from '../../features/text-edits';
import type { Session } from '../session';

/**
 * Edits of several scripts in the best form that the client takes: with the versions of open scripts, so
 * that an edit made for an older text is refused; else by URI alone. What the pilot is to type over is a
 * tab stop for a client that has them.
 */
export function workspaceEdit(session: Session, files: readonly FileEdits[]): WorkspaceEdit {
  const { versionedEdits: isVersioned, editsWithStops } = session.client;
  const edited = files.flatMap((file) => {
    const edits = clientEdits(session, file);
    if (edits === null) return [];
    const { uri } = file;
    return [{ uri: session.clientUri(uri), version: session.workspace.get(uri)?.version ?? null, edits }];
  });
  if (!isVersioned)
    return { changes: Object.fromEntries(edited.map(({ uri, edits }) => [uri, edits.map(plain)])) };
  return {
    documentChanges: edited.map(({ uri, version, edits }) => ({
      textDocument: { uri, version },
      edits: editsWithStops ? withStops(edits) : edits.map(plain),
    })),
  };
}

/** Whether every file can be edited so: a board's text has no words for some of what a script can say. */
export function canBeEdited(session: Session, files: readonly FileEdits[]): boolean {
  return files.every((file) => clientEdits(session, file) !== null);
}

/** An edit in the client's counting, with the parts of its text to type over. */
interface ClientEdit extends TextEdit {
  readonly stops: readonly Stop[];
}

function clientEdits(session: Session, { uri, edits }: FileEdits): ClientEdit[] | null {
  const board = session.boards.get(uri);
  if (board === undefined)
    return edits.map((edit) => ({
      ...session.clientEdit(scriptOf(session, uri), edit),
      stops: edit.stops ?? [],
    }));
  const inText = boardAnswers().boardEdits(board.layer, session.workspace.catalog, edits);
  if (inText === null) return null;
  return inText.map(({ range, newText }) => ({
    range: session.clientBoardRange(board, range),
    newText,
    stops: [],
  }));
}

function plain({ range, newText }: ClientEdit): TextEdit {
  return { range, newText };
}

function scriptOf(session: Session, uri: string) {
  const script = session.workspace.script(uri);
  if (script === undefined) throw new Error(`an edit is for a script that nobody holds: ${uri}`);
  return script;
}

/** Each stop of a file has a number of its own: stops of one number are typed over together. */
function withStops(edits: readonly ClientEdit[]): (TextEdit | SnippetTextEdit)[] {
  let number = 0;
  return edits.map(({ range, newText, stops }) => {
    if (stops.length === 0) return { range, newText };
    let value = '';
    let from = 0;
    for (const { start, end, choices } of stops) {
      number += 1;
      const stop =
        choices.length > 0 ? tabChoice(number, choices) : tabStop(number, newText.slice(start, end));
      value += snippetText(newText.slice(from, start)) + stop;
      from = end;
    }
    return { range, snippet: { kind: 'snippet', value: value + snippetText(newText.slice(from)) } };
  });
}
