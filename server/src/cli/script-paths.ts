import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import { glob, isDynamicPattern } from 'tinyglobby';

/** Files that a path on the command line leads to, or the line that says why there are none. */
export type Found = readonly string[] | string;

/** What a path on the command line is. */
export type Place =
  | { readonly kind: 'file' | 'folder' | 'pattern'; readonly path: string }
  | { readonly kind: 'missing'; readonly why: string };

/** A name that is there is taken as it is, whatever characters it holds; only else is it a pattern. */
export async function placeAt(path: string): Promise<Place> {
  try {
    return { kind: (await stat(path)).isDirectory() ? 'folder' : 'file', path };
  } catch (error) {
    return isDynamicPattern(path) ? { kind: 'pattern', path } : { kind: 'missing', why: reasonOf(error) };
  }
}

/** The files at a path: itself, those below a folder that have one of the endings, those that match a pattern. */
export async function filesAt(path: string, endings: readonly string[]): Promise<Found> {
  const place = await placeAt(path);
  switch (place.kind) {
    case 'file':
      return [path];
    case 'folder':
      return (
        await matching(
          endings.map((ending) => `**/*${ending}`),
          path,
        )
      ).map((file) => join(path, file));
    case 'pattern':
      return matchesOf(path, endings);
    case 'missing':
      return `${path}: ${place.why}`;
  }
}

/** A pattern that ends in an ending of its own, as `*.txt` does, means what it says. */
async function matchesOf(pattern: string, endings: readonly string[]): Promise<Found> {
  const slashes = process.platform === 'win32' ? pattern.replaceAll('\\', '/') : pattern;
  const matches = await matching([slashes], '.');
  const isOwn = /\.[\w{},]+$/.test(pattern);
  const files = isOwn ? matches : matches.filter((file) => endings.some((ending) => file.endsWith(ending)));
  if (files.length > 0) return files;
  const wanted = isOwn ? 'file' : `file that ends in ${endings.join(' or ')}`;
  return `${pattern}: no ${wanted} matches this pattern`;
}

/** In the order of their names. Hidden folders, `node_modules` and what links lead to are left out. */
async function matching(patterns: readonly string[], cwd: string): Promise<readonly string[]> {
  const files = await glob(patterns, { cwd, ignore: ['**/node_modules/**'], followSymbolicLinks: false });
  return files.sort();
}

/** Why a file or folder could not be read; ends a sentence. */
export function reasonOf(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  if (code === 'ENOENT' || code === 'ENOTDIR') return 'there is no such file or folder';
  if (code === 'EACCES' || code === 'EPERM') return 'it may not be read';
  return error instanceof Error ? error.message : String(error);
}
