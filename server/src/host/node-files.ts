import { readdir, readFile, realpath } from 'node:fs/promises';
import { URI } from 'vscode-uri';
import type { FileHost } from '../workspace/file-host';
import { isBelow, Roots } from './roots';

/** The disk as a Node process sees it. Scripts may include only what lies below one of the roots. */
export class NodeFiles implements FileHost {
  private roots: Roots;

  constructor(roots: readonly string[]) {
    this.roots = new Roots(roots);
  }

  setRoots(roots: readonly string[]): void {
    this.roots = new Roots(roots);
  }

  async readText(uri: string): Promise<string | null> {
    const path = URI.parse(uri).fsPath;
    try {
      const real = URI.file(await realpath(path)).toString();
      if (await this.leadsOut(uri, real)) throw new Error('a link in its path leads out of the workspace');
      return await readFile(path, 'utf8');
    } catch (error) {
      if (isMissing(error)) return null;
      throw error instanceof Error ? new Error(reason(error)) : error;
    }
  }

  async list(folder: string): Promise<readonly string[]> {
    try {
      const entries = await readdir(URI.parse(folder).fsPath, { withFileTypes: true });
      return entries
        .filter((entry) => !entry.isDirectory())
        .map(({ name }) => `${folder}/${encodeURIComponent(name)}`);
    } catch {
      return [];
    }
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
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  return code === 'ENOENT' || code === 'ENOTDIR';
}

function reason(error: Error): string {
  const code = 'code' in error ? error.code : undefined;
  if (code === 'EISDIR') return 'it is a folder';
  if (code === 'EACCES' || code === 'EPERM') return 'it may not be read';
  return error.message;
}
