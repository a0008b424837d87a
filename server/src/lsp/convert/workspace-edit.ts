import type { SnippetTextEdit, TextEdit, WorkspaceEdit } from 'vscode-languageserver';
import { boardAnswers } from '../../features/board/answers';
import { snippetText, tabStop } from '../../features/completion/item';
import type { FileEdits } from '../../features/text-edits';
import type { Session } from '../session';

/**
 * Edits of several scripts in the best form that the client takes: with the versions of open scripts, so
 * that an edit made for an older text is refused; else by URI alone. `placeholder`: words of the new text
 * that the pilot is to type over, which a client with tab stops selects.
 */
export function workspaceEdit(
  session: Session,
  files: readonly FileEdits[],
  placeholder: string | null = null,
): WorkspaceEdit {
  const { versionedEdits: isVersioned, editsWithStops } = session.client;
  const hasStops = isVersioned && editsWithStops;
  const edited = files.flatMap((file) => {
    const edits = clientEdits(session, file);
    if (edits === null) return [];
    const { uri } = file;
    return [{ uri: session.clientUri(uri), version: session.workspace.get(uri)?.version ?? null, edits }];
  });
  if (!isVersioned) return { changes: Object.fromEntries(edited.map(({ uri, edits }) => [uri, edits])) };
  return {
    documentChanges: edited.map(({ uri, version, edits }) => ({
      textDocument: { uri, version },
      edits: hasStops && placeholder !== null ? edits.map((edit) => withStop(edit, placeholder)) : edits,
    })),
  };
}

/** Whether every file can be edited so: a board's text has no words for some of what a script can say. */
export function canBeEdited(session: Session, files: readonly FileEdits[]): boolean {
  return files.every((file) => clientEdits(session, file) !== null);
}

function clientEdits(session: Session, { uri, edits }: FileEdits): TextEdit[] | null {
  const board = session.boards.get(uri);
  if (board === undefined) return edits.map((edit) => session.clientEdit(scriptOf(session, uri), edit));
  const inText = boardAnswers().boardEdits(board.layer, session.workspace.catalog, edits);
  if (inText === null) return null;
  return inText.map(({ range, newText }) => ({ range: session.clientBoardRange(board, range), newText }));
}

function scriptOf(session: Session, uri: string) {
  const script = session.workspace.script(uri);
  if (script === undefined) throw new Error(`an edit is for a script that nobody holds: ${uri}`);
  return script;
}

function withStop(edit: TextEdit, placeholder: string): TextEdit | SnippetTextEdit {
  const at = edit.newText.indexOf(placeholder);
  if (at < 0) return edit;
  const before = snippetText(edit.newText.slice(0, at));
  const after = snippetText(edit.newText.slice(at + placeholder.length));
  return {
    range: edit.range,
    snippet: { kind: 'snippet', value: `${before}${tabStop(1, placeholder)}${after}` },
  };
}
