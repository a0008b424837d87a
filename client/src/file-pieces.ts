import * as vscode from 'vscode';
import { charactersOf, type PieceAnswer, type PieceAsked } from '../../server/src/lsp/recording-protocol';

/**
 * In bytes. An editor has a file only whole, and a longer one would not leave a browser's page enough memory; where the
 * server reads the disk itself, longer ones are read.
 */
const longestWhole = 100_000_000;

/** ms. What was read of a file of which nobody wants the rest is let go after so long. */
const patience = 60_000;

/** A long file that is handed over piece by piece, as it was when its first piece was asked for. */
export class FileInPieces {
  private held: { readonly uri: string; readonly bytes: Uint8Array } | null = null;
  private letGo: ReturnType<typeof setTimeout> | undefined;

  async read({ uri, from, length }: PieceAsked): Promise<PieceAnswer> {
    const looked = await lookedAt(vscode.Uri.parse(uri));
    if ('kind' in looked) return looked;
    if (length === 0) return { kind: 'piece', bytes: '', ...looked };
    const bytes = await this.whole(uri, from === 0);
    if (!(bytes instanceof Uint8Array)) return bytes;
    const piece = bytes.subarray(from, from + length);
    clearTimeout(this.letGo);
    // Nothing is asked for after the end.
    if (from + length >= bytes.length) this.held = null;
    else
      this.letGo = setTimeout(() => {
        this.held = null;
      }, patience);
    return { kind: 'piece', bytes: charactersOf(piece), size: bytes.length };
  }

  private async whole(uri: string, isFirst: boolean): Promise<Uint8Array | PieceAnswer> {
    if (!isFirst && this.held?.uri === uri) return this.held.bytes;
    try {
      const bytes = await vscode.workspace.fs.readFile(vscode.Uri.parse(uri));
      this.held = { uri, bytes };
      return bytes;
    } catch (error) {
      return unreadable(error);
    }
  }
}

async function lookedAt(uri: vscode.Uri): Promise<{ size: number; changedAt: number } | PieceAnswer> {
  try {
    const { type, size, mtime } = await vscode.workspace.fs.stat(uri);
    if ((type & vscode.FileType.Directory) !== 0) return { kind: 'unreadable', why: 'it is a folder' };
    return size > longestWhole ? { kind: 'unreadable', why: tooLong(size) } : { size, changedAt: mtime };
  } catch (error) {
    return unreadable(error);
  }
}

function unreadable(error: unknown): PieceAnswer {
  if (error instanceof vscode.FileSystemError && error.code === 'FileNotFound') return { kind: 'missing' };
  return { kind: 'unreadable', why: error instanceof Error ? error.message : 'it could not be read' };
}

function tooLong(size: number): string {
  return `it has ${Math.ceil(size / 1e6)} MB, and here ${longestWhole / 1e6} MB can be read: cut the flight out, or open it in an editor on this machine`;
}
