/**
 * Draws the extension's icon from the mark in the activity bar: white on a tile, in 256 points, in the browser
 * that the tests use. `npm run icon` writes it; a test draws it again and compares.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { closeBrowser, openBrowser } from './launch.mjs';

const media = resolve(__dirname, '..', '..', 'client', 'media');

/** Where the icon lies. */
export const iconPath = join(media, 'icon.png');

const size = 256;

/** The blue of the file icon on light ground. One flat colour keeps the file small. */
const tile = '#3b6ea5';

function iconPage(mark: string): string {
  return `<style>
    body { margin: 0; }
    #tile { width: ${size}px; height: ${size}px; border-radius: 44px; background: ${tile}; display: grid; place-items: center; }
    svg { width: 172px; height: 172px; }
  </style>
  <div id="tile">${mark.replace('stroke="#000"', 'stroke="#fff"')}</div>`;
}

/** The icon as a PNG, transparent outside the tile. */
export async function drawIcon(page: Page): Promise<Buffer> {
  await page.setContent(iconPage(readFileSync(join(media, 'propsoff.svg'), 'utf8')));
  return page.locator('#tile').screenshot({ omitBackground: true });
}

async function main(): Promise<void> {
  const context = await openBrowser({ width: size, height: size });
  try {
    writeFileSync(iconPath, await drawIcon(await context.newPage()));
    console.log('client/media/icon.png');
  } finally {
    await closeBrowser(context);
  }
}

if (require.main === module) {
  main().catch((error: unknown) => {
    console.error(error);
    process.exitCode = 1;
  });
}
