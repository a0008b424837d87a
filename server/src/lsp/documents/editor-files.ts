import type { Connection } from 'vscode-languageserver';
import { Roots } from '../../file-system/roots';
import {
  type FilePieces,
  type FileSystem,
  type FoundScripts,
  longestFile,
  mostScripts,
  pieceLength,
  TooLongFile,
  tooLong,
  whyUnreadable,
} from '../../workspace/file-system';
import { findScriptsRequest, listFolderRequest, readFileRequest } from '../files-protocol';
import { bytesOf, type FilePiece, readPieceRequest } from '../recording-protocol';

/** Files that can learn where the workspace's folders are. */
export interface ServerFiles extends FileSystem {
  setRoots(roots: readonly string[]): void;
  /** Whether the client hands over files: it is not asked before it has said so. */
  setHandedOver(isHandedOver: boolean): void;
  /** Whether the client reads some of them: it may be asked only once it has had its answer to initialize. */
  readonly asksClient: boolean;
}

/**
 * The editor's own file system: what is no file of this machine, and everything in a browser. A client that hands
 * over files is asked for each of them; that another one does not is reported at the include.
 */
export class EditorFiles implements ServerFiles {
  readonly asksClient = true;
  private roots = new Roots();
  private isHandedOver = false;

  constructor(private readonly connection: Connection) {}

  setRoots(roots: readonly string[]): void {
    this.roots = new Roots(roots);
  }

  setHandedOver(isHandedOver: boolean): void {
    this.isHandedOver = isHandedOver;
  }

  async readText(uri: string): Promise<string | null> {
    if (!this.isHandedOver) throw new Error('this editor hands over no files but those on this machine');
    const answer = await this.connection
      .sendRequest(readFileRequest, { uri, longest: longestFile })
      .catch((error: unknown) => {
        throw new Error(error instanceof Error ? error.message : 'it could not be read');
      });
    if (answer.kind === 'too-long') throw new TooLongFile(tooLong);
    if (answer.kind === 'unreadable') throw new Error(answer.why);
    return answer.kind === 'text' ? answer.text : null;
  }

  /** An editor has a file only whole: it hands it over piece by piece, up to a length that it can hold. */
  async readPieces(uri: string): Promise<FilePieces | null> {
    const looked = await this.pieceAt(uri, 0, 0);
    if (looked === null) return null;
    const { size, changedAt } = looked;
    return { size, changedAt, bytes: () => this.piecesOf(uri) };
  }

  private async *piecesOf(uri: string): AsyncGenerator<Uint8Array> {
    let [at, size] = [0, 0];
    do {
      const piece = await this.pieceAt(uri, at, pieceLength);
      if (piece === null || (at > 0 && piece.size !== size))
        throw new Error('it was changed while it was read');
      const bytes = bytesOf(piece.bytes);
      if (bytes.length === 0) return;
      yield bytes;
      at += bytes.length;
      size = piece.size;
    } while (at < size);
  }

  private async pieceAt(uri: string, from: number, length: number): Promise<FilePiece | null> {
    if (!this.isHandedOver) throw new Error('this editor hands over no files but those on this machine');
    const asked = { uri, from, length };
    const answer = await this.connection.sendRequest(readPieceRequest, asked).catch((error: unknown) => {
      throw new Error(whyUnreadable(error));
    });
    if (answer.kind === 'unreadable') throw new Error(answer.why);
    return answer.kind === 'piece' ? answer : null;
  }

  async list(folder: string): Promise<readonly string[]> {
    if (!this.isHandedOver) return [];
    try {
      const names = await this.connection.sendRequest(listFolderRequest, { uri: folder });
      return names.map((name) => `${folder}/${encodeURIComponent(name)}`);
    } catch {
      return [];
    }
  }

  folders(): readonly string[] {
    return this.roots.all;
  }

  foldersOf(uri: string): readonly string[] {
    return uri.startsWith('untitled:') ? [] : this.roots.rootsFor(uri);
  }

  async scriptsBelow(folder: string): Promise<FoundScripts> {
    const none = { scripts: [], unread: [], isCut: false };
    if (!this.isHandedOver) return none;
    try {
      return await this.connection.sendRequest(findScriptsRequest, { uri: folder, most: mostScripts });
    } catch (error) {
      return { ...none, unread: [{ uri: folder, why: whyUnreadable(error) }] };
    }
  }

  refusal(uri: string, fromUri: string): string | null {
    if (fromUri.startsWith('untitled:')) return 'this script is not saved yet, so nothing lies beside it';
    return this.roots.refusal(uri, fromUri);
  }
}
