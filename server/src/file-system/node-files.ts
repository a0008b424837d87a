import { readdir, realpath } from 'node:fs/promises';
import { URI } from 'vscode-uri';
import { type FilePieces, type FileSystem, type FoundScripts, TooLongFile } from '../workspace/file-system';
import { fileText } from './file-text';
import { readBytes, readPiecesOf } from './read-file';
import { codeOf, reasonOf } from './reasons';
import { isBelow, Roots } from './roots';
import { scriptsBelow } from './scripts-below';

/** The disk as a Node process sees it. Scripts may include only what lies below one of the roots. */
export class NodeFiles implements FileSystem {
  private roots: Roots;

  constructor(roots: readonly string[]) {
    this.roots = new Roots(roots);
  }

  setRoots(roots: readonly string[]): void {
    this.roots = new Roots(roots);
  }

  async readText(uri: string): Promise<string | null> {
    return this.ifThere(uri, async (path) => fileText(await readBytes(path)));
  }

  async readPieces(uri: string): Promise<FilePieces | null> {
    return this.ifThere(uri, readPiecesOf);
  }

  /** What is read of a file; null where there is none. */
  private async ifThere<T>(uri: string, read: (path: string) => Promise<T>): Promise<T | null> {
    const path = URI.parse(uri).fsPath;
    try {
      const real = URI.file(await realpath(path)).toString();
      if (await this.leadsOut(uri, real)) throw new Error('a link in its path leads out of the workspace');
      return await read(path);
    } catch (error) {
      if (isMissing(error) || (error instanceof Error && isMissing(error.cause))) return null;
      throw error instanceof TooLongFile ? error : new Error(reasonOf(error));
    }
  }

  async list(folder: string): Promise<readonly string[]> {
    try {
      const entries = await readdir(URI.parse(folder).fsPath, { withFileTypes: true });
      return entries
        .filter((entry) => !entry.isDirectory())
        .map(({ name }) => `${folder}/${encodeURIComponent(name)}`);
    } catch (error) {
      if (isMissing(error)) return [];
      throw new Error(reasonOf(error));
    }
  }

  folders(): readonly string[] {
    return this.roots.all;
  }

  foldersOf(uri: string): readonly string[] {
    return uri.startsWith('file:') ? this.roots.rootsFor(uri) : [];
  }

  scriptsBelow(folder: string): Promise<FoundScripts> {
    return scriptsBelow(folder);
  }

  refusal(uri: string, fromUri: string): string | null {
    if (!uri.startsWith('file:')) return 'only files on this machine can be included here';
    return this.roots.refusal(uri, fromUri);
  }

  /** Whether the real path of a file below a root lies below no root's real path. */
  private async leadsOut(uri: string, real: string): Promise<boolean> {
    const roots = this.roots.holding(uri);
    if (roots.length === 0) return false;
    const realRoots = await Promise.all(
      roots.map(async (root) => URI.file(await realpath(URI.parse(root).fsPath)).toString()),
    );
    return !realRoots.some((root) => isBelow(real, root));
  }
}

function isMissing(error: unknown): boolean {
  const code = codeOf(error);
  return code === 'ENOENT' || code === 'ENOTDIR';
}
