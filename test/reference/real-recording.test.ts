import assert from 'node:assert/strict';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { learnTable, readLearnt } from '../../server/src/recording/open-recording';
import { eachRow, readHead } from '../../server/src/recording/read/each-row';
import { RowReader } from '../../server/src/recording/read/row-reader';
import { unhurried } from '../../server/src/recording/read/source';
import { close } from '../support/close';
import { sourceOf } from '../support/recorded';
import { takenFor } from '../support/table';
import { shippedData } from '../unit/catalog/shipped';

const folder = join(__dirname, '../../../shared/reference/recordings');
/** D. Hurwitz, I. Klein, Quadrotor Dead Reckoning with Multiple Inertial Sensors (2023), one flight of it; CC BY 4.0. */
const flight = join(folder, 'imu-on-quadrotor-120hz.csv');
/** L. Ljung, System Identification: the laboratory air heater, from SLICOT's examples; BSD 3-Clause. */
const heater = join(folder, 'heater-and-air-12.5hz.csv');

const { recordings: words } = shippedData().bundle;
const degree = Math.PI / 180;

describe('a real flight, read from its file', () => {
  if (!existsSync(flight)) {
    it('is left out: its file does not lie beside the project');
    return;
  }
  const source = sourceOf('flight.csv', readFileSync(flight), 10_007);

  it('has columns that its headings and numbers tell', async () => {
    const { proposed } = await learnTable(source, [], words, unhurried);
    assert.deepEqual(takenFor(proposed), [
      'SampleTimeFine: time, in us',
      ...['X', 'Y', 'Z'].map((axis) => `Euler_${axis}: not read`),
      ...['X', 'Y', 'Z'].map((axis) => `Acc_${axis}: not read`),
      'Gyr_X: gyro.roll, in deg/s',
      'Gyr_Y: gyro.pitch, in deg/s',
      'Gyr_Z: gyro.yaw, in deg/s',
    ]);
  });

  it('has the rows, the length and the turns that SciPy 1.17.1 finds', async () => {
    const recording = await readLearnt(source, await learnTable(source, [], words, unhurried), unhurried);
    // The first of 6792 rows holds zeros where the sensor had not begun.
    assert.equal(recording.time.length, 6791);
    close([recording.time[0] ?? 1, recording.time.at(-1) ?? 0], [0, 6790 * 0.008_333], 1e-9);
    const [{ stretches = [] } = {}] = recording.flights;
    assert.deepEqual([recording.flights.length, stretches.length], [1, 1]);
    close([stretches[0]?.rate ?? 0], [1e6 / 8333], 1e-9);
    const turns = (['roll', 'pitch', 'yaw'] as const).map((axis) =>
      [...(recording.channels.get(`gyro.${axis}`) ?? [])].map((one) => one / degree),
    );
    close(turns.map(meanOf), [-1.492_582, -0.102_17, -0.484_945], 1e-5);
    close(turns.map(deviationOf), [10.037_484, 17.137_366, 2.838_155], 1e-5);
    assert.deepEqual(recording.leftOut, [
      'Not read, since no answer needs them: “Euler_X”, “Euler_Y”, “Euler_Z”, “Acc_X”, “Acc_Y”, “Acc_Z”.',
      'A row holds nothing but zeros, as loggers write before their first measurement: left out.',
    ]);
  });

  it('has 6792 rows from a stamp of 467 574 734 on, and what pulls at it', async () => {
    const head = await readHead(source);
    const reader = new RowReader(
      head.dialect,
      head.columns.map(({ cell, part, heading }) => ({ cell, part, isStamp: heading === 'SampleTimeFine' })),
    );
    const pulls: number[][] = [];
    let last = 0;
    const { rows } = await eachRow(source, head, reader, unhurried, {
      take: () => {
        pulls.push([...reader.row.subarray(4, 7)]);
        last = reader.row[0] ?? 0;
        return true;
      },
    });
    assert.deepEqual([rows, reader.origin, reader.unreadable], [6792, 467_574_734, 0]);
    close([last * 1e-6], [56.589_403], 1e-9);
    const up = pulls.slice(1).map(([, , z = 0]) => z);
    close([meanOf(up), deviationOf(up)], [9.429_184, 2.829_964], 1e-5);
    close([meanOf(pulls.slice(1).map((one) => Math.hypot(...one)))], [9.692_211], 1e-5);
  });
});

describe('a real measurement that is no flight, read from its file', () => {
  if (!existsSync(heater)) {
    it('is left out: its file does not lie beside the project');
    return;
  }
  const source = sourceOf('heater.csv', readFileSync(heater), 999);

  it('has a time, and columns that nobody takes for a pack', async () => {
    const table = await learnTable(source, [], words, unhurried);
    assert.deepEqual(takenFor(table.proposed), [
      'time_s: time, in s',
      'heater_V: not read',
      'outlet_air_V: not read',
    ]);
    await assert.rejects(
      readLearnt(source, table, unhurried),
      /^Error: No column of this file is known to hold/,
    );
  });

  it('is read by a layout, with the means and deviations of the published set', async () => {
    const table = await learnTable(source, [], words, unhurried);
    const layout = {
      version: 1 as const,
      columns: [
        { heading: 'time_s', channel: 'time', unit: 's' },
        { heading: 'heater_V', channel: 'current', unit: 'A' },
        { heading: 'outlet_air_V', channel: 'voltage', unit: 'V' },
      ],
    };
    const recording = await readLearnt(source, { ...table, layout, proposed: [] }, unhurried);
    assert.equal(recording.time.length, 1000);
    close([recording.time.at(-1) ?? 0], [79.92], 1e-9);
    const [heat, air] = (['current', 'voltage'] as const).map((name) => [
      ...(recording.channels.get(name) ?? []),
    ]);
    close([meanOf(heat ?? []), meanOf(air ?? [])], [5, 4.8901], 1e-6);
    close([deviationOf(heat ?? []), deviationOf(air ?? [])], [1.497_298, 0.829_391], 1e-6);
    const switches = (heat ?? []).filter((one, row, all) => row > 0 && one !== all[row - 1]).length;
    assert.equal(switches, 190);
    assert.deepEqual(recording.leftOut, []);
  });
});

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, one) => sum + one, 0) / values.length;
}

function deviationOf(values: readonly number[]): number {
  const mean = meanOf(values);
  return Math.sqrt(values.reduce((sum, one) => sum + (one - mean) ** 2, 0) / values.length);
}
