import { strict as assert } from 'node:assert';
import { learnTable, openQuestions, readLearnt } from '../../../../server/src/recording/open-recording';
import { unhurried } from '../../../../server/src/recording/read/source';
import { csvOf } from '../../../simulator/csv';
import { layouts } from '../../../simulator/layouts';
import type { Rows } from '../../../simulator/recorder';
import { sourceOf } from '../../../support/recorded';
import { shippedData } from '../../catalog/shipped';

const rate = 500;
const count = 6000;

/** What a flight may hold, without flying one: turns, motors between idle and full, a pack that sags. */
function made(): Rows {
  const swing = (size: number, hertz: number) => (row: number) =>
    size * Math.sin((2 * Math.PI * hertz * row) / rate) + 0.05 * size * Math.sin(row * 1.7);
  const columns = new Map<string, Float64Array>();
  const add = (name: string, value: (row: number) => number) =>
    columns.set(
      name,
      Float64Array.from({ length: count }, (_, row) => value(row)),
    );
  add('time', (row) => row / rate);
  for (const [at, axis] of ['roll', 'pitch', 'yaw'].entries()) {
    for (const kind of ['gyro', 'unfiltered', 'wanted'])
      add(`${kind}.${axis}`, swing(3 + at, 0.7 + 0.3 * at));
  }
  for (const motor of [1, 2, 3, 4]) {
    add(`motor.${motor}`, (row) => 0.4 + swing(0.2, 0.2 + 0.1 * motor)(row));
    add(`speed.${motor}`, (row) => 2000 + swing(500, 0.2 + 0.1 * motor)(row));
  }
  add('throttle', (row) => 0.4 + swing(0.2, 0.3)(row));
  add('voltage', (row) => 16 + swing(0.3, 0.3)(row));
  add('current', (row) => 20 + swing(8, 0.3)(row));
  add('frames', (row) => 0.004 + swing(0.001, 9)(row));
  add('upright', (row) => 9.8 + swing(1, 5)(row));
  add('warmth', (row) => 40 + row / 1000);
  add('armed', () => 1);
  return { count, columns };
}

describe('the columns of files as several loggers would write them', () => {
  const rows = made();
  for (const layout of layouts.values())
    it(`of ${layout.name} are taken for nothing that they are not`, async () => {
      const source = sourceOf(`${layout.name}.csv`, csvOf(rows, layout));
      const table = await learnTable(source, [], shippedData().bundle.recordings, unhurried);
      for (const { column, means } of table.proposed) {
        const { of } = layout.columns[column.cell] ?? { of: null };
        const real = of?.replace('unfiltered.', 'unfiltered-gyro.');
        const isAsked = openQuestions(table).some((one) => one.column === column);
        if (!isAsked) assert.ok(means.channel === undefined || means.channel === real, column.heading);
      }
      const recording = await readLearnt(source, table, unhurried);
      assert.equal(recording.isSimulated, true);
      for (const [channel, values] of recording.channels) {
        const written = layout.columns.find(
          ({ of }) => of?.replace('unfiltered.', 'unfiltered-gyro.') === channel,
        );
        const expected = rows.columns.get(written?.of ?? '');
        // The sign of a column can't be seen in it, so that it is taken as it stands.
        const sign = (written?.factor ?? 1) < 0 ? -1 : 1;
        const step = (1.01 * 10 ** -(written?.digits ?? 0)) / Math.abs(written?.factor ?? 1);
        const skipped = count - recording.time.length;
        for (const row of [0, 1000, recording.time.length - 1]) {
          const [found = 0, real = 0] = [values[row], expected?.[row + skipped]];
          assert.ok(
            Math.abs(found - sign * real) <= step + 1e-6 * Math.abs(real),
            `${channel}: ${found} ${real}`,
          );
        }
      }
    });

  for (const [name, asked] of [
    ['bracketed', 0],
    ['semicolons', 0],
    ['unitless', 0],
    ['repeated', 6],
  ] as const)
    it(`of ${name} leave ${asked} questions open`, async () => {
      const layout = layouts.get(name);
      assert.ok(layout !== undefined);
      const source = sourceOf('flight.csv', csvOf(rows, layout));
      const table = await learnTable(source, [], shippedData().bundle.recordings, unhurried);
      assert.deepEqual(openQuestions(table).length, asked);
    });
});
