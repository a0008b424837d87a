import type { FilePieces, FileSystem, FoundScripts } from '../../server/src/workspace/file-system';

/** Files in memory, by their URI. A text that is an error can't be read, for that reason. */
export class MemoryFiles implements FileSystem {
  readonly files = new Map<string, string | Error>();
  readonly read: string[] = [];
  readonly refused = new Map<string, string>();

  constructor(files: Readonly<Record<string, string | Error>> = {}) {
    for (const [name, text] of Object.entries(files)) this.files.set(`test:///work/${name}`, text);
  }

  async readText(uri: string): Promise<string | null> {
    this.read.push(uri);
    const text = this.files.get(uri);
    if (text instanceof Error) throw text;
    return text ?? null;
  }

  /** In pieces of a few bytes each, so that whatever is read is cut everywhere. */
  async readPieces(uri: string): Promise<FilePieces | null> {
    const text = await this.readText(uri);
    if (text === null) return null;
    const all = new TextEncoder().encode(text);
    return { size: all.length, bytes: () => inPieces(all, 7) };
  }

  async list(folder: string): Promise<readonly string[]> {
    return [...this.files.keys()].filter((uri) => uri.slice(0, uri.lastIndexOf('/')) === folder);
  }

  folders(): readonly string[] {
    return ['test:///work'];
  }

  foldersOf(): readonly string[] {
    return this.folders();
  }

  async scriptsBelow(): Promise<FoundScripts> {
    const scripts = [...this.files.keys()].filter((uri) => uri.endsWith('.craft'));
    return { scripts, unread: [], isCut: false };
  }

  refusal(uri: string): string | null {
    return this.refused.get(uri) ?? null;
  }
}

async function* inPieces(all: Uint8Array, length: number): AsyncGenerator<Uint8Array> {
  for (let from = 0; from < all.length; from += length) yield all.subarray(from, from + length);
}
