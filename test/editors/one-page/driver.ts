import { strict as assert } from 'node:assert';
import { execFile } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import type { Browser, BrowserContext, BrowserContextOptions, Download, Page } from 'playwright-core';
import { launchBrowser } from '../../workbench/launch.mjs';

const root = join(__dirname, '../../..');

export const fromDisk = pathToFileURL(join(root, 'dist/page/propsoff.html')).href;

export const desk: BrowserContextOptions = { viewport: { width: 1600, height: 900 } };
export const phone: BrowserContextOptions = {
  viewport: { width: 360, height: 740 },
  hasTouch: true,
  isMobile: true,
};
export const sizes = [
  { on: 'a desk', options: desk },
  { on: 'a phone', options: phone },
];

interface Opened {
  readonly context: BrowserContext;
  /** What the page asked for that is neither inside it nor beside it on its host. */
  readonly asked: string[];
  /** What it was refused, or failed at. */
  readonly faults: string[];
}

interface ToOpen {
  readonly address?: string;
  /** What is done before the page is opened. */
  readonly prepare?: (context: BrowserContext) => Promise<unknown>;
}

let made: Promise<unknown> | null = null;

/** The page is made once for all files of tests. What it weighs is looked at where a release is made of it. */
async function makePage(): Promise<void> {
  const args = ['--import', 'tsx', 'server/build/one-page.ts', '--unweighed'];
  made ??= promisify(execFile)(process.execPath, args, { cwd: root });
  await made;
}

/**
 * Has the page there and a browser running for the tests of a file. After each of them, the page has asked for nothing
 * and failed at nothing, but for what `allowed` took out.
 */
export function onePage() {
  let browser: Browser;
  let opened: Opened | null = null;

  before(async function () {
    this.timeout(180_000);
    await makePage();
    browser = await launchBrowser({ whole: true });
  });
  after(() => browser?.close());
  afterEach(async () => {
    const { context, asked = [], faults = [] } = opened ?? {};
    opened = null;
    await context?.close();
    assert.deepEqual(asked, [], 'nothing is asked of anybody');
    assert.deepEqual(faults, [], 'nothing is refused and nothing fails');
  });

  return {
    open: async (
      options: BrowserContextOptions,
      { address = fromDisk, prepare = async () => undefined }: ToOpen = {},
    ): Promise<Page> => {
      const permissions = ['clipboard-read', 'clipboard-write'];
      const context = await browser.newContext({ permissions, ...options });
      await prepare(context);
      opened = { context, ...watched(context, new URL('.', address).href) };
      return visit(context, address);
    },
    /** What the page was refused or failed at so far; it is no fault of the test any more. */
    faultsTaken: (): readonly string[] => opened?.faults.splice(0) ?? [],
  };
}

function watched(context: BrowserContext, own: string): Pick<Opened, 'asked' | 'faults'> {
  const [asked, faults]: [string[], string[]] = [[], []];
  context.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith('blob:') && !url.startsWith(own)) asked.push(url);
  });
  context.on('weberror', (error) => faults.push(error.error().message));
  context.on('console', (said) => said.type() === 'error' && faults.push(said.text()));
  return { asked, faults };
}

/** The page in a tab of its own. */
export async function visit(context: BrowserContext, address = fromDisk): Promise<Page> {
  const page = await context.newPage();
  page.setDefaultTimeout(20_000);
  await page.goto(address);
  await ready(page);
  return page;
}

export async function ready(page: Page): Promise<void> {
  await page.locator('html[data-ready]').waitFor();
  await page.locator('iframe[title="Build Sheet"]').waitFor({ state: 'attached' });
}

/** Writes the whole text anew, as a person who pastes it. */
export async function write(page: Page, text: string): Promise<void> {
  await at(page, 'Script');
  await page.locator('#editor .cm-content').click();
  await page.keyboard.press('Control+A');
  await page.keyboard.insertText(text);
}

/** Goes to a place, where the page shows one at a time. */
export async function at(page: Page, place: string): Promise<void> {
  const button = page.locator('.places').getByRole('button', { name: place });
  if (await button.isVisible()) await button.click();
}

export async function pick(page: Page, ...titles: readonly string[]): Promise<void> {
  for (const title of titles) await page.locator('dialog .choice').filter({ hasText: title }).first().click();
}

export async function menu(page: Page, ...titles: readonly string[]): Promise<void> {
  await page.locator('#more').click();
  await pick(page, ...titles);
}

export async function downloaded(page: Page, press: () => Promise<void>): Promise<Download> {
  const [download] = await Promise.all([page.waitForEvent('download'), press()]);
  return download;
}

export async function textOf(download: Download): Promise<string> {
  return readFileSync(await download.path(), 'utf8');
}

export async function openFile(page: Page, name: string, content: string | Buffer): Promise<void> {
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.locator('#open').click()]);
  await chooser.setFiles([{ name, mimeType: 'application/octet-stream', buffer: Buffer.from(content) }]);
}

/** What a board has printed, pasted into the page's own field. */
export async function pasteBoardText(page: Page, text: string): Promise<void> {
  await menu(page, 'Paste a Board’s Text');
  await page.locator('dialog textarea').fill(text);
  await page.locator('dialog').getByRole('button', { name: 'OK' }).click();
}

/** Waits without the page's help, which lets no text be run as a script. The test's own limit ends it. */
export async function until(page: Page, isSo: () => Promise<boolean>): Promise<void> {
  while (!(await isSo())) await page.waitForTimeout(20);
}

export const script = async (page: Page) =>
  (await page.locator('#editor .cm-line').allInnerTexts()).join('\n');
export const line = (page: Page, text: string) => page.locator('#editor .cm-line').filter({ hasText: text });
export const frame = (page: Page, title: string) => page.frameLocator(`iframe[title="${title}"]`);
export const sheet = (page: Page) => frame(page, 'Build Sheet');
export const kept = (page: Page) => page.evaluate<string>('JSON.stringify(localStorage)');
