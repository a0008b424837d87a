/**
 * `npm run page`: the page that needs no install, `dist/page/propsoff.html`, made of what the build has left in `dist/`.
 * Beside it lies what a host needs so that it works without a network; the page itself is whole without them.
 * `--unweighed` makes the same bytes in a third of the time, and does not look how well they compress.
 */
import { createHash } from 'node:crypto';
import { copyFileSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, gzipSync } from 'node:zlib';
import { type BuildOptions, build, transform } from 'esbuild';
import { minify } from 'oxc-minify';
import { version } from '../../package.json';
import titles from '../../package.nls.json';
import { compacted } from './compact';
import { bundledInputs, noticesOf } from './notices';

/** Bytes, of the page as a host sends it that compresses by Brotli: it may grow no larger. */
const largest = 800_000;

const root = join(__dirname, '../..');
const from = join(root, 'client/one-page');
const to = join(root, 'dist/page');

const read = (path: string) => readFileSync(join(root, path), 'utf8');

const shared = {
  bundle: true,
  minify: true,
  write: false,
  metafile: true,
  legalComments: 'none',
  logLevel: 'warning',
  preserveSymlinks: true,
  absWorkingDir: root,
  platform: 'browser',
  target: 'es2022',
  format: 'iife',
  mainFields: ['module', 'main'],
} satisfies BuildOptions;

/** What the extension's commands are called. */
function commandTitles(): Record<string, string> {
  return Object.fromEntries(Object.entries(titles).filter(([key]) => key.startsWith('command.')));
}

/** The page's own script: the extension's code with this page in the editor's place. */
const own: BuildOptions = {
  ...shared,
  entryPoints: ['client/one-page/main.ts'],
  alias: {
    vscode: join(from, 'host/vscode.ts'),
    'vscode-languageserver-protocol': join(from, 'message-types.ts'),
  },
  define: { PROPSOFF_TITLES: JSON.stringify(commandTitles()) },
  // What the editor's interface lacks here must stop the build, not the page.
  logOverride: { 'import-is-undefined': 'error' },
};

const views: BuildOptions = { ...shared, entryPoints: ['client/one-page/views.ts'] };

const worker: BuildOptions = { ...shared, entryPoints: ['client/one-page/service-worker.ts'] };

/** The page's own styles; each may say otherwise than those before it. */
const pageStyles = [
  'client/page/mark.css',
  ...['frame', 'tabs', 'asked', 'script-editor', 'narrow'].map((name) => `client/one-page/${name}.css`),
];

/** Styles of the extension's pages, as the build has left them; and scripts to begin with. */
const styles = ['sheet', 'learn', 'compare', 'card', 'find', 'recording'].map((name) => `${name}.css`);
const starters = ['first-craft', 'racer', 'freestyle', 'hall-craft', 'long-flight'].map(
  (name) => `client/starters/${name}.craft`,
);

async function scriptOf(options: BuildOptions): Promise<{ text: string; inputs: readonly string[] }> {
  const { outputFiles = [], metafile } = await build({ ...options, outdir: 'dist/page' });
  const text = outputFiles.find(({ path }) => path.endsWith('.js'))?.text ?? '';
  return { text: await smallest(text), inputs: bundledInputs(metafile) };
}

/** The bundler works fast and leaves a sixteenth that a second look finds. */
async function smallest(script: string): Promise<string> {
  const compress = { target: shared.target };
  const { code, errors } = await minify('page.js', script, { compress, mangle: { toplevel: true } });
  if (errors.length > 0) throw new Error(errors.map(({ message }) => message).join('\n'));
  return code.trim();
}

function hashOf(text: string): string {
  return createHash('sha256').update(text).digest('base64');
}

/** Inside a page, nothing in a script may look like its end, or like the beginning of one in it. */
function inline(script: string): string {
  return script.replace(/<(?=\/script|script|!--)/gi, '\\x3c');
}

