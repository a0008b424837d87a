import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { CraftView } from '../../../server/src/craft/view';
import { figureOf } from '../../../server/src/figures';
import { sheetPlots } from '../../../server/src/sheet/plots';
import { overlayPicture } from '../../../server/src/sheet/plots/overlay-picture';
import { isOfCraft } from '../../../server/src/sheet/plots/overlay-readings';
import type { LinePlot, Plot } from '../../../server/src/sheet/plots/plot';
import { testCatalog } from '../../support/catalog';
import { craftOf } from '../../support/findings';

const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
const read = (name: string) => readFileSync(`test/demo/${name}.craft`, 'utf8');
const demo = ['sandmartin', 'bittern', 'wagtail'] as const;

function drawn(text: string, pack?: string) {
  const craft = craftOf(text, club);
  const view = new CraftView(craft, pack ?? craft.packs()[0] ?? null);
  const plots = sheetPlots(craft, view.pack);
  const likely = (id: string) => figureOf(view, id)?.likely ?? assert.fail(`no ${id}`);
  const find = <K extends Plot['kind']>(kind: K, id: string): Extract<Plot, { kind: K }> => {
    const found = plots.find((plot) => plot.id === id && plot.kind === kind);
    assert.ok(found, `${id} is not among ${plots.map((plot) => plot.id).join(', ')}`);
    return found as Extract<Plot, { kind: K }>;
  };
  return { plots, likely, find };
}

/** The value of a line at a place of the axis, straight between two samples. */
function valueAt({ at, lines }: LinePlot, name: string, place: number): number {
  const values = lines.find((line) => line.name === name)?.values ?? assert.fail(`no line ${name}`);
  const after = at.findIndex((one) => one >= place);
  const [x1, x2] = [at[after - 1] ?? place, at[after] ?? place];
  const [y1, y2] = [values[after - 1] ?? values[after] ?? 0, values[after] ?? 0];
  return x2 === x1 ? y2 : y1 + ((place - x1) / (x2 - x1)) * (y2 - y1);
}

function near(actual: number, expected: number, share: number): void {
  assert.ok(Math.abs(actual - expected) <= share * Math.abs(expected), `${actual} is not near ${expected}`);
}

