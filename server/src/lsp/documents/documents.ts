import {
  type Connection,
  FileOperationPatternKind,
  type ServerCapabilities,
  TextDocumentSyncKind,
} from 'vscode-languageserver';
import type { Session } from '../session';
import type { AdditionDocuments } from './addition-documents';
import type { Diagnostics } from './diagnostics';
import { OpenTexts } from './open-texts';

/** Takes in what the client opens, edits and closes, and what happens to files on the disk. */
export function registerDocuments(
  connection: Connection,
  session: Session,
  diagnostics: Diagnostics,
  additions: AdditionDocuments,
): void {
  const { workspace } = session;
  const texts = new OpenTexts(session);
  const diskChanged = (uri: string) => {
    workspace.diskChanged(uri);
    additions.diskChanged(uri);
  };
  connection.onDidOpenTextDocument(({ textDocument }) => {
    const { uri, text, version } = textDocument;
    if (additions.has(uri)) return additions.open(uri, text, version);
    texts.open(textDocument);
    diagnostics.changed(uri);
  });
  connection.onDidChangeTextDocument(({ textDocument: { uri, version }, contentChanges }) => {
    if (additions.has(uri)) return additions.change(uri, contentChanges, version);
    if (texts.change(uri, version, contentChanges)) diagnostics.changed(uri);
  });
  connection.onDidCloseTextDocument(({ textDocument: { uri } }) => {
    if (additions.has(uri)) return additions.close(uri);
    const closed = texts.close(uri);
    if (closed !== null) diagnostics.closed(closed);
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
