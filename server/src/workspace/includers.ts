import { resolveInclude } from '../craft/include-path';
import { parseLine } from '../language/parser';
import { splitLines } from '../language/split-lines';
import { canonicalUri } from './canonical-uri';
import { type FileSystem, longestScript } from './file-system';

/** So many files are read at a time. */
const together = 16;

/** A look at the scripts around those of one folder. */
interface FolderLook {
  /** Those around with what each includes; null while it is on its way. */
  found: ReadonlyMap<string, ReadonlySet<string>> | null;
}

/**
 * Which files the scripts on the disk include: that a script is a part of others can't be seen in itself. They are
 * looked for when somebody asks, once for each folder, until something changes there.
 */
export class Includers {
  private readonly looks = new Map<string, FolderLook>();
  /** What each script includes, as far as it was read. */
  private readonly read = new Map<string, Promise<ReadonlySet<string>>>();

  constructor(
    private readonly fileSystem: FileSystem,
    /** Told when a look has ended. */
    private readonly onLooked: () => void,
  ) {}

  get isLooking(): boolean {
    return [...this.looks.values()].some(({ found }) => found === null);
  }

  /**
   * Whether a script on the disk includes another. `counts` says for which ones the disk counts. As long as nothing
   * is known it is taken for a part: what a craft lacks is better reported late than wrongly.
   */
  includes(uri: string, counts: (includer: string) => boolean): boolean {
    const folder = uri.slice(0, uri.lastIndexOf('/'));
    const { found } = this.looks.get(folder) ?? this.start(folder, uri);
    if (found === null) return true;
    return [...found].some(([includer, files]) => includer !== uri && files.has(uri) && counts(includer));
  }

  /** A file or a folder is another one now. */
  forget(): void {
    this.looks.clear();
    this.read.clear();
  }

  private start(folder: string, uri: string): FolderLook {
    const look: FolderLook = { found: null };
    this.looks.set(folder, look);
    void this.lookAround(uri).then((found) => {
      look.found = found;
      // What was forgotten meanwhile is old.
      if (this.looks.get(folder) === look) this.onLooked();
    });
    return look;
  }

  private async lookAround(uri: string): Promise<ReadonlyMap<string, ReadonlySet<string>>> {
    const scripts = (await this.fileSystem.scriptsAround(uri)).map(canonicalUri);
    const found = new Map<string, ReadonlySet<string>>();
    for (let from = 0; from < scripts.length; from += together) {
      const some = scripts.slice(from, from + together);
      const files = await Promise.all(some.map((script) => this.includedIn(script)));
      for (const [index, script] of some.entries()) found.set(script, files[index] ?? new Set());
    }
    return found;
  }

  private includedIn(script: string): Promise<ReadonlySet<string>> {
    const known = this.read.get(script) ?? this.readIncludes(script);
    this.read.set(script, known);
    return known;
  }

  /** What can't be read includes nothing: whoever opens it is told why. */
  private async readIncludes(script: string): Promise<ReadonlySet<string>> {
    const text = await this.fileSystem.readText(script).catch(() => null);
    if (text === null || text.length > longestScript) return new Set();
    const lines = splitLines(text).filter((line) => line.text.trimStart().startsWith('include'));
    const files = lines.flatMap((line) => {
      const statement = parseLine(line.text);
      if (statement.kind !== 'include') return [];
      const uri = resolveInclude(script, statement.path.value);
      return uri === null ? [] : [canonicalUri(uri)];
    });
    return new Set(files);
  }
}
