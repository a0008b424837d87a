import * as vscode from 'vscode';
import type { RequestType } from 'vscode-languageclient';
import {
  type FileAnswer,
  findScriptsRequest,
  listFolderRequest,
  readFileRequest,
} from '../../server/src/lsp/files-protocol';
import { readPieceRequest } from '../../server/src/lsp/recording-protocol';
import { scriptsBelow } from './craft-files';
import { FileInPieces } from './file-pieces';

/** What the server may ask of its client. */
interface ServerRequests {
  onRequest<P, R>(type: RequestType<P, R, void>, answer: (params: P) => R | Promise<R>): vscode.Disposable;
}

/** Hands the server what it can't read itself: files as the editor's own file system has them. */
export function offerFiles(client: ServerRequests): readonly vscode.Disposable[] {
  const pieces = new FileInPieces();
  return [
    client.onRequest(readPieceRequest, (asked) => pieces.read(asked)),
    client.onRequest(readFileRequest, ({ uri, longest }) => read(vscode.Uri.parse(uri), longest)),
    client.onRequest(listFolderRequest, ({ uri }) => list(vscode.Uri.parse(uri))),
    client.onRequest(findScriptsRequest, ({ uri, most }) => scriptsBelow(vscode.Uri.parse(uri), most)),
  ];
}

async function read(uri: vscode.Uri, longest: number): Promise<FileAnswer> {
  try {
    const { type, size } = await vscode.workspace.fs.stat(uri);
    if ((type & vscode.FileType.Directory) !== 0) return { kind: 'unreadable', why: 'it is a folder' };
    // Where a link leads can't be asked here, and it may lead out of the workspace.
    if ((type & vscode.FileType.SymbolicLink) !== 0)
      return { kind: 'unreadable', why: 'it is a link, and where it leads can’t be seen here' };
    if (size > longest) return { kind: 'too-long' };
    return { kind: 'text', text: new TextDecoder().decode(await vscode.workspace.fs.readFile(uri)) };
  } catch (error) {
    const code = error instanceof vscode.FileSystemError ? error.code : '';
    if (code === 'FileNotFound') return { kind: 'missing' };
    if (code === 'NoPermissions') return { kind: 'unreadable', why: 'it may not be read' };
    return { kind: 'unreadable', why: error instanceof Error ? error.message : 'it could not be read' };
  }
}

async function list(folder: vscode.Uri): Promise<readonly string[]> {
  try {
    const entries = await vscode.workspace.fs.readDirectory(folder);
    return entries.filter(([, type]) => (type & vscode.FileType.Directory) === 0).map(([name]) => name);
  } catch {
    return [];
  }
}
