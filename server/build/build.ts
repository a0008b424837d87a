import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type BuildOptions, build } from 'esbuild';
import { version } from '../../package.json';
import { checksPage } from './checks-page';
import { compileCatalog } from './compile-catalog';
import { buildInParts } from './in-parts';
import { bundledInputs, noticesOf } from './notices';

const root = join(__dirname, '../..');
const dist = join(root, 'dist');

const { bundle, problems } = compileCatalog(root);
if (problems.length > 0) {
  console.error(`schemas: ${problems.length} problem(s)\n${problems.join('\n')}`);
  process.exit(1);
}

/** For a debugger: code as it was written, with maps to the source. */
const forDebugging = process.argv.includes('--debug');

const shared = {
  bundle: true,
  minify: !forDebugging,
  sourcemap: forDebugging && 'inline',
  // Tells which packages came in: their licences are put beside the bundles.
  metafile: true,
  // Every package's licence is in NOTICES.txt.
  legalComments: 'none',
  logLevel: 'warning',
  // Where the packages really lie goes into no file and no name of one: the same source makes the same bytes.
  preserveSymlinks: true,
  absWorkingDir: root,
} satisfies BuildOptions;

/** The catalogue lies in a file beside the programs: they are then code alone, and share it. */
const catalogFile = 'catalog.json';

const engine = {
  ...shared,
  platform: 'node',
  format: 'cjs',
  target: 'node20',
  // One of the libraries has a main file that no bundler can look into.
  mainFields: ['module', 'main'],
  // Of another only the parser is wanted: its main file brings along all that makes values of what was parsed.
  alias: { yaml: join(root, 'node_modules/yaml/browser/dist/parse/parser.js') },
  define: {
    PROPSOFF_CATALOG: JSON.stringify(catalogFile),
    PROPSOFF_VERSION: JSON.stringify(version),
  },
} satisfies BuildOptions;

/** Nothing stands in for what only Node has: a module of Node's that is imported here stops the build. */
const inBrowser: BuildOptions = { platform: 'browser', target: 'es2022' };

const inNode = {
  define: {
    ...engine.define,
    // One of the libraries asks where its module lies in order to load others; bundled, it lies where we do.
    'import.meta.url': '__filename',
  },
};

/** The programs for Node, by their names in `dist/`, each with what starts it and what it nearly always loads. */
const inParts = [
  ['server', 'server/src/lsp/main.ts', 'server/src/lsp/main.ts'],
  ['propsoff', 'server/src/cli/main.ts', 'server/src/cli/commands/check.ts'],
] as const;

/** What the source requires when a board's text is to be read: parts of their own, by their names. */
const forBoardTexts = {
  'board-reading': 'server/src/board/layer/on-demand.ts',
  'board-answers': 'server/src/features/board/on-demand.ts',
  yaml: 'server/src/board/listing/containers/yaml.ts',
};

/** Every file that ships but the server and the command line, by its name in `dist/`. */
const outputs: readonly BuildOptions[] = [
  {
    ...engine,
    ...inBrowser,
    entryPoints: ['server/src/lsp/web.ts'],
    outfile: 'dist/web/server.js',
    format: 'iife',
  },
  {
    ...shared,
    ...inBrowser,
    entryPoints: ['client/src/web.ts'],
    outfile: 'dist/web/extension.js',
    format: 'cjs',
    external: ['vscode'],
  },
  {
    ...shared,
    entryPoints: ['client/src/extension.ts'],
    outfile: 'dist/extension.js',
    platform: 'node',
    format: 'cjs',
    target: 'node20',
    external: ['vscode'],
  },
  {
    ...shared,
    entryPoints: {
      sheet: 'client/sheet/main.ts',
      learn: 'client/learn/main.ts',
      compare: 'client/compare/main.ts',
      card: 'client/card/main.ts',
      find: 'client/find/main.ts',
      recording: 'client/recording/main.ts',
    },
    outdir: 'dist',
    platform: 'browser',
    format: 'iife',
    target: 'es2022',
  },
];

async function main(): Promise<void> {
  rmSync(dist, { recursive: true, force: true });
  mkdirSync(dist);
  writeFileSync(join(dist, catalogFile), inAscii(JSON.stringify(bundle)));
  const built = await Promise.all([
    ...outputs.map((output) => build(output)),
    ...inParts.map(([name, entryPoint, start]) =>
      buildInParts(name, entryPoint, start, forBoardTexts, { ...engine, ...inNode, outdir: 'dist' }),
    ),
  ]);
  const inputs = built.flatMap(({ metafile }) => bundledInputs(metafile));
  writeFileSync(join(dist, 'CHECKS.md'), checksPage(bundle));
  writeFileSync(join(dist, 'NOTICES.txt'), noticesOf(root, inputs));
}

/** JSON with its few other characters escaped: Node reads and parses plain ASCII in two thirds of the time. */
function inAscii(json: string): string {
  return json.replace(/[^\x20-\x7e]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`);
}

main().catch((error: unknown) => {
  console.error(error);
  process.exit(1);
});
