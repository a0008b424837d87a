import assert from 'node:assert/strict';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { benchOf } from '../../../server/src/figures/motor-bench';
import { craftOf } from '../../support/findings';
import { near } from '../../support/near';

const craft = [
  'craft.layout = quad-x',
  'craft.mass = 420 g',
  'motor.kv = 2000 rpm/V',
  'motor.stator-diameter = 22 mm',
  'motor.stator-height = 7 mm',
  'prop.diameter = 5 in',
  'prop.pitch = 4.3 in',
  'prop.blades = 3',
  'pack.one.chemistry = lipo',
  'pack.one.cells = 4',
  'pack.one.capacity = 1500 mAh',
  'pack.one.mass = 180 g',
  'pack.one.discharge = 100 C',
];

/** Made by the model: 2000 rpm/V, 0.1 ohm, 0.8 A, CT 0.129, CP 0.0926; throttle, V, A, rpm, g, N m. */
const table = [
  [30, 14.781, 0.946, 8238, 79.018, 0.01124],
  [50, 14.73, 3.486, 13_336, 207.094, 0.029_47],
  [70, 14.63, 8.482, 18_059, 379.76, 0.054_04],
  [90, 14.472, 16.398, 22_406, 584.562, 0.083_18],
  [100, 14.37, 21.519, 24_435, 695.271, 0.098_93],
];
const columns = ['throttle', 'voltage', 'current', 'speed', 'thrust', 'torque'];
const units = ['%', 'V', 'A', 'rpm', 'g', 'N*m'];

function viewOf(told: readonly string[], rows = table, ...further: readonly string[]): CraftView {
  const lines = rows.flatMap((row, index) =>
    row.flatMap((value, column) =>
      told.includes(columns[column] ?? '')
        ? [`motor.bench.${index + 1}.${columns[column]} = ${value} ${units[column]}`]
        : [],
    ),
  );
  return new CraftView(craftOf([...craft, ...lines, ...further].join('\n')), 'one');
}

const figure = (view: CraftView, id: string) => figureOf(view, id) ?? assert.fail(`no ${id}`);
const width = (view: CraftView, id: string) => {
  const { low, high } = figure(view, id);
  return Math.log(high / low);
};

describe('a maker’s table', () => {
  const plain = ['voltage', 'current', 'thrust'];
  const fast = [...plain, 'throttle', 'speed'];

  it('narrows the current of the hover to less than half of its span, the more so with torques, within the span that there is without it', () => {
    const steps = [[], plain, fast, columns].map((told) => viewOf(told));
    const widths = steps.map((view) => width(view, 'hover-current'));
    const [without = 0, watts = 0, speeds = 0, torques = 0] = widths;
    assert.ok(Math.max(watts, speeds) < without / 2 && torques < Math.min(watts, speeds), widths.join(' '));
    const open = figure(viewOf([]), 'hover-current');
    for (const view of steps) {
      const { likely } = figure(view, 'hover-current');
      assert.ok(likely >= open.low && likely <= open.high);
    }
  });

  it('says what was taken from it', () => {
    const all = figure(viewOf(columns), 'hover-throttle').assumed.join('; ');
    assert.match(all, /a winding of .* by the watts of the maker’s table/);
    assert.match(all, /by the maker’s table at full throttle/);
    assert.match(all, /thrust coefficient by the maker’s table \(5 rows\)/);
    const few = figure(viewOf(plain), 'hover-throttle').assumed.join('; ');
    assert.match(few, /power coefficient by the watts of the maker’s table/);
  });

  it('tells the current for a thrust, whatever the throttle was called', () => {
    const renamed = table.map(([, ...row]) => [20, ...row]);
    near(
      figure(viewOf([...plain, 'throttle'], renamed), 'hover-current').likely,
      figure(viewOf(plain), 'hover-current').likely,
      1e-9,
    );
  });

  it('counts not where its rows are too few, give too much, or go with another kv than is printed', () => {
    const open = figure(viewOf([]), 'hover-current').likely;
    const strong = table.map((row) => row.map((value, column) => (column === 5 ? 1.5 * value : value)));
    for (const [kind, view] of [
      ['few', viewOf(columns, table.slice(0, 2))],
      ['gain', viewOf(columns, strong)],
    ] as const) {
      assert.equal(benchOf(view)?.fault?.kind, kind);
      near(figure(view, 'hover-current').likely, open, 1e-9);
    }
    assert.equal(benchOf(viewOf(columns, table, 'motor.kv = 1400 rpm/V'))?.fault?.kind, 'kv');
    assert.equal(benchOf(viewOf(columns, table, 'motor.kv = 3000 rpm/V'))?.fault?.kind, 'kv');
  });

  it('has its torque left out where that is the current times a number', () => {
    const made = table.map((row) => row.map((value, column) => (column === 5 ? (row[2] ?? 0) / 200 : value)));
    const bench = benchOf(viewOf(columns, made));
    assert.equal(bench?.fault?.kind, 'torque');
    assert.equal(bench?.power, null);
    assert.notEqual(bench?.thrust, null);
  });
});
