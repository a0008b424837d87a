import { strict as assert } from 'node:assert';
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { AxeResults } from 'axe-core';
import type { Browser, BrowserContext, BrowserContextOptions, Download, Page } from 'playwright-core';
import { textsIn } from '../../client/one-page/bundle';
import { launchBrowser } from '../workbench/launch.mjs';
import { servePage } from '../workbench/serve-page.mjs';

const root = join(__dirname, '../..');

const desk: BrowserContextOptions = { viewport: { width: 1600, height: 900 } };
const phone: BrowserContextOptions = {
  viewport: { width: 360, height: 740 },
  hasTouch: true,
  isMobile: true,
};

interface Opened {
  readonly context: BrowserContext;
  readonly page: Page;
  /** What the page asked for that is neither inside it nor beside it on its host. */
  readonly asked: string[];
  /** What it was refused, or failed at. */
  readonly faults: string[];
}

/** Run in the page: the server hears nothing until it is let. */
const slowServer = `(() => {
  const { postMessage } = Worker.prototype;
  const held = [];
  Worker.prototype.postMessage = function (...message) { held.push([this, message]); };
  window.letServerHear = () => {
    Worker.prototype.postMessage = postMessage;
    for (const [worker, message] of held) worker.postMessage(...message);
  };
})()`;

/** Run in the page: a storage that takes nothing more, until there is room again. */
const fullStorage = `(() => {
  const { setItem } = Storage.prototype;
  window.makeRoom = () => { Storage.prototype.setItem = setItem; };
  Storage.prototype.setItem = () => { throw new DOMException('no room', 'QuotaExceededError'); };
})()`;

const forbiddenStorage = `Object.defineProperty(window, 'localStorage', {
  get() { throw new DOMException('not here', 'SecurityError'); },
})`;

/** What a frame would print is noted in place of a printer. */
const notedPrint = `window.print = () => { window.top.printed = document.title + document.body.textContent; }`;

