import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { build } from 'esbuild';
import type { Browser, Page } from 'playwright-core';
import { built } from '../support/built';
import { codeBlocks } from '../support/document';
import { launchBrowser } from '../workbench/launch.mjs';

/** The documents' own page: what is shown there is what is tried here. */
async function bundledPage(): Promise<string> {
  const [block, ...others] = codeBlocks('schemas/EDITORS.md').filter(({ language }) => language === 'js');
  assert.ok(block !== undefined && others.length === 0, 'schemas/EDITORS.md has one page');
  const { outputFiles } = await build({
    stdin: { contents: block.text, resolveDir: __dirname },
    bundle: true,
    format: 'esm',
    write: false,
    logLevel: 'warning',
  });
  return outputFiles[0]?.text ?? assert.fail('nothing was bundled');
}

async function served(): Promise<Server> {
  const script = await bundledPage();
  const page = '<!doctype html><title>My craft</title><body><script type="module" src="page.js"></script>';
  const answers = new Map<string, readonly [type: string, body: string]>([
    ['/', ['text/html', page]],
    ['/page.js', ['text/javascript', script]],
    ['/propsoff/web/server.js', ['text/javascript', readFileSync(built('web/server.js'), 'utf8')]],
    ['/propsoff/catalog.json', ['application/json', readFileSync(built('catalog.json'), 'utf8')]],
  ]);
  const server = createServer(({ url = '/' }, response) => {
    const [type, body] = answers.get(url) ?? [];
    if (type === undefined) response.writeHead(404).end();
    else response.writeHead(200, { 'Content-Type': type }).end(body);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return server;
}

describe('a code editor component in a page of its own, with the server in a worker', () => {
  let server: Server;
  let browser: Browser;
  let page: Page;
  before(async () => {
    server = await served();
    browser = await launchBrowser();
    page = await browser.newPage();
    page.setDefaultTimeout(45_000);
    await page.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
    await page.locator('.cm-content').waitFor();
  });
  after(async () => {
    await browser?.close();
    server?.closeAllConnections();
    server?.close();
  });

  const lines = () => page.locator('.cm-line').allInnerTexts();

  /** Writes the whole text anew, as a person who pastes it. */
  async function write(text: string): Promise<void> {
    await page.locator('.cm-content').click();
    await page.keyboard.press('Control+A');
    await page.keyboard.insertText(text);
  }

  it('underlines a finding and says it', async () => {
    await write('[arming]\ntilt-limt = 60 deg\n');
    const mark = page.locator('.cm-lintRange-error');
    await mark.first().waitFor();
    assert.equal(await mark.first().innerText(), 'tilt-limt');
    await mark.first().hover();
    await page.locator('.cm-tooltip .cm-diagnostic').getByText('Did you mean arming.tilt-limit?').waitFor();
  });

  it('explains a setting where the mouse rests', async () => {
    await write('[gyro.filter.1]\ncutoff = 180 Hz\n');
    await page.mouse.move(0, 0);
    await page
      .locator('.cm-line')
      .getByText('cutoff')
      .hover({ position: { x: 20, y: 8 } });
    await page.locator('.cm-tooltip-hover').getByText('Cutoff of a gyro filter').first().waitFor();
  });

  it('takes a name that is proposed', async () => {
    await write('[arming]\ntilt-l');
    await page.keyboard.press('Control+Space');
    const row = page.locator('.cm-tooltip-autocomplete li').filter({ hasText: 'tilt-limit' });
    await row.first().click();
    assert.match((await lines()).join('\n'), /^\[arming\]\ntilt-limit = ?/);
  });

  it('renames a constant wherever it is used', async () => {
    await write('let quiet = 90 Hz\n[gyro.filter.1]\ncutoff = 2 * quiet\n');
    await page.keyboard.press('Control+Home');
    for (let step = 0; step < 6; step += 1) await page.keyboard.press('ArrowRight');
    await page.keyboard.press('F2');
    const box = page.locator('.cm-panel input');
    await box.fill('calm');
    await box.press('Enter');
    await page.locator('.cm-line').getByText('cutoff = 2 * calm').waitFor();
    assert.equal((await lines())[0], 'let calm = 90 Hz');
  });

  it('formats', async () => {
    await write('[gyro.filter.1]\nkind=butterworth\ncutoff   =180 Hz\n');
    await page.keyboard.press('Shift+Alt+F');
    await page.locator('.cm-line').getByText('kind   = butterworth').waitFor();
    assert.deepEqual((await lines()).slice(1, 3), ['kind   = butterworth', 'cutoff = 180 Hz']);
  });
});
