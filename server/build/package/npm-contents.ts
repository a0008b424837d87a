/** What the package for npm holds: the command line and the server, with nothing to be installed beside it. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { outputTypes } from '../output-types';

/** What a `package.json` holds. */
export type Manifest = Readonly<Record<string, unknown>>;

/** The types lie where `exports` says. */
const types = 'output.d.ts';

/** Both programs with their parts, what they read beside them, and the licences of what they are built with. */
const program = /^((propsoff|server)(-[\w-]+)?\.js|catalog\.json|CHECKS\.md|NOTICES\.txt)$/;

const texts: Readonly<Record<string, string>> = {
  'README.md': 'server/build/package/npm-readme.md',
  LICENSE: 'LICENSE',
};

function namesIn(root: string, folder: string, wanted: RegExp): readonly string[] {
  return readdirSync(join(root, folder))
    .filter((name) => wanted.test(name))
    .map((name) => `${folder}/${name}`)
    .sort();
}

/** Every file of the package by its path, but the manifest. */
export function npmFiles(root: string): ReadonlyMap<string, Buffer> {
  const same = [...namesIn(root, 'dist', program), ...namesIn(root, 'schemas/output', /\.schema\.json$/)];
  const read = (path: string) => readFileSync(join(root, path));
  return new Map([
    ...same.map((path) => [path, read(path)] as const),
    ...Object.entries(texts).map(([path, source]) => [path, read(source)] as const),
    [types, Buffer.from(outputTypes())],
  ]);
}

/**
 * The manifest of the package, made of the project's own, which is the extension's as well. It holds no script and no
 * dependency: nothing is run or fetched where it is installed.
 */
export function npmManifest(root: string): Manifest {
  const read = (path: string) => JSON.parse(readFileSync(join(root, path), 'utf8')) as Manifest;
  const { name, version, license, keywords, engines, bin } = read('package.json');
  const { description } = read('package.nls.json');
  const { node } = engines as Readonly<Record<string, string>>;
  const paths = [...npmFiles(root).keys()].map((path) => path.split('/')[0]);
  return {
    name,
    version,
    description,
    license,
    keywords,
    type: 'commonjs',
    engines: { node },
    bin,
    exports: {
      '.': { types: `./${types}` },
      './schemas/output/*': './schemas/output/*',
      './package.json': './package.json',
    },
    types,
    files: [...new Set(paths)].sort(),
  };
}
