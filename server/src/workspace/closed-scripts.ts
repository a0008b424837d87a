import type { Catalog } from '../catalog/catalog';
import type { Craft } from '../craft/craft';
import { inputKeys } from '../craft/keys';
import type { Included } from '../craft/layers';
import type { Script } from '../craft/script';
import type { FileSystem, Unread } from './file-system';
import type { FolderScripts } from './folder-scripts';
import { pathsMeant } from './path-patterns';

/** So many files are read at a time. */
const together = 16;

/** How far it is with what takes long. */
interface HowFar {
  readonly done: number;
  readonly of: number;
}

/** Called between any two steps: other messages are dealt with there. What it throws ends the work. */
export type Pace = (howFar?: HowFar) => Promise<void>;

/** What may have changed of a closed script: a file, who includes what, or anything. */
export type Touch = { readonly kind: 'file'; readonly uri: string } | { readonly kind: 'includers' | 'all' };

/** Which scripts lie in the workspace, and what could not be looked at. */
export interface Survey {
  /** Those that are not open and could be read. */
  readonly closed: readonly string[];
  readonly unread: readonly Unread[];
  /** Whether there are more scripts than are looked at. */
  readonly isCut: boolean;
}

/** What of a workspace is needed to look at scripts that nobody has opened. */
export interface WorkspaceOfClosedScripts {
  isOpen(uri: string): boolean;
  load(uri: string): Promise<Included>;
  /** Whether a file has been read. */
  isRead(uri: string): boolean;
  /** Whether a file that was read says something else on the disk by now; it is read anew then. */
  isOutdated(uri: string): Promise<boolean>;
  craftOf(script: Script): Craft;
  catalog(): Catalog;
  /** Whether anything that a craft hangs on is still being read or looked for. */
  isUnsettled(craft: Craft): boolean;
  /** Resolves when a file has been read. */
  nextFile(): Promise<void>;
}

/**
 * The scripts of the workspace's folders that nobody has opened. They are looked for and read when somebody asks; what
 * was read is kept until the disk says otherwise.
 */
export class ClosedScripts {
  /** Called when something has changed that closed scripts may hang on. */
  onTouched: (touch: Touch) => void = () => {};
  /** By folder, the patterns of files that are left out. */
  private leftOut: Patterns = new Map();

  constructor(
    private readonly fileSystem: FileSystem,
    private readonly scripts: FolderScripts,
    private readonly workspace: WorkspaceOfClosedScripts,
  ) {}

  /** Files that these patterns mean, each below its folder, are left out of all that looks through the workspace. */
  leaveOut(patterns: Patterns): void {
    if (isSamePatterns(this.leftOut, patterns)) return;
    this.leftOut = patterns;
    this.onTouched({ kind: 'all' });
  }

  /** Reads all scripts of the workspace, and of the folder of a script that lies in none of its folders. */
  async survey(about: string | null, pace: Pace): Promise<Survey> {
    const folders = new Set([
      ...this.fileSystem.folders(),
      ...(about === null ? [] : this.fileSystem.foldersOf(about)),
    ]);
    const found = await Promise.all([...folders].map((folder) => this.scripts.below(folder)));
    const isLeftOut = this.leavingOut();
    const all = [...new Set(found.flatMap(({ scripts }) => scripts))].filter((uri) => !isLeftOut(uri));
    await this.read(all, pace);
    const unread: Unread[] = found.flatMap((one) => one.unread);
    const closed: string[] = [];
    for (const uri of all) {
      if (this.workspace.isOpen(uri)) continue;
      const one = await this.workspace.load(uri);
      if (one.kind === 'script') closed.push(uri);
      else if ('why' in one) unread.push({ uri, why: one.why });
    }
    return { closed, unread, isCut: found.some(({ isCut }) => isCut) };
  }

  /** What of these has not been read yet is read. */
  private async read(all: readonly string[], pace: Pace): Promise<void> {
    const toRead = all.filter((uri) => !this.workspace.isOpen(uri) && !this.workspace.isRead(uri));
    for (let from = 0; from < toRead.length; from += together) {
      await pace({ done: from, of: toRead.length });
      await Promise.all(toRead.slice(from, from + together).map((uri) => this.workspace.load(uri)));
    }
  }

  /** The crafts of scripts that are not open, each with all that it includes; they don't follow later changes. */
  async crafts(closed: readonly string[], pace: Pace): Promise<readonly Craft[]> {
    const crafts: Craft[] = [];
    for (const [index, uri] of closed.entries()) {
      if (index % together === 0) await pace();
      const craft = await this.craft(uri);
      if (craft !== null) crafts.push(craft);
    }
    return crafts;
  }

  /** Null for a script that was opened or went away meanwhile. */
  async craft(uri: string): Promise<Craft | null> {
    const read = this.workspace.isOpen(uri) ? null : await this.workspace.load(uri);
    if (read?.kind !== 'script') return null;
    const craft = this.workspace.craftOf(read.script);
    while (craft.layers().isPending) {
      await this.workspace.nextFile();
      craft.changed([inputKeys.include]);
    }
    return craft;
  }

  /** Where nobody tells what happens on the disk: which scripts there are is looked up anew. */
  forgetLists(): void {
    this.scripts.forget();
  }

  /** The same with its board and all else that its findings hang on. */
  async settledCraft(uri: string): Promise<Craft | null> {
    for (;;) {
      const craft = await this.craft(uri);
      if (craft === null) return null;
      const isOfToday = () => craft.catalog === this.workspace.catalog();
      while (isOfToday() && this.workspace.isUnsettled(craft)) {
        await this.workspace.nextFile();
        craft.changed([inputKeys.include]);
      }
      // What came in changed what the workspace knows: the script is read by that.
      if (isOfToday()) return craft;
    }
  }

  /** Whether any of these files says something else on the disk than was read: nobody may have told. */
  async areOutdated(uris: readonly string[]): Promise<boolean> {
    let isAny = false;
    for (let from = 0; from < uris.length; from += together) {
      const some = uris.slice(from, from + together).filter((uri) => !this.workspace.isOpen(uri));
      const are = await Promise.all(some.map((uri) => this.workspace.isOutdated(uri)));
      isAny ||= are.includes(true);
    }
    return isAny;
  }

  private leavingOut(): (uri: string) => boolean {
    const rules = [...this.leftOut].map(([folder, patterns]) => ({
      start: `${folder}/`,
      isMeant: pathsMeant(patterns),
    }));
    return (uri) =>
      rules.some(({ start, isMeant }) => uri.startsWith(start) && isMeant(pathIn(uri.slice(start.length))));
  }
}

type Patterns = ReadonlyMap<string, readonly string[]>;

function isSamePatterns(one: Patterns, other: Patterns): boolean {
  return JSON.stringify([...one]) === JSON.stringify([...other]);
}

/** The path of a canonical URI's end, as people write it. */
function pathIn(part: string): string {
  return part.split('/').map(decodeURIComponent).join('/');
}
