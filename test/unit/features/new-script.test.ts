import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { CraftView } from '../../../server/src/craft/view';
import {
  type SalesAnswers,
  type SalesQuestion,
  salesFault,
  salesPageScript,
} from '../../../server/src/features/new-script/sales-page';
import { figureOf } from '../../../server/src/figures';
import { testCatalog } from '../../support/catalog';
import { craftOf, findingsIn } from '../../support/findings';

const none: SalesAnswers = { size: '', kv: '', cells: '', propeller: '' };

const script = (answers: Partial<SalesAnswers>) =>
  salesPageScript(testCatalog, { ...none, ...answers }, async (text) => craftOf(text));

const seriousIn = (text: string) =>
  findingsIn(text)
    .filter(({ level }) => level === 'must-fix' || level === 'risk')
    .map(({ id, message }) => `${id}: ${message}`);

describe('the starters', () => {
  for (const file of readdirSync('client/starters')) {
    const text = readFileSync(`client/starters/${file}`, 'utf8');

    it(`${file} has nothing to fix and no risk, and says what is left to decide`, () => {
      assert.deepEqual(seriousIn(text), []);
      assert.match(text, /^# Left for you to decide: .+$/m);
    });

    it(`${file} shows hover, thrust and minutes with their spans`, () => assertFigures(text));
  }
});

function assertFigures(text: string): void {
  const craft = craftOf(text);
  const [pack = null] = craft.packs();
  for (const id of ['hover-throttle', 'thrust-to-weight', 'minutes-to-landing']) {
    const figure = figureOf(new CraftView(craft, pack), id);
    assert.ok(figure, `${id} is not known`);
    const { low, likely, high } = figure;
    assert.ok(low < likely && likely < high, `${id} has no span`);
  }
}

describe('a script from a sales page', () => {
  const pages: readonly Partial<SalesAnswers>[] = [
    {},
    { size: '3 in', kv: '3800', cells: '4' },
    { size: '5 in, 2207', kv: '1950kv', cells: '6S', propeller: '5.1x4.3x3' },
    { size: '31 mm', cells: '1' },
    { size: '7"' },
    { size: '2306.5' },
    { kv: '8000' },
    { cells: '2s' },
    { propeller: '2.5 x 1.9 x 3' },
    { propeller: '31mm' },
  ];
  for (const answers of pages) {
    it(`of ${JSON.stringify(answers)} has nothing to fix, no risk, and figures with spans`, async () => {
      const text = await script(answers);
      assert.deepEqual(seriousIn(text), []);
      assertFigures(text);
    });
  }

  it('says of each line whether the page tells it, and else what to write', async () => {
    const text = await script({ size: '5 in, 2207', kv: '1950', cells: '6S', propeller: '5.1x4.3' });
    for (const line of [
      /^kv += {1,2}1950 rpm\/V +# as the page tells$/m,
      /^stator-diameter = 22 mm +# as the page tells$/m,
      /^stator-height += {1,2}7 mm +# as the page tells$/m,
      /^diameter = 5\.1 in +# as the page tells$/m,
      /^cells += {1,2}6 +# as the page tells$/m,
      /^blades += {1,2}3 +# not told: count them$/m,
      /^mass += {1,2}390 g +# not told: weigh it/m,
    ])
      assert.match(text, line);
  });

  it('takes a motor as it is sold, and a pack as its label has it', async () => {
    const text = await script({ size: '7 in', kv: '2806.5 1300kv', cells: '6S 1500 mAh 90C LiPo' });
    for (const line of [
      /^kv += {1,2}1300 rpm\/V +# as the page tells$/m,
      /^stator-diameter += {1,2}28 mm +# as the page tells$/m,
      /^stator-height += {1,2}6\.5 mm +# as the page tells$/m,
      /^chemistry += {1,2}lipo +# as the page tells$/m,
      /^cells += {1,2}6 +# as the page tells$/m,
      /^capacity += {1,2}1500 mAh +# as the page tells$/m,
      /^discharge += {1,2}90 C +# as the page tells$/m,
    ])
      assert.match(text, line);
    assert.match(salesFault(testCatalog, 'cells', '6S brick') ?? '', /brick/);
    assert.match(salesFault(testCatalog, 'cells', '1500 mAh') ?? '', /number of cells/);
  });

  it('takes less kv from more cells, as the speed then stays', async () => {
    const kv = async (cells: string) =>
      Number(/^kv += (\d+)/m.exec(await script({ size: '5 in', cells }))?.[1]);
    // 1950 rpm/V on four cells turn as 1300 rpm/V on six do: 1950 · 4 / 6.
    assert.deepEqual([await kv('4'), await kv('6')], [1950, 1300]);
  });

  it('tells what is wrong with an answer, and nothing of one that is skipped', () => {
    const fault = (question: SalesQuestion, typed: string) => salesFault(testCatalog, question, typed);
    for (const question of ['size', 'kv', 'cells', 'propeller'] as const)
      assert.equal(fault(question, ' '), null);
    assert.match(fault('size', 'big') ?? '', /5 in, 2207/);
    assert.match(fault('size', '90 in') ?? '', /40 in/);
    assert.match(fault('kv', 'fast') ?? '', /1950/);
    assert.match(fault('kv', '99999') ?? '', /60000 rpm\/V/);
    assert.match(fault('cells', '4-6S') ?? '', /the one that you fly/);
    assert.match(fault('cells', '0') ?? '', /1/);
    assert.match(fault('propeller', '5x') ?? '', /5x4\.3x3/);
    for (const [question, typed] of [
      ['size', '2,5 in'.replace(',', '.')],
      ['kv', '1950 KV'],
      ['cells', '6 cells'],
      ['propeller', '5 × 4.3 × 3'],
    ] as const)
      assert.equal(fault(question, typed), null, typed);
  });
});
