import { execFileSync } from 'node:child_process';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { brotliCompressSync } from 'node:zlib';
import { build } from 'esbuild';
import type { Browser } from 'playwright-core';
import { launchBrowser } from '../workbench/launch.mjs';
import type { Bench } from './group';
import { against, interleaved, type Measure, timesOf, within } from './measure';

const goals = { ready: 1.5, size: 800 };

/** An empty page with the same editor component and its client of a language server. */
const plain = `
import { LSPClient, languageServerExtensions } from '@codemirror/lsp-client';
import { basicSetup, EditorView } from 'codemirror';
const client = new LSPClient({ extensions: languageServerExtensions() });
const extensions = [basicSetup, client.plugin('memory:///my.craft', 'craft-script')];
new EditorView({ parent: document.body, extensions });
document.documentElement.dataset.ready = '';
`;

/** Run before anything of a page: notes when it says that it is ready, ms since it was asked for. */
const noted = `new MutationObserver(() => {
  if ('ready' in document.documentElement.dataset) window.readyAt ??= performance.now();
}).observe(document, { attributes: true, subtree: true })`;

/** The page without an install: when a person can type, beside an empty page that is nothing but the editor. */
export async function onePageMeasures({ root, runs }: Bench): Promise<readonly Measure[]> {
  execFileSync(process.execPath, ['--import', 'tsx', 'server/build/one-page.ts'], { cwd: root });
  const page = join(root, 'dist/page/propsoff.html');
  const empty = join(root, 'dist/page/empty.html');
  writeFileSync(empty, await emptyPage(root));
  const browser = await launchBrowser({ whole: true });
  try {
    const [mine, theirs] = await interleaved(runs(24, 8), [
      () => readyAt(browser, page),
      () => readyAt(browser, empty),
    ]);
    if (mine === undefined || theirs === undefined) throw new Error('nothing was measured');
    const size = timesOf([brotliCompressSync(readFileSync(page)).length / 1000]);
    return [
      against(
        'page without an install, first visit: ready to type',
        mine,
        'an empty page with the editor',
        theirs,
        goals.ready,
      ),
      within('page without an install, as a host sends it (Brotli)', size, goals.size, 'KB'),
    ];
  } finally {
    await browser.close();
    rmSync(empty);
  }
}

async function emptyPage(root: string): Promise<string> {
  const { outputFiles } = await build({
    stdin: { contents: plain, resolveDir: root },
    bundle: true,
    minify: true,
    format: 'iife',
    target: 'es2022',
    write: false,
  });
  const script = (outputFiles[0]?.text ?? '').replaceAll('</script', '<\\/script');
  return `<!doctype html><meta charset="utf-8"><title>Empty</title><body><script>${script}</script>`;
}

async function readyAt(browser: Browser, path: string): Promise<number> {
  const context = await browser.newContext();
  try {
    await context.addInitScript({ content: noted });
    const page = await context.newPage();
    await page.goto(pathToFileURL(path).href);
    await page.locator('html[data-ready]').waitFor();
    return await page.evaluate<number>('window.readyAt');
  } finally {
    await context.close();
  }
}