/** Nothing but what is inside the page runs or is shown, and nothing is asked of anybody but its own host. */
function policyOf(scripts: readonly string[], nonce: string): string {
  const hashes = scripts.map((script) => `'sha256-${hashOf(script)}'`).join(' ');
  return [
    "default-src 'none'",
    `script-src ${hashes}`,
    `style-src 'nonce-${nonce}'`,
    // A browser that edits a text in place writes such itself. Nothing can be loaded by one.
    "style-src-attr 'unsafe-inline'",
    "worker-src blob: 'self'",
    "manifest-src 'self'",
    'img-src data:',
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');
}

const icon =
  "data:image/svg+xml,%3Csvg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 16 16' fill='none' stroke='%233b6ea5' stroke-width='1.6' stroke-linecap='round'%3E%3Cpath d='M8 8 3.5 3.5M8 8l4.5-4.5M8 8l-4.5 4.5M8 8l4.5 4.5'/%3E%3Ccircle cx='3.2' cy='3.2' r='2.2'/%3E%3Ccircle cx='12.8' cy='3.2' r='2.2'/%3E%3Ccircle cx='3.2' cy='12.8' r='2.2'/%3E%3Ccircle cx='12.8' cy='12.8' r='2.2'/%3E%3C/svg%3E";

/** Texts by their names, as a page holds them: as they are, for a text in a text compresses worse. */
function packed(parts: ReadonlyMap<string, string>): string {
  return [...parts]
    .map(([name, text]) => {
      const wrong = /<(\/script|script|!--)|[\r\0]/i.exec(text);
      if (wrong !== null)
        throw new Error(`${name} would not be read back as it is: ${JSON.stringify(wrong[0])}`);
      return `<script type="text/plain" data-part="${name}">${text}</script>`;
    })
    .join('\n');
}

async function styleOf(paths: readonly string[]): Promise<string> {
  const { code } = await transform(paths.map(read).join('\n'), { loader: 'css', minify: true });
  return code.trim();
}

async function pageOf(main: string, views: string, first: string, later: string): Promise<string> {
  const [theme, page] = await Promise.all([styleOf(['client/one-page/theme.css']), styleOf(pageStyles)]);
  const nonce = createHash('sha256').update(main).update(later).digest('hex').slice(0, 24);
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policyOf([main, views], nonce)}">
<meta name="viewport" content="width=device-width, initial-scale=1, interactive-widget=resizes-content">
<meta name="description" content="Checks, explains and completes the settings of small multirotors. Nothing is sent.">
<title>Propsoff</title>
<link rel="icon" href="${icon}">
<style nonce="${nonce}" id="theme">${theme}</style>
<style nonce="${nonce}">${page}</style>
</head>
<body>
${read('client/one-page/page.html')}${first}
<script>${main}</script>
${later}
</body>
</html>
`;
}

const manifest = {
  name: 'Propsoff',
  short_name: 'Propsoff',
  description: 'Checks, explains and completes the settings of small multirotors.',
  start_url: 'propsoff.html',
  display: 'standalone',
  theme_color: '#3b6ea5',
  background_color: '#171b21',
  icons: [{ src: 'icon.png', sizes: '256x256', type: 'image/png' }],
};

/** What is sent decides how long a phone waits for it. */
function tellSize(page: string): void {
  const brotli = brotliCompressSync(page).length;
  const sizes = [Buffer.byteLength(page), brotli, gzipSync(page, { level: 9 }).length];
  const [whole, byBrotli, byGzip] = sizes.map((bytes) => `${Math.round(bytes / 1000)} KB`);
  console.log(
    `dist/page/propsoff.html: ${whole} on a disk; as a host sends it, ${byBrotli} by Brotli or ${byGzip} by gzip`,
  );
  if (brotli > largest) throw new Error(`the page may have ${largest / 1000} KB by Brotli`);
}

async function main(): Promise<void> {
  const [mainScript, viewScript] = await Promise.all([scriptOf(own), scriptOf(views)]);
  const first = new Map(starters.map((name) => [name, read(name)]));
  // In the order in which they compress best.
  const later = new Map([
    ...styles.map((name) => [name, read(`dist/${name}`)] as const),
    ['catalog.json', compacted(read('dist/catalog.json')).replaceAll('<', '\\u003c')],
    ['views.js', inline(viewScript.text)],
    ['server.js', inline(await smallest(read('dist/web/server.js')))],
  ]);
  const page = await pageOf(inline(mainScript.text), inline(viewScript.text), packed(first), packed(later));
  const cache = `propsoff-${version}-${hashOf(page).replace(/\W/g, '').slice(0, 12)}`;
  const offline = await scriptOf({ ...worker, define: { PROPSOFF_PAGE: JSON.stringify(cache) } });
  rmSync(to, { recursive: true, force: true });
  mkdirSync(to, { recursive: true });
  writeFileSync(join(to, 'propsoff.html'), page);
  if (!process.argv.includes('--unweighed')) tellSize(page);
  writeFileSync(join(to, 'propsoff.webmanifest'), JSON.stringify(manifest, undefined, 2));
  writeFileSync(join(to, 'service-worker.js'), offline.text);
  copyFileSync(join(root, 'client/media/icon.png'), join(to, 'icon.png'));
  const inputs = [...mainScript.inputs, ...viewScript.inputs];
  writeFileSync(join(to, 'NOTICES.txt'), `${read('dist/NOTICES.txt')}\n${noticesOf(root, inputs)}`);
}

main().catch((error: unknown) => {
  console.error(error);
  process.exit(1);
});