describe('the page without an install', () => {
  let browser: Browser;
  let host: Awaited<ReturnType<typeof servePage>>;
  let opened: Opened | null = null;
  const fromDisk = pathToFileURL(join(root, 'dist/page/propsoff.html')).href;

  before(async function () {
    this.timeout(180_000);
    const build = ['--import', 'tsx', 'server/build/one-page.ts'];
    execFileSync(process.execPath, build, { cwd: root, stdio: 'inherit' });
    host = await servePage();
    browser = await launchBrowser();
  });
  after(async () => {
    await browser?.close();
    await host?.close();
  });
  afterEach(async () => {
    const { context, asked = [], faults = [] } = opened ?? {};
    opened = null;
    await context?.close();
    assert.deepEqual(asked, [], 'nothing is asked of anybody');
    assert.deepEqual(faults, [], 'nothing is refused and nothing fails');
  });

  async function open(
    options: BrowserContextOptions,
    address = fromDisk,
    prepare: (context: BrowserContext) => Promise<unknown> = async () => undefined,
  ): Promise<Page> {
    const context = await browser.newContext({
      permissions: ['clipboard-read', 'clipboard-write'],
      ...options,
    });
    await prepare(context);
    const page = await context.newPage();
    page.setDefaultTimeout(20_000);
    const [asked, faults]: [string[], string[]] = [[], []];
    const own = new URL('.', address).href;
    context.on('request', (request) => {
      const url = request.url();
      if (!url.startsWith('blob:') && !url.startsWith(own)) asked.push(url);
    });
    page.on('pageerror', ({ message }) => faults.push(message));
    page.on('console', (said) => said.type() === 'error' && faults.push(said.text()));
    opened = { context, page, asked, faults };
    await page.goto(address);
    await ready(page);
    return page;
  }

  async function ready(page: Page): Promise<void> {
    await page.locator('html[data-ready]').waitFor();
    await page.locator('iframe[title="Build Sheet"]').waitFor({ state: 'attached' });
  }

  /** Writes the whole text anew, as a person who pastes it. */
  async function write(page: Page, text: string): Promise<void> {
    await at(page, 'Script');
    await page.locator('#editor .cm-content').click();
    await page.keyboard.press('Control+A');
    await page.keyboard.insertText(text);
  }

  /** Goes to a place, where the page shows one at a time. */
  async function at(page: Page, place: string): Promise<void> {
    const button = page.locator('.places').getByRole('button', { name: place });
    if (await button.isVisible()) await button.click();
  }

  async function pick(page: Page, ...titles: readonly string[]): Promise<void> {
    for (const title of titles)
      await page.locator('dialog .choice').filter({ hasText: title }).first().click();
  }

  async function menu(page: Page, ...titles: readonly string[]): Promise<void> {
    await page.locator('#more').click();
    await pick(page, ...titles);
  }

  async function downloaded(page: Page, press: () => Promise<void>): Promise<Download> {
    const [download] = await Promise.all([page.waitForEvent('download'), press()]);
    return download;
  }

  async function textOf(download: Download): Promise<string> {
    return readFileSync(await download.path(), 'utf8');
  }

  async function openFile(page: Page, name: string, content: string | Buffer): Promise<void> {
    const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.locator('#open').click()]);
    await chooser.setFiles([{ name, mimeType: 'application/octet-stream', buffer: Buffer.from(content) }]);
  }

  /** Waits without the page's help, which lets no text be run as a script. The test's own limit ends it. */
  async function until(page: Page, isSo: () => Promise<boolean>): Promise<void> {
    while (!(await isSo())) await page.waitForTimeout(20);
  }

  const script = async (page: Page) => (await page.locator('#editor .cm-line').allInnerTexts()).join('\n');
  const line = (page: Page, text: string) => page.locator('#editor .cm-line').filter({ hasText: text });
  const sheet = (page: Page) => page.frameLocator('iframe[title="Build Sheet"]');
  const frame = (page: Page, title: string) => page.frameLocator(`iframe[title="${title}"]`);
  const kept = (page: Page) => page.evaluate<string>('JSON.stringify(localStorage)');

  const places = [
    { from: 'a disk', address: () => fromDisk },
    { from: 'a static host', address: () => host.address },
  ];
  const sizes = [
    { on: 'a desk', options: desk },
    { on: 'a phone', options: phone },
  ];
  for (const { from, address } of places)
    for (const { on, options } of sizes)
      it(`leads from a typed craft to a saved file, from ${from} on ${on}`, async () => {
        const page = await open(options, address(), (context) =>
          context.addInitScript({ content: notedPrint }),
        );
        await write(
          page,
          '[craft]\nname = "Linnet"\n\n[arming]\ntilt-limt = 60 deg\n\n[gyro.filter.1]\ncutoff = 180 Hz\n',
        );
        await at(page, 'Findings');
        const finding = page
          .locator('#findings .finding')
          .filter({ hasText: 'Did you mean arming.tilt-limit?' });
        assert.match(await finding.innerText(), /Line 5/);
        await finding.getByRole('button', { name: /tilt-limit/ }).click();
        await finding.waitFor({ state: 'detached' });
        await at(page, 'Script');
        await line(page, 'tilt-limit = 60 deg').waitFor();

        if (options === desk) {
          await line(page, 'cutoff').hover({ position: { x: 20, y: 8 } });
          await page.locator('.cm-tooltip-hover').getByText('Cutoff of a gyro filter').first().waitFor();
        } else {
          await line(page, 'cutoff').tap();
          await menu(page, 'Explain This Line');
          await page.locator('.read-only').getByText('Cutoff of a gyro filter').first().waitFor();
        }

        await at(page, 'Build sheet');
        await page.getByRole('tab', { name: 'Build Sheet' }).click();
        await sheet(page).getByRole('heading', { name: 'Linnet' }).waitFor();

        await menu(page, 'Open Bench Card');
        const card = frame(page, 'Bench Card');
        await card.getByLabel('Propellers off', { exact: true }).check();
        await card.getByText(/^1 of \d+ steps done/).waitFor();
        await menu(page, 'Print the Bench Card');
        await until(page, async () => /Linnet.*✓/s.test(String(await page.evaluate('window.printed'))));

        await page.locator('#save').click();
        const text = await textOf(await downloaded(page, () => pick(page, 'Save first.craft')));
        assert.match(text, /tilt-limit = 60 deg/);
        await openFile(page, 'again.craft', text.replace('Linnet', 'Siskin'));
        await line(page, '"Siskin"').waitFor();
        assert.equal(await page.locator('#script-name').innerText(), 'again.craft');
      });

  it('keeps scripts, includes and what was ticked, and saves and opens all of them as one bundle', async () => {
    const page = await open(desk);
    await openFile(page, 'shared.craft', '[motor]\r\nkv = 1850 rpm/V\r\n');
    await line(page, 'kv').click();
    await page.keyboard.press('End');
    await page.keyboard.insertText(' # measured');
    await openFile(page, 'linnet.craft', 'include "shared.craft"\n\n[craft]\nname = "Linnet"\n');
    await sheet(page).getByRole('heading', { name: 'Linnet' }).waitFor();
    assert.equal(
      await page.locator('#findings').getByText('shared.craft').count(),
      0,
      'the include is found',
    );
    await page.locator('#save').click();
    const bundle = await downloaded(page, () => pick(page, 'Save propsoff.zip'));
    const bytes = readFileSync(await bundle.path());
    const texts = new Map(textsIn(bytes)?.texts);
    assert.equal(
      texts.get('shared.craft'),
      '[motor]\r\nkv = 1850 rpm/V # measured\r\n',
      'lines end as they did',
    );
    await page.reload();
    await ready(page);
    await line(page, 'include "shared.craft"').waitFor();

    await page.locator('#scripts').click();
    await pick(page, 'Delete');
    await page.locator('.toast').getByText('linnet.craft is deleted.').waitFor();
    await until(page, async () => !(await kept(page)).includes('Linnet'));
    await openFile(page, 'propsoff.zip', bytes);
    await line(page, 'name').first().waitFor();
    await page.locator('#scripts').click();
    await pick(page, 'linnet.craft');
    await line(page, 'include "shared.craft"').waitFor();
    await sheet(page).getByRole('heading', { name: 'Linnet' }).waitFor();
  });

  it('takes along what belongs to a script that is renamed, and leaves nothing of one that is deleted', async () => {
    const page = await open(phone);
    await menu(page, 'Open Bench Card');
    const card = () => page.frameLocator('iframe[title="Bench Card"] >> nth=-1');
    await card().getByLabel('Propellers off', { exact: true }).check();
    await card()
      .getByText(/^1 of \d+ steps done/)
      .waitFor();
    await openFile(page, 'linnet.craft', 'include "first.craft"\n\n[craft]\nname = "Linnet"\n');
    await page.locator('#scripts').click();
    await pick(page, 'first.craft');

    await page.locator('#scripts').click();
    await pick(page, 'Rename');
    const name = page.getByRole('textbox', { name: 'Rename' });
    await name.fill('../out.craft');
    await name.press('Enter');
    await page.locator('dialog .wrong').getByText('A name with its ending is wanted').waitFor();
    await name.fill(' wren 1.craft ');
    await name.press('Enter');
    await page.locator('#script-name').getByText('wren 1.craft', { exact: true }).waitFor();
    await until(page, async () => !(await kept(page)).includes('first.craft'));
    assert.match(await kept(page), /include \\+"wren 1\.craft\\+"/);
    await at(page, 'Build sheet');
    await card().getByText('There is no card').waitFor();
    await page.getByRole('tab', { name: 'Bench Card' }).press('Delete');
    await menu(page, 'Open Bench Card');
    await card()
      .getByText(/^1 of \d+ steps done/)
      .waitFor();

    await page.locator('#scripts').click();
    await pick(page, 'Delete');
    await page.locator('.toast').getByRole('button', { name: 'Bring It Back' }).click();
    await line(page, '"First"').waitFor();
    await until(page, async () => (await kept(page)).includes('propsoff.card'));
    for (const _ of ['wren 1.craft', 'linnet.craft']) {
      await page.locator('#scripts').click();
      await pick(page, 'Delete');
    }
    await page.locator('#script-name').getByText('No script').waitFor();
    await until(page, async () => !/file|card/.test(await kept(page)));
    await at(page, 'Build sheet');
    await card().getByText('There is no card').waitFor();
    await page.getByRole('tab', { name: 'Build Sheet' }).click();
    await sheet(page).getByText('No craft script is open').first().waitFor();
    await at(page, 'Findings');
    await page.locator('#findings').getByText('Nothing is open').waitFor();
  });

  it('never says of a text that it did not check that nothing is found in it', async () => {
    const page = await open(desk);
    await openFile(page, 'notes.txt', 'mas = 300 g\n');
    await page.locator('#findings').getByText('This text is not checked').waitFor();
    await openFile(page, 'LINNET.CRAFT.txt', '[craft]\nmas = 300 g\n');
    await page.locator('#findings').getByText('Did you mean craft.mass?').waitFor();
    assert.equal(await page.locator('#script-name').innerText(), 'LINNET.craft');
    await openFile(page, 'LINNET.craft', '[craft]\nmass = 301 g\n');
    await page.locator('dialog').getByText('There is another LINNET.craft').waitFor();
    await page.keyboard.press('Escape');
    await page.locator('.toast').getByText('Another LINNET.craft was not opened').waitFor();
    await openFile(page, 'picture.craft', Buffer.from([0x89, 0x50, 0x4e, 0x47]));
    await page.locator('.toast').getByText('picture.craft is no text in UTF-8').waitFor();
  });

  it('is left by keys alone as any page is: no key is caught in the script', async () => {
    const page = await open(desk);
    await page.locator('#editor .cm-content').focus();
    await page.keyboard.press('Tab');
    assert.equal(await page.evaluate("document.activeElement?.closest('#editor') === null"), true);
    assert.match(await script(page), /^# My first craft/, 'nothing is written');
  });

  it('leaves room for the script on a phone on its side, and all ways on in reach of a tap that explains', async () => {
    const page = await open({ ...phone, viewport: { width: 740, height: 360 } });
    const tall = (await page.locator('#editor').boundingBox())?.height ?? 0;
    assert.ok(tall > 0.7 * 360, `the script has ${tall} px of 360`);
    await line(page, 'mass ').tap({ position: { x: 12, y: 8 } });
    await page.locator('.cm-tooltip-hover').getByText('craft.mass').first().waitFor();
    for (const place of ['Findings', 'Build sheet', 'Script']) await at(page, place);
    await page.setViewportSize({ width: 180, height: 370 });
    for (const place of ['Findings', 'Build sheet', 'Script']) await at(page, place);
    assert.equal(await page.evaluate('document.documentElement.scrollWidth'), 180, 'letters twice as large');
  });

  it('takes a board’s listing, says what it means, hands it over and proves it', async () => {
    const page = await open(desk);
    const listing = 'idle_power = 55\ntilt_limit = 25\ngyro_lowpass = 120\nfailsafe = hold\n';
    await menu(page, 'Paste a Board’s Text');
    await page.locator('dialog textarea').fill(listing);
    await page.locator('dialog').getByRole('button', { name: 'OK' }).click();
    await page
      .locator('.toast')
      .getByText(/4 settings .* were found/)
      .waitFor();
    assert.equal(await page.locator('#script-name').innerText(), 'board.boardtext');

    await menu(page, 'Say What Settings Mean');
    const meanings = frame(page, 'What Settings Mean');
    await meanings.locator('.counts').getByText('0 of 4 said').waitFor();
    await meanings.getByRole('button', { name: /deg:/ }).first().click();
    await meanings.locator('.counts').getByText('1 of 4 said').waitFor();
    assert.match(await kept(page), /boards\/board\.json/);

    await write(page, listing.replace('= 25', '= 30'));
    await menu(page, 'Copy Text for the Board');
    await page.locator('.toast').getByText('settings for board', { exact: false }).waitFor();
    const handed = await page.evaluate<string>('navigator.clipboard.readText()');
    assert.match(handed, /^tilt_limit = 30$/m);

    // What the board prints once it has taken it; and then a board that has not.
    await menu(page, 'Compare with Captured Text', 'From the Clipboard');
    await page
      .locator('.read-only')
      .getByText(/4 of 4|all 4|hold/i)
      .first()
      .waitFor();
    await page.evaluate(`navigator.clipboard.writeText(${JSON.stringify(listing)})`);
    await menu(page, 'Compare with Captured Text', 'From the Clipboard');
    await page.locator('.read-only').getByText('tilt_limit').first().waitFor();
  });

  it('waits for checks that have yet to start, and does not take their silence for an answer', async () => {
    const page = await open(desk, fromDisk, (context) => context.addInitScript(slowServer));
    await menu(page, 'Paste a Board’s Text');
    await page.locator('dialog textarea').fill('idle_power = 55\ntilt_limit = 25\n');
    await page.locator('dialog').getByRole('button', { name: 'OK' }).click();
    await page.locator('#editor').getByText('tilt_limit').waitFor();
    await page.evaluate('letServerHear()');
    await page.locator('.toast').getByText('2 settings').waitFor();
  });

  it('tells of a storage that is full, loses nothing, and keeps it once there is room', async () => {
    const page = await open(desk);
    await page.evaluate(fullStorage);
    await write(page, '[craft]\nname = "Linnet"\n');
    await page.locator('#trouble').getByText('storage is full').waitFor();
    await sheet(page).getByRole('heading', { name: 'Linnet' }).waitFor();
    await page.locator('#save').click();
    assert.match(await textOf(await downloaded(page, () => pick(page, 'Save first.craft'))), /Linnet/);
    await page.evaluate('makeRoom()');
    await write(page, '[craft]\nname = "Siskin"\n');
    await page.locator('#trouble').waitFor({ state: 'hidden' });
    await page.reload();
    await line(page, '"Siskin"').waitFor();
  });

  it('works in a browser that keeps nothing, and says so', async () => {
    const page = await open(phone, fromDisk, (context) =>
      context.addInitScript({ content: forbiddenStorage }),
    );
    await page.locator('#trouble').getByText('keeps nothing').waitFor();
    await write(page, '[craft]\nname = "Linnet"\n');
    await at(page, 'Build sheet');
    await sheet(page).getByRole('heading', { name: 'Linnet' }).waitFor();
  });

  it('works without its host after the first visit', async () => {
    const other = await servePage();
    const page = await open(phone, other.address);
    await write(page, '[craft]\nname = "Linnet"\n');
    await until(page, async () => (await kept(page)).includes('Linnet'));
    await page.evaluate('navigator.serviceWorker.ready.then(() => true)');
    await other.close();
    await page.context().setOffline(true);
    await page.reload();
    await ready(page);
    assert.match(await script(page), /"Linnet"/);
    await at(page, 'Build sheet');
    await sheet(page).getByRole('heading', { name: 'Linnet' }).waitFor();
  });

  it('lets nothing be asked of anybody, and no other script run', async () => {
    const page = await open(desk);
    const policy = await page.locator('meta[http-equiv="Content-Security-Policy"]').getAttribute('content');
    const rules = new Map((policy ?? '').split('; ').map((rule) => [rule.split(' ')[0], rule]));
    assert.equal(rules.get('default-src'), "default-src 'none'");
    assert.match(rules.get('script-src') ?? '', /^script-src( 'sha256-[\w+/]+=*')+$/);
    assert.equal(rules.get('connect-src'), undefined, 'nothing lifts the rule for connections');
    const outcome = await page.evaluate("fetch('https://example.org/').then(() => false, () => true)");
    assert.equal(outcome, true);
    const { faults = [] } = opened ?? {};
    assert.ok(faults.length > 0);
    for (const fault of faults.splice(0)) assert.match(fault, /Content Security Policy/);
  });

  it('shows what a hostile script holds as text, wherever it is shown', async () => {
    const page = await open(desk);
    const markup = '<img src=x>';
    await write(page, `[craft]\nname = "${markup}"\nmass = 300 g # ${markup}\n`);
    await sheet(page).getByRole('heading', { name: markup }).waitFor();
    await line(page, 'mass').hover({ position: { x: 20, y: 8 } });
    await page.locator('.cm-tooltip-hover').getByText('craft.mass').first().waitFor();
    await line(page, 'name =').click();
    await menu(page, 'Explain This Line');
    await page.locator('.read-only').getByText(markup).first().waitFor();
    for (const one of page.frames()) assert.equal(await one.locator('img').count(), 0);
  });

  it('starts the checks again when it is asked to, with all that is open', async () => {
    const page = await open(desk);
    await menu(page, 'Start the Checks Again');
    await write(page, '[craft]\nname = "Linnet"\n\n[arming]\ntilt-limt = 60 deg\n');
    await page.locator('#findings').getByText('Did you mean arming.tilt-limit?').waitFor();
    await sheet(page).getByRole('heading', { name: 'Linnet' }).waitFor();
  });

  for (const colorScheme of ['light', 'dark'] as const)
    for (const { on, options } of sizes)
      it(`keeps nobody out: axe finds nothing on ${on} in the ${colorScheme} theme`, async () => {
        const page = await open({ ...options, colorScheme });
        await write(page, '[craft]\nname = "Linnet"\n\n[arming]\ntilt-limt = 60 deg\n');
        await at(page, 'Findings');
        await page.locator('#findings .must-fix').first().waitFor();
        const faults = await accessFaults(page);
        await page.locator('#more').click();
        faults.push(...(await accessFaults(page)));
        await page.keyboard.press('Escape');
        await at(page, 'Build sheet');
        await sheet(page).getByRole('heading', { name: 'Linnet' }).waitFor();
        await menu(page, 'Open Bench Card');
        await frame(page, 'Bench Card')
          .getByRole('heading', { name: /Linnet/ })
          .waitFor();
        faults.push(...(await accessFaults(page)));
        await page.getByRole('tab', { name: 'Bench Card' }).press('Delete');
        await page.getByRole('tab', { name: 'Bench Card' }).waitFor({ state: 'detached' });
        assert.deepEqual(faults, []);
      });

  async function accessFaults(page: Page): Promise<string[]> {
    const axe = readFileSync(require.resolve('axe-core'), 'utf8');
    for (const one of page.frames()) await one.evaluate(axe);
    const { violations } = await page.evaluate<AxeResults>('axe.run()');
    return violations.map(
      ({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`,
    );
  }
});
