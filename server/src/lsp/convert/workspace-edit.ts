import type { SnippetTextEdit, TextEdit, WorkspaceEdit } from 'vscode-languageserver';
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
  const edited = files.map(({ uri, edits }) => ({
    uri: session.clientUri(uri),
    version: session.workspace.get(uri)?.version ?? null,
    edits: edits.map((edit) => session.clientEdit(scriptOf(session, uri), edit)),
  }));
  if (!isVersioned) return { changes: Object.fromEntries(edited.map(({ uri, edits }) => [uri, edits])) };
  return {
    documentChanges: edited.map(({ uri, version, edits }) => ({
      textDocument: { uri, version },
      edits: hasStops && placeholder !== null ? edits.map((edit) => withStop(edit, placeholder)) : edits,
    })),
  };
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
