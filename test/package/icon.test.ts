import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { drawIcon, iconPath } from '../workbench/icon';
import { closeBrowser, openBrowser } from '../workbench/launch.mjs';

/** Largest mean difference of two drawings, of 255; browsers smooth edges each in their own way. */
const mostDifference = 2;

interface Compared {
  readonly sizes: readonly number[];
  readonly mean: number;
}

/** Runs in the page, which can read pictures: gives widths and heights, and how far the points differ. */
const comparison = `async (sources) => {
  const seen = [];
  for (const source of sources) {
    const image = Object.assign(new Image(), { src: 'data:image/png;base64,' + source });
    await image.decode();
    const context = new OffscreenCanvas(image.width, image.height).getContext('2d');
    context.drawImage(image, 0, 0);
    const { data } = context.getImageData(0, 0, image.width, image.height);
    seen.push({ size: [image.width, image.height], data });
  }
  const [one, other] = seen.map(({ data }) => data);
  const total = one.reduce((sum, value, at) => sum + Math.abs(value - (other[at] ?? 255)), 0);
  return { sizes: seen.flatMap(({ size }) => size), mean: total / one.length };
}`;

function compared(page: Page, sources: readonly string[]): Promise<Compared> {
  return page.evaluate<Compared>(`(${comparison})(${JSON.stringify(sources)})`);
}

describe('the icon', () => {
  it('is 256 points wide and drawn from the mark in the activity bar; `npm run icon` draws it anew', async () => {
    const context = await openBrowser({ width: 256, height: 256 });
    try {
      const page = await context.newPage();
      const drawn = (await drawIcon(page)).toString('base64');
      const { sizes, mean } = await compared(page, [readFileSync(iconPath, 'base64'), drawn]);
      assert.deepEqual(sizes, [256, 256, 256, 256]);
      assert.ok(mean < mostDifference, `the points differ by ${mean} of 255`);
    } finally {
      await closeBrowser(context);
    }
  });
});
