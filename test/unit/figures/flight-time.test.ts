import assert from 'node:assert/strict';
import fc from 'fast-check';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { withheldIn } from '../../../server/src/figures/withheld';
import { craftOf } from '../../support/findings';
import { plausibleCraft, scriptOf } from '../../support/plausible-craft';

const ids = [
  'minutes-to-landing',
  'minutes-to-warning',
  'minutes-to-landing-cold',
  'minutes-to-warning-cold',
] as const;

function minutesOf(text: string) {
  const view = new CraftView(craftOf(text), 'one');
  return (id: (typeof ids)[number]) => figureOf(view, id);
}

describe('minutes of two hundred plausible craft', () => {
  it('are never negative nor outside their span, shorter with a cold pack, longer with a bigger one or a smaller reserve', () => {
    let hovering = 0;
    fc.assert(
      fc.property(plausibleCraft, (craft) => {
        const text = scriptOf(craft);
        const [now, bigger, deeper] = [
          minutesOf(text),
          minutesOf(text.replace('2000 mAh', '2400 mAh')),
          minutesOf(`${text}\npower.charge-reserve = 10 %`),
        ];
        for (const id of ids) {
          const figure = now(id);
          if (figure === null) continue;
          hovering += 1;
          const { low, likely, high } = figure;
          assert.ok(0 < low && low <= likely && likely <= high, `${id}: ${low} ${likely} ${high}`);
          assert.ok((bigger(id)?.likely ?? 0) > likely, id);
        }
        const landing = now('minutes-to-landing')?.likely ?? 0;
        assert.ok((now('minutes-to-landing-cold')?.likely ?? 0) <= landing);
        assert.ok((deeper('minutes-to-landing')?.likely ?? 0) >= landing);
      }),
      { numRuns: 200 },
    );
    assert.ok(hovering > 200, `${hovering}`);
  }).timeout(60_000);
});

describe('a pack that is down from the start', () => {
  const fiveInch = [
    'craft.layout = quad-x',
    'craft.mass = 420 g',
    'motor.kv = 1900 rpm/V',
    'motor.resistance = 90 mohm',
    'motor.idle-current = 1 A',
    'prop.diameter = 5 in',
    'prop.pitch = 4.3 in',
    'prop.blades = 3',
    'pack.one.chemistry = lipo',
    'pack.one.cells = 6',
    'pack.one.capacity = 1300 mAh',
    'pack.one.mass = 200 g',
    'pack.one.discharge = 100 C',
  ].join('\n');

  it('gives no minutes, and the reason', () => {
    const view = new CraftView(craftOf(`${fiveInch}\npower.land-cell = 4.19 V`), 'one');
    assert.equal(figureOf(view, 'minutes-to-landing'), null);
    const [withheld] = withheldIn(view, new Set(['minutes-to-landing']));
    assert.equal(withheld?.because, 'Even a full pack shows the landing voltage from the start.');
  });

  it('ends at the landing voltage where that comes before the reserve', () => {
    const why = (line: string) => minutesOf(`${fiveInch}\n${line}`)('minutes-to-landing')?.why ?? '';
    assert.match(why('power.land-cell = 3.4 V'), /to the reserve of 20 %$/);
    assert.match(why('power.land-cell = 3.8 V'), /to the landing voltage$/);
  });
});
