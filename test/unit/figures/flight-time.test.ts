import assert from 'node:assert/strict';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { withheldIn } from '../../../server/src/figures/withheld';
import { craftOf } from '../../support/findings';

function minutesOf(text: string) {
  const view = new CraftView(craftOf(text), 'one');
  return (id: string) => figureOf(view, id);
}

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
