// Runs test/workbench/suite inside an extension host: a desktop editor's if there is one, else the workbench's.
// The suite writes its report and its counts to files, so that both editors are read in the same way.
import {
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { open } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { runTests } from '@vscode/test-electron';
import { build } from 'esbuild';
import { desktopEditor } from './desktop.mjs';
import { PlainError, reportAndFail, root, say, scratchFolder } from './machine.mjs';
import { ensureWorkbench } from './setup.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const bundleFolder = join(root, 'dist', 'workbench-suite');

/** One bundle a test file, and one for the runner; mocha and the editor's own module are found at run time. */
async function bundleSuite() {
  const suite = join(here, 'suite');
  const files = readdirSync(suite).filter((name) => name === 'index.ts' || name.endsWith('.test.ts'));
  rmSync(bundleFolder, { recursive: true, force: true });
  await build({
    entryPoints: files.map((name) => join(suite, name)),
    outdir: bundleFolder,
    bundle: true,
    platform: 'node',
    format: 'cjs',
    target: 'node20',
    // One of the libraries has a main file that no bundler can look into.
    mainFields: ['module', 'main'],
    sourcemap: 'inline',
    external: ['vscode', 'mocha'],
    logLevel: 'warning',
  });
  return join(bundleFolder, 'index.js');
}

/** A copy of the demo workspace, so that tests may edit it, and a home with no settings but ours. */
function prepareFolders() {
  const folder = scratchFolder('suite');
  const workspace = join(folder, 'workspace');
  cpSync(process.env.PROPSOFF_WORKSPACE ?? join(root, 'test', 'demo'), workspace, { recursive: true });
  const userData = join(folder, 'user-data');
  mkdirSync(join(userData, 'User'), { recursive: true });
  const settings = { 'security.workspace.trust.enabled': false, 'telemetry.telemetryLevel': 'off' };
  writeFileSync(join(userData, 'User', 'settings.json'), JSON.stringify(settings));
  const report = join(folder, 'report.txt');
  writeFileSync(report, '');
  return { folder, workspace, userData, report, counts: join(folder, 'counts.json') };
}

/** Prints what the reporter in the extension host writes, as it comes. */
async function follow(path) {
  const file = await open(path);
  let shown = 0;
  const show = async () => {
    const size = statSync(path).size;
    if (size <= shown) return;
    const buffer = Buffer.alloc(size - shown);
    await file.read(buffer, 0, buffer.length, shown);
    shown = size;
    process.stdout.write(buffer);
  };
  const timer = setInterval(show, 300);
  return async () => {
    clearInterval(timer);
    await show();
    await file.close();
  };
}

async function editorProgram() {
  const desktop = desktopEditor();
  if (desktop !== undefined) {
    say(`testing in the desktop editor ${desktop}`);
    return desktop;
  }
  await ensureWorkbench();
  return join(here, 'editor.mjs');
}

/** @returns {Promise<{passed: number, failed: number}>} what the suite itself counted. */
async function runInEditor(folders) {
  const vscodeExecutablePath = await editorProgram();
  const extensionTestsPath = await bundleSuite();
  const stopFollowing = await follow(folders.report);
  const exit = await runTests({
    vscodeExecutablePath,
    extensionDevelopmentPath: process.env.PROPSOFF_DEV_PATH ?? root,
    extensionTestsPath,
    launchArgs: [folders.workspace, `--user-data-dir=${folders.userData}`, '--disable-extensions'],
    extensionTestsEnv: {
      PROPSOFF_REPORT: folders.report,
      PROPSOFF_COUNTS: folders.counts,
      PROPSOFF_ROOT: root,
    },
  }).catch((error) => error);
  await stopFollowing();
  if (!existsSync(folders.counts)) throw new PlainError(`the suite in the editor gave no result (${exit})`);
  const counts = JSON.parse(readFileSync(folders.counts, 'utf8'));
  // An editor that ends badly after a good run is a failure too.
  if (exit !== 0 && counts.failed === 0) {
    counts.failed = 1;
    counts.failedTests = [{ title: 'the end of the editor', reason: `${exit}` }];
  }
  return counts;
}

async function main() {
  const folders = prepareFolders();
  try {
    const counts = await runInEditor(folders);
    if (process.env.PROPSOFF_COUNTS) writeFileSync(process.env.PROPSOFF_COUNTS, JSON.stringify(counts));
    process.exitCode = counts.failed > 0 || counts.passed === 0 ? 1 : 0;
  } finally {
    rmSync(folders.folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

main().catch(reportAndFail);
