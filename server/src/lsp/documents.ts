import {
  type Connection,
  FileOperationPatternKind,
  type ServerCapabilities,
  type TextDocumentContentChangeEvent,
  TextDocumentSyncKind,
} from 'vscode-languageserver';
import type { Script } from '../craft/script';
import type { DocumentEdit } from '../language/document';
import type { AdditionDocuments } from './addition-documents';
import { boardLanguage } from './board-documents';
import type { Diagnostics } from './diagnostics';
import type { Session } from './session';

/** Takes in what the client opens, edits and closes, and what happens to files on the disk. */
export function registerDocuments(
  connection: Connection,
  session: Session,
  diagnostics: Diagnostics,
  additions: AdditionDocuments,
): void {
  const { workspace } = session;
  const diskChanged = (uri: string) => {
    workspace.diskChanged(uri);
    additions.diskChanged(uri);
  };
  connection.onDidOpenTextDocument(({ textDocument: { uri, text, version, languageId } }) => {
    if (additions.has(uri)) return additions.open(uri, text, version);
    // What was open before under this name, in whichever language, is no more.
    session.boards.closed(uri);
    if (languageId === boardLanguage) session.boards.opened(uri, text, version);
    else workspace.openScript(uri, text, version);
    diagnostics.changed(uri);
  });
  connection.onDidChangeTextDocument(({ textDocument: { uri, version }, contentChanges }) => {
    if (additions.has(uri)) return additions.change(uri, contentChanges, version);
    const open = workspace.get(uri);
    if (open === undefined) return;
    if (session.boards.changed(uri, contentChanges, version)) return diagnostics.changed(uri);
    workspace.change(uri, editsFrom(session, open.script, contentChanges), version);
    diagnostics.changed(uri);
  });
  connection.onDidCloseTextDocument(({ textDocument: { uri } }) => {
    if (additions.has(uri)) return additions.close(uri);
    session.boards.closed(uri);
    const closed = workspace.close(uri);
    if (closed !== undefined) diagnostics.closed(closed.uri);
  });
  connection.onDidChangeWatchedFiles(({ changes }) => {
    for (const { uri } of changes) diskChanged(uri);
  });
  connection.workspace.onDidDeleteFiles(({ files }) => {
    for (const { uri } of files) diskChanged(uri);
  });
  connection.workspace.onDidRenameFiles(({ files }) => {
    for (const { oldUri, newUri } of files) {
      diskChanged(oldUri);
      diskChanged(newUri);
    }
  });
}

/** Watchers name files only; that a whole folder went is told by the editor that did it. */
const foldersAndScripts = {
  filters: [
    { pattern: { glob: '**/*.craft', matches: FileOperationPatternKind.file } },
    { pattern: { glob: '**', matches: FileOperationPatternKind.folder } },
  ],
};

export const documentCapabilities: ServerCapabilities = {
  textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
  workspace: {
    workspaceFolders: { supported: true, changeNotifications: true },
    fileOperations: { didDelete: foldersAndScripts, didRename: foldersAndScripts },
  },
};

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
