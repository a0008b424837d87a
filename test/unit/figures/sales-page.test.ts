import assert from 'node:assert/strict';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { motorPlateOf } from '../../../server/src/figures/motor-plate';
import { testCatalog } from '../../support/catalog';
import { craftOf } from '../../support/findings';
import { near } from '../../support/near';

/** A three-inch craft as a sales page tells it. */
const page = [
  'craft.layout = quad-x',
  'craft.mass = 138 g',
  'craft.motor-spacing = 140 mm',
  'motor.kv = 3800 rpm/V',
  'motor.poles = 12',
  'motor.stator-diameter = 14 mm',
  'motor.stator-height = 8 mm',
  'prop.diameter = 3 in',
  'prop.pitch = 3.2 in',
  'prop.blades = 3',
  'pack.one.chemistry = lipo',
  'pack.one.cells = 3',
  'pack.one.capacity = 550 mAh',
  'pack.one.mass = 52 g',
  'pack.one.discharge = 75 C',
];

/** The lines with others in the place of those that set the same; `- path` takes one out. */
function viewOf(...changes: readonly string[]): CraftView {
  const pathOf = (line: string) => line.replace(/^- /, '').split(' =')[0] ?? '';
  const gone = new Set(changes.map(pathOf));
  const lines = [
    ...page.filter((line) => !gone.has(pathOf(line))),
    ...changes.filter((one) => !one.startsWith('- ')),
  ];
  return new CraftView(craftOf(lines.join('\n')), 'one');
}

const figure = (view: CraftView, id: string) => figureOf(view, id) ?? assert.fail(`no ${id}`);
const width = ({ low, high }: { readonly low: number; readonly high: number }) => Math.log(high / low);

describe('a craft with no more than a sales page tells', () => {
  it('has hover, thrust, currents, minutes and tones, each with its span and what it was estimated from', () => {
    for (const id of [
      'hover-throttle',
      'thrust-to-weight',
      'full-current',
      'minutes-to-landing',
      'hover-tone',
      'motor-lag',
    ]) {
      const { low, likely, high, assumed } = figure(viewOf(), id);
      assert.ok(low < likely && likely < high, id);
      assert.match(
        assumed.join('; '),
        /a winding of 85\.8 mohm \(42\.9 mohm to 171 mohm\), estimated from the size of its stator and kv/,
        id,
      );
      assert.match(assumed.join('; '), /a no-load current of 0\.98 A/, id);
    }
  });

  it('has them by the mass of a motor where its size is not told, and none where neither is', () => {
    const unsized = ['- motor.stator-diameter', '- motor.stator-height'];
    const weighed = figure(viewOf(...unsized, 'motor.mass = 14 g'), 'hover-throttle');
    assert.match(weighed.assumed.join('; '), /estimated from its mass and kv/);
    assert.equal(figureOf(viewOf(...unsized), 'hover-throttle'), null);
  });

  it('is the surer, the more of the motor is measured', () => {
    const of = (...lines: readonly string[]) => width(figure(viewOf(...lines), 'hover-current'));
    const known = ['motor.resistance = 86 mohm', 'motor.idle-current = 0.98 A'];
    assert.ok(of(...known) < of(), `${of(...known)} and ${of()}`);
  });

  it('says nothing of motors whose size can not be read', () => {
    assert.equal(figureOf(viewOf('motor.stator-height = 8 V'), 'hover-throttle'), null);
  });
});

describe('the winding and what the speed loses under a load', () => {
  const plate = (...lines: readonly string[]) =>
    motorPlateOf(viewOf(...lines), []) ?? assert.fail('no plate');

  it('are two: in the middle of a dozen motors 1.53 times the estimate, 1.05 to 1.77, at 93.5 % of the printed kv', () => {
    const { resistance, underLoad, speedConstant } = plate();
    const ratio = (part: number) => part / resistance.likely;
    near(ratio(underLoad.resistance.likely), 1.53, 0.005);
    near(ratio(underLoad.resistance.low), 1.05, 0.01);
    near(ratio(underLoad.resistance.high), 1.77, 0.01);
    near(underLoad.speedConstant.likely / speedConstant, 0.935, 1e-3);
    near(underLoad.speedConstant.low / speedConstant, 0.846, 1e-3);
  });

  it('are once to twice what is written', () => {
    const { resistance, underLoad } = plate('motor.resistance = 80 mohm');
    near(resistance.likely, 0.08, 1e-9);
    assert.deepEqual([underLoad.resistance.low, underLoad.resistance.high], [0.08, 0.16]);
  });

  it('have spans that no craft outside of the data has narrower: stators below 18 mm and motors below 12 g', () => {
    const spread = (diameter: number, height: number, kv: number) =>
      width(
        plate(
          `motor.stator-diameter = ${diameter} mm`,
          `motor.stator-height = ${height} mm`,
          `motor.kv = ${kv} rpm/V`,
        ).resistance,
      );
    const inside = spread(22, 8, 1300);
    near(inside, 2 * Math.log(testCatalog.motorLaws?.resistance.bySize.factor ?? 0), 1e-9);
    assert.ok(spread(11, 5, 6000) > inside && spread(8, 4, 15_000) > spread(11, 5, 6000));
  });

  it('turn the same watts whatever the volts lose: the pack’s current in the hover hangs on the winding', () => {
    const current = (ohms: string) => figure(viewOf(`motor.resistance = ${ohms}`), 'hover-current').likely;
    assert.ok(current('160 mohm') > current('80 mohm'));
  });
});

describe('the lag of a five-inch craft of which a sales page tells all', () => {
  it('lies with its span about the 20 to 40 ms that are published of such craft (parameter files of UZH, TU Delft and MIT)', () => {
    const five = viewOf(
      'craft.mass = 420 g',
      'craft.motor-spacing = 220 mm',
      'motor.kv = 1950 rpm/V',
      'motor.stator-diameter = 22 mm',
      'motor.stator-height = 7 mm',
      'prop.diameter = 5 in',
      'prop.pitch = 4.3 in',
      'pack.one.cells = 6',
      'pack.one.capacity = 1300 mAh',
      'pack.one.mass = 200 g',
    );
    const { low, likely, high } = figure(five, 'motor-lag');
    assert.ok(low <= 20 && high >= 40, `${low} ${high}`);
    assert.ok(likely > 20 && likely < 40, `${likely}`);
  });
});
