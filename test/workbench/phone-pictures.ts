/**
 * Pictures of the page without an install on a phone: the script with its slips, the build sheet, and the bench card with
 * a reading in the wrong unit; the three side by side, in both themes. The page is made before.
 */
import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { launchBrowser } from './launch.mjs';

const root = resolve(__dirname, '..', '..');
const file = join(root, 'dist', 'page', 'propsoff.html');
const phone = { viewport: { width: 360, height: 720 }, hasTouch: true, isMobile: true, deviceScaleFactor: 2 };

/** The demo as somebody has kept it in the browser, with `text` for the script that is shown. */
function keptDemo(script: string, text: string): string {
  const shared = readFileSync(join(root, 'test', 'demo', 'club-habits.craft'), 'utf8');
  const files = { [script]: text, 'club-habits.craft': shared };
  const kept = Object.entries(files).map(([path, content]) => [`propsoff/file/${path}`, content]);
  const shown = ['propsoff/open', JSON.stringify({ paths: [script], shown: script })];
  return `for (const [key, value] of ${JSON.stringify([...kept, shown])}) localStorage.setItem(key, value);`;
}

async function at(page: Page, place: string): Promise<void> {
  await page.locator('.places').getByRole('button', { name: place }).tap();
}

async function shownOn(page: Page): Promise<readonly Buffer[]> {
  const shots: Buffer[] = [];
  const take = async () => shots.push(await page.screenshot({ animations: 'disabled' }));
  await at(page, 'Findings');
  await page.locator('#findings').getByText('Line', { exact: false }).first().tap();
  await page.locator('#editor .cm-lintRange-error').first().waitFor();
  await take();
  await at(page, 'Build sheet');
  const sheet = page.frameLocator('iframe[title="Build Sheet"]');
  await sheet.getByRole('heading', { name: 'Sandmartin' }).waitFor();
  await sheet.locator('#how-late').evaluate((one) => one.scrollIntoView());
  await take();
  await page.locator('#more').tap();
  await page.locator('dialog .choice').filter({ hasText: 'Open Bench Card' }).tap();
  const card = page.frameLocator('iframe[title="Bench Card"]');
  for (const step of ['Propellers off', 'Look it over']) await card.getByLabel(step, { exact: true }).check();
  await card.getByLabel('At the battery pads after five seconds').fill('12 V');
  const fault = card.getByText('This is a voltage.', { exact: false });
  await fault.waitFor();
  await fault.evaluate((one) => one.scrollIntoView({ block: 'end' }));
  await take();
  return shots;
}

/** Side by side on nothing, so that they stand on whatever the reader's theme is. */
async function sideBySide(browser: Browser, shots: readonly Buffer[], path: string): Promise<void> {
  const context = await browser.newContext({ viewport: { width: 1140, height: 740 } });
  const page = await context.newPage();
  const images = shots
    .map((shot) => `<img src="data:image/png;base64,${shot.toString('base64')}" alt="">`)
    .join('');
  await page.setContent(`<style>
    body { margin: 0; padding: 10px; display: flex; gap: 20px; }
    img { width: 358px; border: 1px solid #808890; border-radius: 14px; }
  </style>${images}`);
  await page.evaluate('Promise.all([...document.images].map((one) => one.decode()))');
  await page.locator('body').screenshot({ path, omitBackground: true });
  await context.close();
}

/** `text`: the demo's script with slips in it. */
export async function photographPhone(folder: string, script: string, text: string): Promise<void> {
  if (!existsSync(file)) throw new Error(`${file} is not there: npm run page makes it`);
  const browser = await launchBrowser({ whole: true });
  try {
    for (const colorScheme of ['light', 'dark'] as const) {
      const context = await browser.newContext({ ...phone, colorScheme });
      await context.addInitScript({ content: keptDemo(script, text) });
      const page = await context.newPage();
      await page.goto(pathToFileURL(file).href);
      await page.locator('html[data-ready]').waitFor();
      await sideBySide(browser, await shownOn(page), join(folder, `phone-${colorScheme}.png`));
      console.log(`client/pictures/phone-${colorScheme}.png`);
      await context.close();
    }
  } finally {
    await browser.close();
  }
}
