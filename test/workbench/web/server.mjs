// Serves the workbench as a web page alone: no editor's server behind it, every extension in the browser.
// It is the same editor that the other suites use; only what code-server put in to reach its server is taken out.
import { copyFileSync, mkdirSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { dirname, extname, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { quietSettings } from '../launch.mjs';
import { PlainError, root } from '../machine.mjs';
import { ensureWorkbench } from '../setup.mjs';

const here = dirname(fileURLToPath(import.meta.url));

/** What is bundled for these tests, below the folder that holds everything that is made. */
export const bench = join(root, 'dist', 'web-workbench');

const types = {
  '.css': 'text/css',
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.ttf': 'font/ttf',
};

/** What code-server's page wants of its server, and what any other page does: the editor itself has both. */
const replacements = [
  ['remoteAuthority:location.host', 'remoteAuthority:void 0'],
  [
    '.file(this.userDataPath).with({scheme:K.vscodeRemote})',
    '.file(this.userDataPath).with({scheme:K.vscodeUserData})',
  ],
];

function withoutServer(script) {
  return replacements.reduce((text, [from, to]) => {
    const parts = text.split(from);
    if (parts.length === 2) return parts.join(to);
    throw new PlainError(`the workbench's page has no ${from} any more; see test/workbench/web/server.mjs`);
  }, script);
}

/** Every text of a folder, by its path in it. */
function textsIn(folder) {
  const names = readdirSync(folder, { recursive: true }).filter((name) =>
    statSync(join(folder, name)).isFile(),
  );
  return Object.fromEntries(
    names.map((name) => [name.split(sep).join('/'), readFileSync(join(folder, name), 'utf8')]),
  );
}

/** The editor's own extensions come without their halves for a browser; each would complain of it on the page. */
function silent(path) {
  const isExtension = /^\/extensions\/.*\.js$/.test(path);
  return isExtension ? { type: types['.js'], body: 'exports.activate = () => undefined;' } : undefined;
}

/** The editor's options for embedders. `suite`: whether it runs the tests in the extension host and ends. */
function configuration(host, suite) {
  const uri = (path) => ({ scheme: 'http', authority: host, path });
  return {
    folderUri: { scheme: 'shelf', path: '/demo' },
    additionalBuiltinExtensions: [uri('/bench')],
    developmentOptions: {
      extensions: [uri('/extension')],
      // Tests run in the extension host of the extension that they lie in.
      ...(suite ? { extensionTestsPath: uri('/bench/suite.js') } : {}),
    },
    webviewEndpoint: `http://${host}/editor/out/vs/workbench/contrib/webview/browser/pre`,
    enableWorkspaceTrust: false,
    userDataPath: '/',
    isEnabledFileDownloads: true,
    isEnabledFileUploads: true,
    isEnabledCoderGettingStarted: false,
    configurationDefaults: quietSettings,
    productConfiguration: { enableTelemetry: false, extensionEnabledApiProposals: {} },
  };
}

function pageFor(host, suite) {
  const settings = JSON.stringify(configuration(host, suite))
    .replaceAll('&', '&amp;')
    .replaceAll('"', '&quot;');
  const out = '/editor/out';
  return `<!doctype html>
<html>
<head>
<meta charset="utf-8">
<meta id="vscode-workbench-web-configuration" data-settings="${settings}">
<link rel="stylesheet" href="${out}/vs/code/browser/workbench/workbench.css">
</head>
<body aria-label=""></body>
<script>globalThis._VSCODE_FILE_ROOT = new URL('${out}/', location).toString();</script>
<script type="module" src="${out}/nls.messages.js"></script>
<script type="module" src="${out}/vs/code/browser/workbench/workbench.js"></script>
</html>`;
}

function bodyOf(request) {
  return new Promise((resolve, reject) => {
    const chunks = [];
    request.on('data', (chunk) => chunks.push(chunk));
    request.on('end', () => resolve(Buffer.concat(chunks).toString('utf8')));
    request.on('error', reject);
  });
}

/** A file below a folder; undefined where there is none, or the path leads out. */
function fileBelow(folder, path) {
  const file = join(folder, decodeURIComponent(path));
  if (relative(folder, file).startsWith('..')) return undefined;
  try {
    return { type: types[extname(file)] ?? 'application/octet-stream', body: readFileSync(file) };
  } catch {
    return undefined;
  }
}

/** The file system that the folder lies in, as an extension beside ours. */
async function bundleFiles() {
  mkdirSync(bench, { recursive: true });
  copyFileSync(join(here, 'files', 'package.json'), join(bench, 'package.json'));
  await bundleForBrowser(join(here, 'files', 'extension.ts'), join(bench, 'extension.js'));
}

/** Bundles something that runs in a browser's extension host. */
export async function bundleForBrowser(from, to, options = {}) {
  await build({
    entryPoints: [from],
    outfile: to,
    bundle: true,
    platform: 'browser',
    format: 'cjs',
    target: 'es2022',
    external: ['vscode'],
    logLevel: 'warning',
    ...options,
  });
}

/**
 * @param {{ workspace: string, onReport?: (path: string, body: string) => void }} options the folder that is
 * opened as `shelf:/demo`, and who is told what the suite says.
 */
export async function serveWebWorkbench({ workspace, onReport = () => undefined }) {
  const entry = await ensureWorkbench();
  await bundleFiles();
  const editor = join(entry, '..', '..', '..', 'lib', 'vscode');
  const script = '/out/vs/code/browser/workbench/workbench.js';
  const patched = withoutServer(readFileSync(join(editor, script), 'utf8'));
  const folders = {
    editor: (path) =>
      path === script ? { type: types['.js'], body: patched } : (fileBelow(editor, path) ?? silent(path)),
    extension: (path) => fileBelow(process.env.PROPSOFF_DEV_PATH ?? root, path),
    bench: (path) => fileBelow(bench, path),
    project: (path) => fileBelow(root, path),
  };
  const answer = (url, host) => {
    if (url.pathname === '/')
      return { type: types['.html'], body: pageFor(host, url.searchParams.has('suite')) };
    if (url.pathname === '/files') return { type: types['.json'], body: JSON.stringify(textsIn(workspace)) };
    const [, room = '', path = ''] = /^\/([^/]*)(\/.*)$/.exec(url.pathname) ?? [];
    return folders[room]?.(path);
  };
  const server = createServer(async (request, response) => {
    const { host = '' } = request.headers;
    const url = new URL(request.url ?? '/', `http://${host}`);
    if (request.method === 'POST') {
      onReport(url.pathname, await bodyOf(request));
      response.end();
      return;
    }
    const found = answer(url, host);
    if (found === undefined) response.writeHead(404).end();
    else response.writeHead(200, { 'Content-Type': found.type }).end(found.body);
  });
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
  server.unref();
  const origin = `http://127.0.0.1:${server.address().port}/`;
  return {
    origin,
    stop: async () => {
      server.closeAllConnections();
      await new Promise((resolve) => server.close(resolve));
    },
  };
}