describe('the drawings of the sheet', () => {
  for (const name of demo) {
    it(`of ${name} are plain data without a gap, for every pack`, () => {
      for (const pack of craftOf(read(name), club).packs()) {
        const { plots } = drawn(read(name), pack);
        assert.ok(plots.length >= 9, plots.map(({ id }) => id).join());
        assert.equal(new Set(plots.map(({ id }) => id)).size, plots.length);
        assert.deepEqual(JSON.parse(JSON.stringify(plots)), plots);
        for (const plot of plots) if (plot.kind === 'lines') checkLines(plot);
      }
    });
  }

  it('are left out for a part that others include', () => {
    assert.deepEqual(drawn('[gyro]\nrate = 8 kHz\n').plots, []);
  });

  it('show the stick curves through their points, and axes that are set alike as one', () => {
    const plot = drawn(read('sandmartin')).find('lines', 'stick-curves');
    assert.deepEqual(
      plot.lines.map(({ name }) => name),
      ['roll and pitch', 'yaw'],
    );
    near(valueAt(plot, 'roll and pitch', 50), 170, 1e-6);
    near(valueAt(plot, 'roll and pitch', 100), 650, 1e-6);
    near(valueAt(plot, 'yaw', 100), 420, 1e-6);
  });

  it('end a stick curve at the axis’s limit', () => {
    const limited = read('sandmartin').replace('[gyro]', '[stick]\nyaw.limit = 300 deg/s\n\n[gyro]');
    near(valueAt(drawn(limited).find('lines', 'stick-curves'), 'yaw', 100), 300, 1e-6);
  });

  it('show each switch on its channel, in the order of the channels', () => {
    const { switches } = drawn(read('sandmartin')).find('switches', 'switch-bars');
    assert.deepEqual(
      switches.map(({ name, channel, from, to }) => [name, channel, Math.round(from), Math.round(to)]),
      [
        ['arm', 5, 1750, 2050],
        ['self level', 6, 950, 1250],
        ['righting', 9, 1750, 2050],
      ],
    );
  });

  it('stack delays that add up to the figure', () => {
    const { find, likely } = drawn(read('sandmartin'));
    for (const [stack, figure] of [
      ['stick-stack', 'stick-delay'],
      ['loop-stack', 'loop-delay'],
    ] as const) {
      const sum = find('stack', stack).waits.reduce((total, { milliseconds }) => total + milliseconds, 0);
      near(sum, likely(figure), 1e-9);
    }
  });

  it('show a second-order low-pass 3 dB down at its cutoff, and 40 dB a decade above (Butterworth)', () => {
    const text = [
      '[board]\nprofile = heron',
      '[gyro]\nrate = 8 kHz',
      '[gyro.filter.1]\nkind = butterworth\ncutoff = 100 Hz',
      '[derivative]\nchain = none',
      '[control]\nrate = 4 kHz\n[craft]\nname = "test"\n[pack.one]\ncells = 4',
    ].join('\n');
    const plot = drawn(text).find('lines', 'filters');
    near(valueAt(plot, 'gyro', 100), -3.01, 0.02);
    near(valueAt(plot, 'gyro', 500) - valueAt(plot, 'gyro', 50), -28, 0.05);
  });

  it('show the tones of every pack, and a notch where the motors turn in the hover', () => {
    const { find, likely } = drawn(read('sandmartin'));
    const plot = find('lines', 'filters');
    const motors = plot.strips.find(({ name }) => name === 'sprint: motors') ?? assert.fail('no strip');
    near(motors.low, likely('idle-tone'), 1e-9);
    near(motors.likely ?? 0, likely('hover-tone'), 1e-9);
    near(motors.high, likely('full-tone'), 1e-9);
    assert.ok(plot.strips.some(({ name }) => name === 'cruise: blades'));
    const tone = likely('hover-tone');
    assert.ok(
      valueAt(plot, 'gyro, in the hover', tone) < valueAt(plot, 'gyro, in the hover', 0.8 * tone) - 6,
    );
  });

  it('show a step that overshoots as the figure says', () => {
    const { find, likely } = drawn(read('sandmartin'));
    const plot = find('lines', 'step');
    const values = plot.lines.find(({ name }) => name === 'roll')?.values ?? [];
    assert.equal(values[0], 0);
    const most = Math.max(...values.map((value) => value ?? 0));
    assert.ok(Math.abs(most - 100 - likely('roll-overshoot')) < 1, String(most));
  });

  it('show thrust that carries the craft at the hover throttle, and the figures of full throttle at its end', () => {
    const { find, likely } = drawn(read('sandmartin'));
    const thrust = find('lines', 'thrust');
    near(valueAt(thrust, 'sprint', likely('hover-throttle')), 1, 0.02);
    const last = thrust.lines[0]?.values.findLast((value) => value !== null) ?? 0;
    near(last, likely('thrust-to-weight'), 1e-6);
    const current = find('lines', 'current').lines[0]?.values.findLast((value) => value !== null) ?? 0;
    near(current, likely('full-current'), 1e-6);
  });

  it('show the power of level flight from the hover to the top speed, and where it is least for time and for way', () => {
    const { find, likely } = drawn(read('sandmartin'));
    const flight = find('lines', 'flight');
    const values = flight.lines[0]?.values ?? [];
    near(values[0] ?? 0, likely('hover-power'), 1e-9);
    const past = values.indexOf(null);
    near(flight.at[past - 1] ?? 0, likely('top-speed'), 0.05);
    assert.deepEqual(
      flight.strips.map(({ name }) => name),
      ['sprint: longest', 'sprint: farthest', 'cruise: longest', 'cruise: farthest'],
    );
    const [longest, farthest] = flight.strips.map((strip) => strip.likely ?? 0);
    near(valueAt(flight, 'sprint', farthest ?? 0), likely('cruise-power'), 0.02);
    for (const [index, value] of values.entries()) {
      if (value === null) continue;
      const at = flight.at[index] ?? 0;
      assert.ok(value >= valueAt(flight, 'sprint', longest ?? 0) * 0.999, `${at}`);
      assert.ok(value >= (at * likely('cruise-power') * 0.999) / (farthest ?? 1), `${at}`);
    }
  });

  it('show a cell that falls from full to where its flight ends, and what it still gives, with the figures at both ends', () => {
    const { find, likely } = drawn(read('sandmartin'));
    const voltage = find('lines', 'voltage');
    const minutes = likely('minutes-to-landing');
    near(valueAt(voltage, 'sprint: hovering', 0), likely('hover-voltage-full') / 6, 1e-6);
    const valuesOf = (plot: LinePlot, name: string) =>
      plot.lines.find((line) => line.name === name)?.values.flatMap((value) => value ?? []) ?? [];
    for (const pack of ['sprint', 'cruise']) {
      const [hover, full] = ['hovering', 'at full throttle'].map((at) => valuesOf(voltage, `${pack}: ${at}`));
      assert.ok(hover !== undefined && full !== undefined);
      for (const [index, volts] of hover.entries()) {
        assert.ok(volts > (full[index] ?? Number.NaN), `${index}`);
        assert.ok(volts < (hover[index - 1] ?? 5), `${index}`);
      }
    }
    const lasts = voltage.at.filter((_, index) => voltage.lines[0]?.values[index] !== null).at(-1);
    near(lasts ?? 0, minutes, 1e-9);
    assert.ok(voltage.strips.some(({ name, likely: at }) => name === 'sprint: landing' && at === minutes));
    const thrust = find('lines', 'thrust-left');
    near(valueAt(thrust, 'sprint: at full throttle', 0), likely('thrust-to-weight-full'), 1e-6);
    const [last = 0] = valuesOf(thrust, 'sprint: at full throttle').slice(-1);
    assert.ok(last > likely('thrust-to-weight-landing') && last < likely('thrust-to-weight-full'));
  });

  it('show neighbours, and what two pictures make together: 2 × 5740 − 5760 = 5720', () => {
    const others =
      '\n[radio-club.other.ann]\nfrequency = 5740 MHz\n[radio-club.other.ben]\nfrequency = 5760 MHz\n';
    const { find, likely } = drawn(read('sandmartin') + others);
    const { carriers, products, open } = find('carriers', 'carriers');
    assert.equal(carriers.find(({ isOwn }) => isOwn)?.frequency, likely('video-frequency'));
    assert.equal(
      carriers.length,
      3 + carriers.filter(({ name }) => !['this craft', 'ann', 'ben'].includes(name)).length,
    );
    assert.ok(
      products.some(({ name, frequency }) => name === '2 × ann − ben' && Math.abs(frequency - 5720) < 1e-6),
    );
    assert.ok(open.length > 0);
  });

  it('show the overlay on its standard’s grid', () => {
    const { rows, columns, elements } = drawn(read('sandmartin')).find('overlay', 'overlay');
    assert.deepEqual([rows, columns], [13, 30]);
    const cell = elements.find(({ title }) => title === 'Cell voltage') ?? assert.fail('no cell voltage');
    assert.deepEqual([cell.row, cell.column], [11, 22]);
    assert.ok(elements.some(({ sample }) => sample === 'SANDMARTIN'));
  });

  it('show the voltages of the craft’s own pack, whichever is in view, and no other craft’s', () => {
    // A full LiPo cell has 4.2 V, a full Li-ion cell as well; without a pack nobody knows.
    const shown = (text: string, pack: string | null) =>
      overlayPicture(new CraftView(craftOf(text), pack))?.elements.map(({ sample }) => sample);
    const text = '[overlay.pack-voltage]\nplace = [1, 1]\n[overlay.cell-voltage]\nplace = [2, 1]\n';
    const packs =
      '[pack.six]\nchemistry = lipo\ncells = 6\n[pack.two]\nchemistry = lipo\ncells = 2\nfull-cell = 4.1 V\n';
    assert.deepEqual(shown(text + packs, 'six'), ['25.2V', '4.20V']);
    assert.deepEqual(shown(text + packs, 'two'), ['8.2V', '4.10V']);
    assert.deepEqual(shown(text, null), ['??????', '??????']);
  });

  it('know a reading for every element that has a width, no wider than that', () => {
    for (const { name, characters, sample } of testCatalog.members('overlay')) {
      if (characters === undefined) continue;
      assert.ok(isOfCraft(name) ? sample === undefined : (sample?.length ?? 99) <= characters, name);
    }
  });
});

function checkLines({ id, at, lines, x, y, strips }: LinePlot): void {
  assert.ok(x.low < x.high && y.low < y.high, id);
  assert.ok(
    at.every((place, index) => index === 0 || place > (at[index - 1] ?? place)),
    `${id} does not rise`,
  );
  for (const { name, values } of lines) assert.equal(values.length, at.length, `${id}: ${name}`);
  const numbers = [
    ...at,
    ...lines.flatMap(({ values }) => values),
    ...strips.flatMap(({ low, high }) => [low, high]),
  ];
  assert.ok(
    numbers.every((value) => value === null || Number.isFinite(value)),
    id,
  );
}
