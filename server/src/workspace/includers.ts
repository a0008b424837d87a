import { resolveInclude } from '../craft/include-path';
import { parseLine } from '../language/parser';
import { splitLines } from '../language/split-lines';
import { canonicalUri } from './canonical-uri';
import { type FileSystem, longestScript } from './file-system';
import type { FolderScripts } from './folder-scripts';

/** So many files are read at a time. */
const together = 16;

/** Of a script on the disk, what others ask about. */
interface Includer {
  /** The URIs of what it includes. */
  readonly files: ReadonlySet<string>;
  /** The words of its values, constants among them; none where it includes nothing. */
  readonly words: ReadonlySet<string>;
}

const nothing: Includer = { files: new Set(), words: new Set() };

/** A look at the scripts around those of one folder. */
interface FolderLook {
  /** Those around with what each includes; null while it is on its way. */
  found: ReadonlyMap<string, Includer> | null;
}

/**
 * Which files the scripts on the disk include: that a script is a part of others can't be seen in itself. They are
 * looked for when somebody asks, once for each folder, until something changes there.
 */
export class Includers {
  private readonly looks = new Map<string, FolderLook>();
  /** What each script includes, as far as it was read. */
  private readonly read = new Map<string, Promise<Includer>>();

  constructor(
    private readonly fileSystem: FileSystem,
    private readonly scripts: FolderScripts,
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
    const found = this.around(uri);
    if (found === null) return true;
    return [...found].some(([includer, { files }]) => includer !== uri && files.has(uri) && counts(includer));
  }

  /**
   * Whether a script on the disk that includes another one, itself or through others, uses a constant. As long as
   * nothing is known it does.
   */
  use(uri: string, constant: string, counts: (includer: string) => boolean): boolean {
    const found = this.around(uri);
    if (found === null) return true;
    const reached = new Set([uri]);
    for (const one of reached) {
      for (const [includer, { files, words }] of found) {
        if (!files.has(one) || reached.has(includer)) continue;
        if (counts(includer) && words.has(constant)) return true;
        reached.add(includer);
      }
    }
    return false;
  }

  /** The scripts around one; null while they are being looked for. */
  private around(uri: string): FolderLook['found'] {
    const folder = uri.slice(0, uri.lastIndexOf('/'));
    return (this.looks.get(folder) ?? this.start(folder, uri)).found;
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

  private async lookAround(uri: string): Promise<ReadonlyMap<string, Includer>> {
    const around = await Promise.all(
      this.fileSystem.foldersOf(uri).map((folder) => this.scripts.below(folder)),
    );
    const scripts = around.flatMap((one) => one.scripts);
    const found = new Map<string, Includer>();
    for (let from = 0; from < scripts.length; from += together) {
      const some = scripts.slice(from, from + together);
      const files = await Promise.all(some.map((script) => this.includedIn(script)));
      for (const [index, script] of some.entries()) found.set(script, files[index] ?? nothing);
    }
    return found;
  }

  private includedIn(script: string): Promise<Includer> {
    const known = this.read.get(script) ?? this.readIncludes(script);
    this.read.set(script, known);
    return known;
  }

  /** What can't be read includes nothing: whoever opens it is told why. */
  private async readIncludes(script: string): Promise<Includer> {
    const text = await this.fileSystem.readText(script).catch(() => null);
    if (text === null || text.length > longestScript) return nothing;
    const all = splitLines(text);
    const lines = all.filter((line) => line.text.trimStart().startsWith('include'));
    const files = lines.flatMap((line) => {
      const statement = parseLine(line.text);
      if (statement.kind !== 'include') return [];
      const uri = resolveInclude(script, statement.path.value);
      return uri === null ? [] : [canonicalUri(uri)];
    });
    return files.length === 0
      ? nothing
      : { files: new Set(files), words: new Set(all.flatMap((line) => wordsOfValue(line.text))) };
  }
}

/** The words behind the equals sign of a line; of a text in quotes none. */
function wordsOfValue(text: string): readonly string[] {
  const [, value = ''] = /=([^#"]*)/.exec(text) ?? [];
  return value.match(/[A-Za-z][\w-]*/g) ?? [];
}
