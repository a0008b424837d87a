import { constants, existsSync, readFileSync, type Stats } from 'node:fs';
import { type FileHandle, lstat, open, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { URI } from 'vscode-uri';
import { type FilePieces, longestFile, pieceLength, TooLongFile, tooLong } from '../workspace/file-system';
import { codeOf, reasonOf } from './reasons';

/**
 * All bytes of a file.
 * @throws {Error} whose message says why it can't be read, as the end of a sentence
 */
export async function readBytes(path: string): Promise<Buffer> {
  try {
    const { handle, size } = await opened(path);
    try {
      if (size > longestFile) throw new TooLongFile(tooLong);
      return await allOf(handle, size);
    } finally {
      await handle.close();
    }
  } catch (error) {
    throw await readingFault(path, error);
  }
}

/**
 * A file in pieces, of which the last may be shorter; it is opened once the first is asked for. Throws as `readBytes`
 * does.
 */
export async function readPiecesOf(path: string): Promise<FilePieces> {
  try {
    const stats = await stat(path);
    refuseUnlessFile(stats);
    return { size: stats.size, changedAt: stats.mtimeMs, bytes: () => piecesOf(path) };
  } catch (error) {
    throw await readingFault(path, error);
  }
}

async function* piecesOf(path: string): AsyncGenerator<Uint8Array> {
  const { handle } = await opened(path).catch(async (error: unknown) => {
    throw await readingFault(path, error);
  });
  try {
    for (;;) {
      // A new one each time: whoever gets it may keep it.
      const piece = Buffer.allocUnsafe(pieceLength);
      const { bytesRead } = await handle.read(piece, 0, pieceLength, null);
      if (bytesRead === 0) return;
      yield piece.subarray(0, bytesRead);
    }
  } catch (error) {
    throw await readingFault(path, error);
  } finally {
    await handle.close();
  }
}

/** Only what is a file: a device or a pipe may have no end, or wait for ever. */
async function opened(path: string): Promise<{ readonly handle: FileHandle; readonly size: number }> {
  refuseUnlessFile(await stat(path));
  // It may be another thing by now: opening does not wait for one that is at the other end of a pipe.
  const handle = await open(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
  try {
    const stats = await handle.stat();
    refuseUnlessFile(stats);
    return { handle, size: stats.size };
  } catch (error) {
    await handle.close();
    throw error;
  }
}

async function readingFault(path: string, error: unknown): Promise<Error> {
  return error instanceof TooLongFile ? error : new Error(await whyUnread(path, error), { cause: error });
}

/** All bytes of a file; null where nothing has its name. Throws as `readBytes` does. */
export async function readBytesIfThere(path: string): Promise<Buffer | null> {
  try {
    await lstat(path);
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return null;
  }
  return readBytes(path);
}

function refuseUnlessFile(stats: Stats): void {
  const what = kindOf(stats);
  if (what !== null) throw new Error(`it is ${what}`);
}

/** What it is that is no file; null for a file. */
function kindOf(stats: Stats): string | null {
  if (stats.isFile()) return null;
  if (stats.isDirectory()) return 'a folder';
  if (stats.isFIFO()) return 'a pipe, not a file';
  return stats.isSocket() ? 'a socket, not a file' : 'a device, not a file';
}

/** It may be longer than was said, as it grows or as the system makes it up: the end is where nothing more comes. */
async function allOf(handle: FileHandle, size: number): Promise<Buffer> {
  let buffer = Buffer.allocUnsafe(size + 1);
  let length = 0;
  for (;;) {
    const { bytesRead } = await handle.read(buffer, length, buffer.length - length, null);
    length += bytesRead;
    if (bytesRead === 0) return buffer.subarray(0, length);
    if (length > longestFile) throw new TooLongFile(tooLong);
    if (length === buffer.length) buffer = Buffer.concat([buffer], 2 * length);
  }
}

/** Why a file or folder could not be looked at; ends a sentence. */
export async function whyUnread(path: string, error: unknown): Promise<string> {
  if (codeOf(error) === 'ENOENT' && (await isLink(path))) return 'it is a link that leads nowhere';
  // Node shows so what it could not make out; the name that it shows is not the file's.
  if (codeOf(error) === 'ENOENT' && path.includes('\ufffd')) return 'its name is not UTF-8: rename it';
  return reasonOf(error);
}

async function isLink(path: string): Promise<boolean> {
  return lstat(path).then(
    (stats) => stats.isSymbolicLink(),
    () => false,
  );
}

/**
 * The text of a file that lies beside the program.
 * @throws {Error} if it is not there
 */
export function textBeside(name: string, folder = __dirname): string {
  const path = join(folder, name);
  try {
    return readFileSync(path, 'utf8');
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new Error(`${path} could not be read (${why}); install propsoff anew`);
  }
}

/** The URI of a file that lies beside the program; null where there is none. */
export function uriBeside(name: string, folder = __dirname): string | null {
  const path = join(folder, name);
  return existsSync(path) ? URI.file(path).toString() : null;
}
