/**
 * Which files the packaged extension holds, by their path in the package and in the project.
 * What the manifest names is found there, so that a new contribution ships without being listed here again.
 */
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join, posix, sep } from 'node:path';

export interface ShippedFile {
  /** Where it lies in the package. */
  readonly path: string;
  /** Where it comes from, seen from the project's root. */
  readonly source: string;
}

/** What the editor shows about the extension; the README is for those who have the source. */
const texts: readonly ShippedFile[] = [
  { path: 'README.md', source: 'client/media/gallery.md' },
  { path: 'CHANGELOG.md', source: 'CHANGELOG.md' },
  { path: 'LICENSE', source: 'LICENSE' },
];

/** Folders that the extension reads from while it runs. */
const folders = ['client/media', 'client/starters', 'client/l10n', 'dist'];

/**
 * The command line is for a terminal, and the page of all checks for the editors that its server serves: ours asks for
 * the story of one. Suites and reports are for those who change the source.
 */
const leftOut =
  /^(dist\/propsoff(-[\w-]+)?\.js|dist\/CHECKS\.md|dist\/(bench|coverage|page|release|workbench-suite|web-workbench)\/.*|client\/media\/gallery\.md|.*\.map)$/;

function filesIn(root: string, folder: string): readonly string[] {
  if (!existsSync(join(root, folder))) return [];
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .map((name) => posix.join(folder, name.split(sep).join('/')))
    .filter((path) => statSync(join(root, path)).isFile());
}

function stringsIn(value: unknown): readonly string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(stringsIn) : [];
}

/** A text that can only be meant as a file of ours: no pattern, no address. */
const fileName = /^(\.\/)?[\w@./-]+\.(js|json|md|png|svg)$/;

/**
 * Every file that the manifest names.
 * @throws {Error} if one is not there: the editor would only tell a person who comes across it.
 */
function namedIn(root: string, manifest: Readonly<Record<string, unknown>>): readonly string[] {
  const { main, browser, icon, contributes } = manifest;
  const named = stringsIn([main, browser, icon, contributes])
    .filter((text) => fileName.test(text))
    .map((text) => posix.normalize(text));
  const missing = named.find((path) => !existsSync(join(root, path)));
  if (missing !== undefined) throw new Error(`package.json names ${missing}, which is not there`);
  return named;
}

/** All that ships, sorted by path, beside the manifest itself. */
export function shippedFiles(
  root: string,
  manifest: Readonly<Record<string, unknown>>,
): readonly ShippedFile[] {
  const translations = readdirSync(root).filter((name) => /^package\.nls(\.[\w-]+)?\.json$/.test(name));
  const paths = [
    ...namedIn(root, manifest),
    ...folders.flatMap((folder) => filesIn(root, folder)),
    ...translations,
  ];
  const wanted = [...new Set(paths)].filter((path) => !leftOut.test(path));
  return [...wanted.map((path) => ({ path, source: path })), ...texts].sort((a, b) =>
    a.path < b.path ? -1 : 1,
  );
}
