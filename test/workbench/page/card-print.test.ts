import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import type { BrowserContext, Page } from 'playwright-core';
import { benchCard } from '../../../server/src/sheet/bench-card/bench-card';
import { benchCardPage } from '../../../server/src/sheet/bench-card/page';
import { craftOf, findingsOf } from '../../support/findings';
import { openProfile } from './driver';

const millimetre = 96 / 25.4;
/** What is left between the margins of the card's own page rule, in millimetres. */
const sheets = { A4: { width: 210 - 22, height: 297 - 24 }, A5: { width: 148 - 22, height: 210 - 24 } };

function cardPage(name: string): string {
  const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
  const craft = craftOf(readFileSync(`test/demo/${name}.craft`, 'utf8'), club);
  return benchCardPage(benchCard(craft, findingsOf(craft)));
}

describe('the printed bench card', () => {
  let context: BrowserContext | undefined;
  let opened: Page | undefined;
  const page = (): Page => opened ?? assert.fail('no page');

  before(async () => {
    context = await openProfile();
    opened = await context.newPage();
    await opened.emulateMedia({ media: 'print' });
  });

  after(async () => {
    await context?.close();
  });

  for (const [format, { width, height }] of Object.entries(sheets)) {
    for (const name of ['sandmartin', 'bittern', 'wagtail']) {
      it(`of ${name} fits ${format}: nothing sticks out, and every step fits on one sheet`, async () => {
        await page().setViewportSize({ width: Math.floor(width * millimetre), height: 1000 });
        await page().setContent(cardPage(name));
        const { overflow, tallest } = await page().evaluate<{ overflow: number; tallest: number }>(`({
          overflow: document.documentElement.scrollWidth - document.documentElement.clientWidth,
          tallest: Math.max(...[...document.querySelectorAll('li')].map((one) => one.getBoundingClientRect().height)),
        })`);
        assert.equal(overflow, 0);
        assert.ok(tallest < height * millimetre, String(tallest));
        const pdf = await page().pdf({ format, preferCSSPageSize: false });
        const pages = pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
        assert.ok(pages >= 1 && pages <= (format === 'A4' ? 7 : 14), `${pages} pages`);
      });
    }
  }
});
