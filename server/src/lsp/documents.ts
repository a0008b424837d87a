import type { Connection, TextDocumentContentChangeEvent } from 'vscode-languageserver';
import type { Script } from '../craft/script';
import type { DocumentEdit } from '../language/document';
import type { Diagnostics } from './diagnostics';
import type { Session } from './session';

/** Takes in what the client opens, edits and closes, and what happens to files on the disk. */
export function registerDocuments(connection: Connection, session: Session, diagnostics: Diagnostics): void {
  const { workspace } = session;
  connection.onDidOpenTextDocument(({ textDocument: { uri, text, version } }) => {
    workspace.openScript(uri, text, version);
    diagnostics.changed(uri);
  });
  connection.onDidChangeTextDocument(({ textDocument: { uri, version }, contentChanges }) => {
    const open = workspace.get(uri);
    if (open === undefined) return;
    workspace.change(uri, editsFrom(session, open.script, contentChanges), version);
    diagnostics.changed(uri);
  });
  connection.onDidCloseTextDocument(({ textDocument: { uri } }) => {
    workspace.close(uri);
    diagnostics.closed(uri);
  });
  connection.onDidChangeWatchedFiles(({ changes }) => {
    for (const { uri } of changes) workspace.diskChanged(uri);
  });
}

/** Edits in their order, each counted against the text that those before it have made. */
function* editsFrom(
  session: Session,
  script: Script,
  changes: readonly TextDocumentContentChangeEvent[],
): Iterable<DocumentEdit> {
  for (const change of changes) {
    if ('range' in change) {
      yield { ...session.range(script, change.range), text: change.text };
    } else {
      yield {
        start: { line: 0, character: 0 },
        end: { line: script.document.lineCount, character: 0 },
        text: change.text,
      };
    }
  }
}
