import type { URI } from 'vscode-uri';
import { download } from '../download';
import { folder, inside, keptPath, keptUri, thePage } from './page';
import { EventEmitter, FileSystemError, FileType, Uri } from './values';

/** Files that a person has picked, for as long as the page is open: recordings are too long to be kept. */
const picked = new Map<string, Uint8Array>();
const pickedScheme = 'picked';
const downloadScheme = 'download';

export function addPicked(name: string, bytes: Uint8Array): URI {
  const uri = Uri.from({ scheme: pickedScheme, path: `/${name}` });
  picked.set(uri.toString(), bytes);
  return uri;
}

export function downloadUri(name: string): URI {
  return Uri.from({ scheme: downloadScheme, path: `/${name}` });
}

/** The bytes of a file; null where there is none. */
function bytesAt(uri: URI): Uint8Array | null {
  const path = keptPath(uri);
  if (uri.scheme === pickedScheme) return picked.get(uri.toString()) ?? null;
  const { store, parts } = thePage();
  const text =
    uri.scheme === inside.scheme ? parts.get(uri.path.slice(1)) : path === null ? null : store.read(path);
  return text === undefined || text === null ? null : new TextEncoder().encode(text);
}

function missing(uri: URI): FileSystemError {
  return new FileSystemError(`there is no ${uri.path}`, 'FileNotFound');
}

/** Names right below a folder, each with whether it is a folder. */
function entriesOf(uri: URI): Map<string, number> {
  const inFolder = uri.toString() === folder.toString() ? '' : keptPath(uri);
  const entries = new Map<string, number>();
  if (inFolder === null) return entries;
  const prefix = inFolder === '' ? '' : `${inFolder}/`;
  for (const path of thePage().store.paths()) {
    if (!path.startsWith(prefix)) continue;
    const [name = '', ...below] = path.slice(prefix.length).split('/');
    entries.set(name, below.length > 0 ? FileType.Directory : FileType.File);
  }
  return entries;
}

const deleted = new EventEmitter<{ readonly files: readonly URI[] }>();
export const onDidDeleteFiles = deleted.event;

/** Takes a text out of what is kept. */
export function deleteKept(path: string): void {
  const { store, texts, client } = thePage();
  const uri = keptUri(path);
  const open = texts.open.get(uri.toString());
  if (open !== undefined) texts.close(open);
  store.remove(path);
  client.fileChanged(uri.toString(), 'gone');
  deleted.fire({ files: [uri] });
}

/** `workspace.fs`: what is kept, what was picked, what ships inside, and what is handed to the browser to save. */
export const fs = {
  async readFile(uri: URI): Promise<Uint8Array> {
    const bytes = bytesAt(uri);
    if (bytes === null) throw missing(uri);
    return bytes;
  },

  async stat(uri: URI): Promise<{ type: number; size: number; ctime: number; mtime: number }> {
    const bytes = bytesAt(uri);
    if (bytes !== null) return { type: FileType.File, size: bytes.length, ctime: 0, mtime: 0 };
    if (entriesOf(uri).size > 0) return { type: FileType.Directory, size: 0, ctime: 0, mtime: 0 };
    throw missing(uri);
  },

  async readDirectory(uri: URI): Promise<[string, number][]> {
    return [...entriesOf(uri)];
  },

  async writeFile(uri: URI, bytes: Uint8Array): Promise<void> {
    if (uri.scheme === downloadScheme) return download(uri.path.slice(1), bytes);
    const path = keptPath(uri);
    if (path === null) throw new FileSystemError('it can’t be written there', 'NoPermissions');
    writeKept(uri, path, new TextDecoder().decode(bytes));
  },
};

function writeKept(uri: URI, path: string, text: string): void {
  const { store, texts, client } = thePage();
  const isThere = store.read(path) !== undefined;
  store.write(path, text);
  const open = texts.open.get(uri.toString());
  if (open !== undefined && open.written !== text)
    open.change({ changes: { from: 0, to: open.state.doc.length, insert: text } });
  client.fileChanged(uri.toString(), isThere ? 'changed' : 'made');
}
