import { strict as assert } from 'node:assert';
import { readFileSync } from 'node:fs';
import type { BrowserContext, Page } from 'playwright-core';
import { benchCard } from '../../../server/src/sheet/bench-card/bench-card';
import type { BenchCard } from '../../../server/src/sheet/bench-card/card';
import { type CardKept, nothingTaken } from '../../../server/src/sheet/bench-card/taken';
import { built } from '../../support/built';
import { craftOf, findingsOf } from '../../support/findings';
import { openProfile } from './driver';

const racer = readFileSync('test/demo/sandmartin.craft', 'utf8');
const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };

function cardOf(text: string): BenchCard {
  const craft = craftOf(text, club);
  return benchCard(craft, findingsOf(craft));
}

/** The card's own page with nothing around it, on a phone beside the craft: what it says goes into `said`. */
describe('the bench card on a phone', () => {
  let context: BrowserContext | undefined;
  let opened: Page | undefined;
  const page = (): Page => opened ?? assert.fail('no page');
  const box = (title: string) => page().getByLabel(title, { exact: true });

  before(async () => {
    const profile = await openProfile();
    context = await profile.browser()?.newContext({
      viewport: { width: 360, height: 740 },
      hasTouch: true,
      isMobile: true,
    });
    await profile.close();
    assert.ok(context);
    opened = await context.newPage();
    const style = readFileSync(built('card.css'), 'utf8');
    await opened.setContent(
      `<!doctype html><html lang="en"><head><meta name="viewport" content="width=device-width">
      <title>Card</title><style>${style}</style></head><body><main id="card"></main>
      <div id="live" role="status"></div></body></html>`,
    );
    await opened.evaluate(`globalThis.said = [];
      globalThis.acquireVsCodeApi = () => ({ postMessage: (message) => said.push(structuredClone(message)) });`);
    await opened.addScriptTag({ path: built('card.js') });
    await give(cardOf(racer), nothingTaken);
  });

  after(async () => {
    await context?.close();
  });

  async function give(card: BenchCard, taken: CardKept): Promise<void> {
    const message = JSON.stringify({ kind: 'card', card, taken });
    await page().evaluate(`window.postMessage(${message}, '*')`);
    await page().locator('h1').waitFor();
  }

  async function lastTaken(): Promise<CardKept> {
    return page().evaluate<CardKept>(`said.findLast(({ kind }) => kind === 'taken').taken`);
  }

  it('fits its width, has boxes and fields that a thumb hits, and letters that are not enlarged', async () => {
    const { overflow, boxes, fields, letters } = await page().evaluate<Record<string, number>>(`(() => {
      const least = (list, of) => Math.min(...[...list].map(of));
      const inputs = document.querySelectorAll('.reading input');
      return {
        overflow: document.documentElement.scrollWidth - document.documentElement.clientWidth,
        boxes: least(document.querySelectorAll('[type=checkbox]'), (one) => one.getBoundingClientRect().width),
        fields: least(inputs, (one) => one.getBoundingClientRect().height),
        letters: least(inputs, (one) => parseFloat(getComputedStyle(one).fontSize)),
      };
    })()`);
    assert.equal(overflow, 0);
    assert.ok(boxes !== undefined && boxes >= 24, `${boxes}`);
    assert.ok(fields !== undefined && fields >= 40, `${fields}`);
    assert.ok(letters !== undefined && letters >= 16, `${letters}`);
  });

  it('is ticked by touch: it tells how far it is and what comes next, which a touch leads to', async () => {
    await box('Propellers off').tap();
    assert.match(await page().locator('#count').innerText(), /^1 of \d+ steps done$/);
    await page().getByText('Next: Look it over').tap();
    assert.equal(await page().evaluate('document.activeElement.id'), 'tick/look-over');
    await box('Look it over').tap();
    assert.deepEqual(
      (await lastTaken()).ticked.map(({ id }) => id),
      ['propellers-off', 'look-over'],
    );
  });

  it('says before the steps with propellers on what is not ticked, and they come last', async () => {
    const apart = page().locator('section.apart');
    assert.equal(await apart.count(), 1);
    assert.equal(await page().locator('section').last().getAttribute('class'), 'apart');
    assert.match(
      await apart.locator('.before').innerText(),
      /^Propellers stay off .*Not ticked: “No short circuit”/,
    );
  });

  it('asks for numbers by a phone’s keys for them, and has each reading looked at as it is typed', async () => {
    const field = box('At the battery pads after five seconds');
    assert.equal(await field.getAttribute('inputmode'), 'decimal');
    await field.fill('12 V');
    await page().waitForFunction(
      `said.some(({ kind, reading }) => kind === 'check' && reading.typed === '12 V')`,
    );
    const answer = (typed: string) =>
      `window.postMessage({ kind: 'checked', id: 'no-short 1', typed: '${typed}', fault: 'This is a voltage.' }, '*')`;
    await page().evaluate(answer('12'));
    await page().evaluate(answer('12 V'));
    await page().locator('.fault', { hasText: 'This is a voltage.' }).waitFor();
    assert.equal(await field.getAttribute('aria-invalid'), 'true');
    await field.fill('12 kohm');
    assert.equal(await field.getAttribute('aria-invalid'), 'false');
  });

  it('takes a tick back when the script changed what the step says, tells it above, and keeps the cursor', async () => {
    const hover = 'The test hover';
    await box(hover).tap();
    await box('At the battery pads after five seconds').focus();
    await give(cardOf(racer.replace('212 g', '260 g')), await lastTaken());
    await page().locator('#lost', { hasText: hover }).waitFor();
    assert.equal(await box(hover).isChecked(), false);
    assert.equal(await box('Look it over').isChecked(), true);
    assert.match(
      await page().locator('li', { hasText: hover }).locator('.lost').innerText(),
      /do it again\. It said “/,
    );
    assert.equal(await page().evaluate('document.activeElement.id'), 'no-short/1');
    await box(hover).tap();
    assert.equal(await page().locator('#lost').innerText(), '');
  });

  it('is cleared for another day, and brought back by whoever did not mean it', async () => {
    await page().getByText('Clear the Card').tap();
    assert.deepEqual(await lastTaken(), nothingTaken);
    assert.match(await page().locator('#count').innerText(), /^0 of /);
    await page().getByText('Bring It Back').tap();
    assert.match(await page().locator('#count').innerText(), /^3 of /);
    assert.equal(await box('At the battery pads after five seconds').inputValue(), '12 kohm');
  });
});
