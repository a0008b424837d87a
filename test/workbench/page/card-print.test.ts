import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import type { BrowserContext, Page } from 'playwright-core';
import { benchCard } from '../../../server/src/sheet/bench-card/bench-card';
import type { BenchCard } from '../../../server/src/sheet/bench-card/card';
import { benchCardPage } from '../../../server/src/sheet/bench-card/page';
import {
  type CardKept,
  nothingTaken,
  withReading,
  withTick,
} from '../../../server/src/sheet/bench-card/taken';
import { craftOf, findingsOf } from '../../support/findings';
import { openProfile } from './driver';

const millimetre = 96 / 25.4;
/** What is left between the margins of the card's own page rule, in millimetres. */
const sheets = { A4: { width: 210 - 22, height: 297 - 24 }, A5: { width: 148 - 22, height: 210 - 24 } };

/** Every step ticked, and something in every field. */
function allTaken(card: BenchCard): CardKept {
  const steps = card.parts.flatMap((part) => part.steps);
  const fields = card.parts.flatMap(({ signed, noticed }) => [...signed, noticed]);
  const readings = steps.flatMap((step) => [
    ...[step, ...step.withPacks].flatMap((one) => one.readings),
    ...step.asked,
  ]);
  const ticked = steps.reduce((taken, step) => withTick(taken, step, true), nothingTaken);
  return [...fields, ...readings].reduce(
    (taken, { id, isWords }) =>
      withReading(taken, id, isWords ? 'it sang in the turns, '.repeat(4) : '1234.5'),
    ticked,
  );
}

function cardPage(name: string, isTaken: boolean): string {
  const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
  const craft = craftOf(readFileSync(`test/demo/${name}.craft`, 'utf8'), club);
  const card = benchCard(craft, findingsOf(craft));
  return benchCardPage(card, isTaken ? allTaken(card) : nothingTaken);
}

const cards = [
  ['sandmartin', false],
  ['bittern', false],
  ['wagtail', false],
  ['sandmartin', true],
] as const;

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
    for (const [name, isTaken] of cards) {
      const how = isTaken ? ', ticked and filled in,' : '';
      it(`of ${name}${how} fits ${format}: nothing sticks out, and every step fits on one sheet`, async () => {
        await page().setViewportSize({ width: Math.floor(width * millimetre), height: 1000 });
        await page().setContent(cardPage(name, isTaken));
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
