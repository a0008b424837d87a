import type { Additions } from '../additions/additions';
import type { AdditionProblem } from '../additions/problem';
import type { FileKind } from '../additions/read-addition';
import { type Catalog, loadCatalog } from '../catalog/catalog';
import type { Bundle } from '../catalog/model/bundle';
import { fileName } from '../craft/include-path';
import { canonicalUri } from './canonical-uri';
import { type FileSystem, withoutMark } from './file-system';

/** The folders of a workspace in which files add to the catalogue: parts of all kinds, and board profiles. */
export const additionFolders: ReadonlyMap<string, FileKind> = new Map([
  ['propsoff', 'addition'],
  ['boards', 'board'],
]);

function kindOf(file: string): FileKind {
  return additionFolders.get(file.split('/').at(-2) ?? '') ?? 'addition';
}

/** A file as people know it: `propsoff/club.json`. */
function inFolder(file: string): string {
  return `${file.split('/').at(-2) ?? ''}/${fileName(file)}`;
}

/** The files that a workspace adds to the catalogue, kept as the disk and the editor have them. */
export class AdditionFiles {
  private readonly ownCatalog: Catalog;
  private additions: Additions | null = null;
  private roots: readonly string[] = [];
  /** Texts of files that are open in an editor: they count more than the disk. */
  private readonly open = new Map<string, string>();
  private unreadable = new Map<string, readonly AdditionProblem[]>();

  constructor(
    private readonly builtIn: Bundle,
    private readonly fileSystem: FileSystem,
  ) {
    this.ownCatalog = loadCatalog(builtIn);
  }

  get catalog(): Catalog {
    return this.additions?.catalog ?? this.ownCatalog;
  }

  /** What is wrong, by file; the empty list for a file that is fine. */
  get problems(): ReadonlyMap<string, readonly AdditionProblem[]> {
    return new Map([...(this.additions?.problems ?? []), ...this.unreadable]);
  }

  /** The text that the problems of a file count in. */
  textOf(file: string): string {
    return this.additions?.textOf(file) ?? '';
  }

  /** Whether a file is one of those that add to the catalogue. */
  isAddition(uri: string): boolean {
    const key = canonicalUri(uri);
    return (
      /\.jsonc?$/.test(key) && this.folders().some((folder) => key.slice(0, key.lastIndexOf('/')) === folder)
    );
  }

  isSame(uri: string, file: string): boolean {
    return canonicalUri(uri) === file;
  }

  /** The workspace's folders are these now: all is read anew. True when the catalogue or a problem may have changed. */
  async setRoots(roots: readonly string[]): Promise<boolean> {
    this.roots = roots.map((root) => canonicalUri(root).replace(/\/$/, ''));
    return this.reload();
  }

  /** Something appeared, changed or went away in one of the folders, or a folder did. */
  async diskChanged(uri: string): Promise<boolean> {
    const key = canonicalUri(uri);
    const concerns =
      this.isAddition(key) || this.folders().some((folder) => `${folder}/`.startsWith(`${key}/`));
    return concerns && this.reload();
  }

  /** An editor shows a file, with this text. */
  async opened(uri: string, text: string): Promise<boolean> {
    const key = canonicalUri(uri);
    this.open.set(key, text);
    const additions = await this.loaded();
    // It may have been edited or closed meanwhile.
    const now = this.open.get(key);
    return now !== undefined && additions.update(new Map([[key, now]]));
  }

  async closed(uri: string): Promise<boolean> {
    this.open.delete(canonicalUri(uri));
    return this.reload();
  }

  /** What reads the files is loaded with the first of them: most workspaces have none, and their start need not wait. */
  private async loaded(): Promise<Additions> {
    const { Additions } = await import('../additions/additions');
    this.additions ??= new Additions(this.builtIn, this.ownCatalog, inFolder, kindOf);
    return this.additions;
  }

  private folders(): readonly string[] {
    return this.roots.flatMap((root) => [...additionFolders.keys()].map((folder) => `${root}/${folder}`));
  }

  private async reload(): Promise<boolean> {
    const unreadable = new Map<string, readonly AdditionProblem[]>();
    const tell = (place: string, error: unknown) => {
      const message = error instanceof Error ? error.message : 'it could not be read';
      unreadable.set(place, [{ id: 'addition/unreadable', message, start: 0, end: 0 }]);
    };
    const filesIn = async (folder: string) => {
      try {
        return await this.fileSystem.list(folder);
      } catch (error) {
        tell(folder, error);
        return [];
      }
    };
    const found = (await Promise.all(this.folders().map(filesIn))).flat();
    const files = found.map(canonicalUri).filter((uri) => this.isAddition(uri));
    const texts = new Map<string, string | null>(
      [...(this.additions?.problems.keys() ?? [])].map((file) => [file, null]),
    );
    const read = async (file: string) => {
      try {
        const text = await this.fileSystem.readText(file);
        texts.set(file, text === null ? null : withoutMark(text));
      } catch (error) {
        tell(file, error);
      }
    };
    await Promise.all(files.map(read));
    for (const [file, text] of this.open) if (this.isAddition(file)) texts.set(file, text);
    const isSame = unreadable.size === 0 && this.unreadable.size === 0;
    this.unreadable = unreadable;
    const isNothing = texts.size === 0;
    return (!isNothing && (await this.loaded()).update(texts)) || !isSame;
  }
}
