import { strict as assert } from 'node:assert';
import { execFileSync } from 'node:child_process';
import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { built } from '../support/built';
import { launchBrowser } from '../workbench/launch.mjs';

const root = `${__dirname}/../..`;

interface Opened {
  readonly context: BrowserContext;
  readonly page: Page;
  /** What the page asked for that is not inside it. */
  readonly asked: string[];
  /** What it was refused, or failed at. */
  readonly faults: string[];
}

const desk = { viewport: { width: 1280, height: 800 } };
const phone = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true };

describe('the page without an install', () => {
  let browser: Browser;
  let opened: Opened | null = null;
  before(async function () {
    this.timeout(180_000);
    execFileSync(process.execPath, ['--import', 'tsx', 'server/build/one-page.ts'], {
      cwd: root,
      stdio: 'inherit',
    });
    browser = await launchBrowser();
  });
  after(() => browser?.close());
  afterEach(async () => {
    const { context, asked = [], faults = [] } = opened ?? {};
    opened = null;
    await context?.close();
    assert.deepEqual(asked, [], 'nothing is asked of anybody');
    assert.deepEqual(faults, [], 'nothing is refused and nothing fails');
  });

  async function open(
    options: typeof desk,
    address = pathToFileURL(built('page/propsoff.html')).href,
  ): Promise<Page> {
    const context = await browser.newContext(options);
    const page = await context.newPage();
    page.setDefaultTimeout(20_000);
    const [asked, faults]: [string[], string[]] = [[], []];
    page.on('request', (request) => {
      const url = request.url();
      if (url !== address && !url.startsWith('blob:')) asked.push(url);
    });
    page.on('pageerror', ({ message }) => faults.push(message));
    page.on('console', (said) => said.type() === 'error' && faults.push(said.text()));
    opened = { context, page, asked, faults };
    await page.goto(address);
    await page.locator('html[data-ready]').waitFor();
    return page;
  }

  /** Writes the whole script anew, as a person who pastes it. */
  async function write(page: Page, text: string): Promise<void> {
    await page.locator('#editor .cm-content').click();
    await page.keyboard.press('Control+A');
    await page.keyboard.insertText(text);
  }

  const script = (page: Page) => page.locator('#editor .cm-line').allInnerTexts();

  /** What the browser's storage holds; the test's own limit ends a wait for it. */
  const kept = (page: Page) =>
    page.evaluate(() => JSON.stringify((globalThis as unknown as { localStorage: object }).localStorage));

  it('shows a finding as it is typed, explains it, and mends it by its fix', async () => {
    const page = await open(desk);
    await write(page, '[arming]\ntilt-limt = 60 deg\n\n[gyro.filter.1]\ncutoff = 180 Hz\n');
    const finding = page.locator('#findings .finding').filter({ hasText: 'Did you mean arming.tilt-limit?' });
    await finding.waitFor();
    assert.match(await finding.innerText(), /Line 2/);
    await page
      .locator('#editor .cm-line')
      .getByText('cutoff')
      .hover({ position: { x: 20, y: 8 } });
    await page.locator('.cm-tooltip-hover').getByText('Cutoff of a gyro filter').first().waitFor();
    await finding.getByRole('button', { name: /tilt-limit/ }).click();
    await page.locator('#editor .cm-line').getByText('tilt-limit = 60 deg').waitFor();
    await finding.waitFor({ state: 'detached' });
  });

  it('has the build sheet beside the script, which follows it', async () => {
    const page = await open(desk);
    const sheet = page.frameLocator('iframe[title="Build Sheet"]');
    await sheet.getByText('Can it fly?').waitFor();
    await write(page, '[craft]\nname = "Linnet"\nmass = 300 g\n');
    await sheet.getByRole('heading', { name: 'Linnet' }).waitFor();
  });

  it('keeps what is written, and has it again', async () => {
    const page = await open(phone);
    await write(page, '[craft]\nname = "Linnet"\n');
    while (!(await kept(page)).includes('Linnet')) await page.waitForTimeout(20);
    await page.reload();
    await page.locator('#editor .cm-line').getByText('"Linnet"').waitFor();
    assert.deepEqual((await script(page)).slice(0, 2), ['[craft]', 'name = "Linnet"']);
  });
});
