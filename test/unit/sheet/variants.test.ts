import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { tryValue } from '../../../server/src/sheet/try-value';
import { inTheCold, variantCraft, variantsOf, withoutLoad } from '../../../server/src/sheet/variants';
import { craftOf } from '../../support/findings';

const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
const read = (name: string) => readFileSync(`test/demo/${name}.craft`, 'utf8');
const viewOf = (text: string) => {
  const craft = craftOf(text, club);
  return new CraftView(craft, craft.packs()[0] ?? null);
};

describe('with and without', () => {
  it('offers the cruiser without its load and its wind, the racer with both, and both in the cold', () => {
    assert.deepEqual(variantsOf(viewOf(read('bittern'))), [
      { words: 'without the load of 35 g', path: 'craft.payload', to: '0 g' },
      { words: 'in the cold, at 0 degC', path: 'craft.air-temperature', to: '0 degC' },
      { words: 'without the wind of 6 m/s', path: 'craft.wind', to: '0 m/s' },
    ]);
    assert.deepEqual(variantsOf(viewOf(read('sandmartin')))[0], {
      words: 'with a load of 30 g', // flies at 308 g
      path: 'craft.payload',
      to: '30 g',
    });
    assert.deepEqual(variantsOf(viewOf(read('sandmartin')))[2], {
      words: 'in a wind of 6 m/s',
      path: 'craft.wind',
      to: '6 m/s',
    });
    const unweighed = read('sandmartin').replace(/^mass +=.*$/m, '');
    assert.deepEqual(variantsOf(viewOf(unweighed))[0], {
      words: 'with a load',
      path: 'craft.payload',
      to: null,
    });
    assert.equal(inTheCold(viewOf(`${read('wagtail')}\n[craft]\nair-temperature = -3 degC\n`)), null);
  });

  it('leaves the craft as it is, and flies longer without a load and shorter in the cold', () => {
    const view = viewOf(read('bittern'));
    const minutes = (of: CraftView) => figureOf(of, 'minutes-to-landing')?.likely ?? assert.fail();
    const now = minutes(view);
    const as = (settings: readonly { path: string; to: string }[]) => {
      const craft = variantCraft(view.craft, view.pack, settings) ?? assert.fail();
      return minutes(new CraftView(craft, view.pack));
    };
    const bare = { path: 'craft.payload', to: '0 g' };
    const cold = { path: 'craft.air-temperature', to: '-10 degC' };
    assert.ok(as([bare]) > now);
    assert.ok(as([cold]) < now);
    assert.ok(as([bare, cold]) > as([cold]) && as([bare, cold]) < as([bare]));
    assert.equal(minutes(view), now);
    assert.equal(withoutLoad(view)?.to, '0 g');
  });

  it('tells first what a pilot asks of a load', () => {
    const { craft, pack } = viewOf(read('bittern'));
    const tried = tryValue(craft, pack, 'craft.payload', '0 g', [], () => []) ?? assert.fail();
    assert.deepEqual(
      tried.moved.slice(0, 3).map(({ id, turn }) => [id, turn]),
      [
        ['minutes-to-landing', 'better'],
        ['minutes-to-warning', 'better'],
        ['flying-minutes-to-landing', 'better'],
      ],
    );
  });
});

describe('what a figure assumes', () => {
  it('is told once, also where figures that it rests on assume the same', () => {
    const view = viewOf(read('sandmartin'));
    const { assumed } = figureOf(view, 'minutes-to-landing') ?? assert.fail();
    assert.ok(assumed.some((text) => text.startsWith('craft.air-temperature')));
    assert.deepEqual(assumed, [...new Set(assumed)]);
  });
});
