import { basename, dirname, relative, resolve, sep } from 'node:path';
import { additionFolders } from '../../workspace/addition-files';
import { placeAt } from './script-paths';

/** The endings of files that a check reads: scripts, boards' texts, and what a folder adds. */
const endings = /\.(craft|boardtext|jsonc?)$/;

/** The folders in which a change may change what a check finds. */
export class WatchedPlaces {
  /** Absolute folders; true: with all below them. */
  private readonly folders = new Map<string, boolean>();
  /** Absolute files that count whatever they end in. */
  private readonly files = new Set<string>();
  private readonly taken = new Set<string>();

  constructor() {
    this.add('.', false);
    for (const folder of additionFolders) this.add(folder, false);
  }

  /** The folders that were not taken yet and are there: for a new watcher. */
  async takeNew(): Promise<readonly string[]> {
    const fresh: string[] = [];
    for (const folder of this.folders.keys()) {
      if (this.taken.has(folder)) continue;
      if ((await placeAt(folder)).kind !== 'folder') {
        this.add(dirname(folder), false); // it is told from there when it comes
        continue;
      }
      this.taken.add(folder);
      fresh.push(folder);
    }
    return fresh;
  }

  /** What the command line names: a folder with all below it, a pattern from its first free part on. */
  async addArguments(paths: readonly string[]): Promise<void> {
    for (const path of paths.length === 0 ? ['.'] : paths) {
      const place = await placeAt(path);
      if (place.kind === 'folder') this.add(path, true);
      else if (place.kind === 'pattern') this.add(fixedPart(path), true);
      else this.addFile(path);
    }
  }

  /** A file that was read; its folder is told of what comes and goes. */
  addFile(path: string): void {
    this.files.add(resolve(path));
    this.add(dirname(resolve(path)), false);
  }

  /** Whether something is none of our business: what a watcher need not look at. */
  isOutside(path: string, isFolder: boolean | undefined): boolean {
    const full = resolve(path);
    if (this.folders.has(full) || this.files.has(full)) return false;
    if (isFolder !== false && this.leadsToPlace(full)) return false;
    if (isFolder === false && !endings.test(full)) return true;
    if (this.folders.has(dirname(full)) && isFolder !== true) return false;
    return !this.isDeepBelow(full);
  }

  /** A folder that is missing may come with those above it. */
  private leadsToPlace(full: string): boolean {
    return [...this.folders.keys()].some((folder) => folder.startsWith(`${full}${sep}`));
  }

  private isDeepBelow(full: string): boolean {
    return [...this.folders].some(([folder, isDeep]) => {
      if (!isDeep || !full.startsWith(folder.endsWith(sep) ? folder : `${folder}${sep}`)) return false;
      const steps = relative(folder, full).split(sep);
      return !steps.some((step) => step === 'node_modules' || step.startsWith('.'));
    });
  }

  private add(path: string, isDeep: boolean): void {
    const full = resolve(path);
    if (isDeep && this.folders.get(full) === false) this.taken.delete(full);
    this.folders.set(full, isDeep || this.folders.get(full) === true);
  }
}

/** The folder in front of the first part that holds a star, a bracket or the like. */
function fixedPart(pattern: string): string {
  const steps = pattern.split('/');
  const free = steps.findIndex((step) => /[*?[\]{}()!+@]/.test(step));
  const fixed = steps.slice(0, free).join('/');
  return fixed === '' ? (pattern.startsWith('/') ? '/' : '.') : fixed;
}

/** A changed file for people. */
export function nameOf(path: string): string {
  const near = relative('', path);
  return near.startsWith('..') ? basename(path) : near;
}
