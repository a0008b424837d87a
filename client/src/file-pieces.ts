import * as vscode from 'vscode';
import { charactersOf, type PieceAnswer, type PieceAsked } from '../../server/src/lsp/recording-protocol';

/**
 * In bytes. An editor has a file only whole, and a longer one would not leave a browser's page enough memory; where the
 * server reads the disk itself, longer ones are read.
 */
const longestWhole = 100_000_000;

/** A long file that is handed over piece by piece, as it was when its first piece was asked for. */
export class FilePieces {
  private held: { readonly uri: string; readonly bytes: Uint8Array } | null = null;

  async read({ uri, from, length }: PieceAsked): Promise<PieceAnswer> {
    if (from === 0 || this.held?.uri !== uri) {
      const read = await whole(vscode.Uri.parse(uri));
      if (!(read instanceof Uint8Array)) return read;
      this.held = { uri, bytes: read };
    }
    const { bytes } = this.held;
    const piece = bytes.subarray(from, from + length);
    // Nothing is asked for after the end: what was read is let go.
    if (from + length >= bytes.length) this.held = null;
    return { kind: 'piece', bytes: charactersOf(piece), size: bytes.length };
  }
}

async function whole(uri: vscode.Uri): Promise<Uint8Array | PieceAnswer> {
  try {
    const { type, size } = await vscode.workspace.fs.stat(uri);
    if ((type & vscode.FileType.Directory) !== 0) return { kind: 'unreadable', why: 'it is a folder' };
    if (size > longestWhole) return { kind: 'unreadable', why: tooLong(size) };
    return await vscode.workspace.fs.readFile(uri);
  } catch (error) {
    if (error instanceof vscode.FileSystemError && error.code === 'FileNotFound') return { kind: 'missing' };
    return { kind: 'unreadable', why: error instanceof Error ? error.message : 'it could not be read' };
  }
}

function tooLong(size: number): string {
  return `it has ${Math.ceil(size / 1e6)} MB, and here ${longestWhole / 1e6} MB can be read: cut the flight out, or open it in an editor on this machine`;
}
