import { type Dirent, readdir } from 'node:fs';
import { stat } from 'node:fs/promises';
import { join, relative, resolve } from 'node:path';
import { whyUnread } from '../../file-system/read-file';

/** What a path on the command line leads to. */
export interface FoundPaths {
  readonly files: readonly string[];
  /** A line for each thing that could not be looked at: the path itself, a folder below it. */
  readonly unreadable: readonly string[];
  /** Paths below a folder with the right ending that are no files but links or the like. */
  readonly leftOut: readonly string[];
}

/** What a path on the command line is. */
export type PathOnDisk =
  | { readonly kind: 'file' | 'folder' | 'pattern'; readonly path: string }
  | { readonly kind: 'missing'; readonly why: string };

/** A name that is there is taken as it is, whatever characters it holds; only else is it a pattern. */
export async function placeAt(path: string): Promise<PathOnDisk> {
  try {
    return { kind: (await stat(path)).isDirectory() ? 'folder' : 'file', path };
  } catch (error) {
    const why = await whyUnread(path, error);
    const { isDynamicPattern } = await import('tinyglobby');
    return isDynamicPattern(path) ? { kind: 'pattern', path } : { kind: 'missing', why };
  }
}

/** The files at a path: itself, those below a folder that have one of the endings, those that match a pattern. */
export async function filesAt(path: string, endings: readonly string[]): Promise<FoundPaths> {
  const place = await placeAt(path);
  switch (place.kind) {
    case 'file':
      return { files: [path], unreadable: [], leftOut: [] };
    case 'folder':
      return filesBelow(path, endings);
    case 'pattern':
      return matchesOf(path, endings);
    case 'missing':
      return { files: [], unreadable: [`${path}: ${place.why}`], leftOut: [] };
  }
}

async function filesBelow(folder: string, endings: readonly string[]): Promise<FoundPaths> {
  const patterns = endings.map((ending) => `**/*${ending}`);
  const search = await searched(patterns, folder);
  const leftOut = search.noFiles.filter((path) => endings.some((ending) => path.endsWith(ending)));
  return { files: search.files.map((file) => join(folder, file)), unreadable: search.unreadable, leftOut };
}

/** A pattern that ends in an ending of its own, as `*.txt` does, means what it says. */
async function matchesOf(pattern: string, endings: readonly string[]): Promise<FoundPaths> {
  const slashes = process.platform === 'win32' ? pattern.replaceAll('\\', '/') : pattern;
  const { files: matches, unreadable } = await searched([slashes], '.');
  const isOwn = /\.[\w{},]+$/.test(pattern);
  const files = isOwn ? matches : matches.filter((file) => endings.some((ending) => file.endsWith(ending)));
  const wanted = isOwn ? 'file' : `file that ends in ${endings.join(' or ')}`;
  const none = files.length > 0 ? [] : [`${pattern}: no ${wanted} matches this pattern`];
  return { files, unreadable: [...unreadable, ...none], leftOut: [] };
}

/** The files of the current folder, as absolute paths, that match one of these patterns or lie below it. */
export async function matching(patterns: readonly string[]): Promise<ReadonlySet<string>> {
  if (patterns.length === 0) return new Set();
  const { files } = await searched(patterns, '.');
  return new Set(files.map((file) => resolve(file)));
}

interface PathSearch {
  readonly files: readonly string[];
  /** A line for each folder that could not be looked into. */
  readonly unreadable: readonly string[];
  /** What is neither file nor folder where it was looked. */
  readonly noFiles: readonly string[];
}

/** In the order of their names. Hidden folders, `node_modules` and what links lead to are left out. */
async function searched(patterns: readonly string[], cwd: string): Promise<PathSearch> {
  const faults: Promise<string>[] = [];
  const noFiles: string[] = [];
  const looked = (folder: string, error: unknown, entries: readonly Dirent[]) => {
    if (error) faults.push(whyUnread(folder, error).then((why) => `${shownPath(folder)}: ${why}`));
    for (const entry of entries)
      if (!entry.isFile() && !entry.isDirectory()) noFiles.push(shownPath(join(folder, entry.name)));
  };
  // Loaded only here: a check of one file starts without it.
  const { glob } = await import('tinyglobby');
  const files = await glob(patterns, {
    cwd,
    ignore: ['**/node_modules/**'],
    followSymbolicLinks: false,
    fs: { readdir: watchedReaddir(looked) },
  });
  return { files: files.sort(), unreadable: await Promise.all(faults), noFiles };
}

type FolderVisitor = (folder: string, error: unknown, entries: readonly Dirent[]) => void;
type ReaddirAnswer = (error: NodeJS.ErrnoException | null, entries: Dirent[]) => void;

/** The search leaves out without a word what it can't look into: this tells what it found where. */
function watchedReaddir(looked: FolderVisitor): typeof readdir {
  return new Proxy(readdir, {
    apply: (_, __, [folder, options, answer]: [string, { withFileTypes: true }, ReaddirAnswer]) =>
      readdir(folder, options, (error, entries) => {
        looked(folder, error, entries ?? []);
        answer(error, entries);
      }),
  });
}

/** A path for people and programs, relative where that is shorter. A file named - is no standard input. */
export function shownPath(file: string): string {
  const near = relative('', resolve(file));
  if (near === '-') return `./${near}`;
  return near === '' || near.startsWith('..') ? file : near;
}
