import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { prominenceAt, summitsOf } from '../../server/src/physics/peaks';
import { binPowers, rmsOf } from '../../server/src/physics/random-signal';
import { usualWelch, welch } from '../../server/src/physics/welch';
import { close } from '../support/close';

/** D. Hurwitz, I. Klein, Quadrotor Dead Reckoning with Multiple Inertial Sensors (2023), one flight of it; CC BY 4.0. */
const file = join(__dirname, '../../../shared/reference/recordings/imu-on-quadrotor-120hz.csv');

const rate = 1e6 / 8333;
const axes = ['X', 'Y', 'Z'] as const;

describe('a real flight, of which the values are by SciPy 1.17.1', () => {
  if (!existsSync(file)) {
    it('is left out: its file does not lie beside the project');
    return;
  }
  const [head = '', ...lines] = readFileSync(file, 'utf8').trim().split('\n');
  const names = head.split(',');
  const rows = lines.map((line) => line.split(',').map(Number));
  // The first row holds zeros where the sensor had not begun.
  const column = (name: string) => rows.slice(1).map((row) => row[names.indexOf(name)] ?? Number.NaN);
  const spectra = new Map(axes.map((axis) => [axis, welch(column(`Gyr_${axis}`), usualWelch(rate, 512))]));
  const decibelsOf = (axis: (typeof axes)[number]) =>
    [...(spectra.get(axis)?.density ?? [])].map((one) => 10 * Math.log10(one));

  it('has 6792 rows 8333 µs apart, with these means and deviations', () => {
    const times = rows.map(([time = 0]) => time);
    const [first = 0, last = 0] = [times[0], times.at(-1)];
    close([rows.length, first, (last - first) * 1e-6], [6792, 467_574_734, 56.589_403], 1e-9);
    const means = axes.map((axis) => meanOf(column(`Gyr_${axis}`)));
    close(means, [-1.492_582, -0.102_17, -0.484_945], 1e-5);
    const deviations = axes.map((axis) => deviationOf(column(`Gyr_${axis}`)));
    close(deviations, [10.037_484, 17.137_366, 2.838_155], 1e-5);
    close([meanOf(column('Acc_Z')), deviationOf(column('Acc_Z'))], [9.429_184, 2.829_964], 1e-5);
    const [x, y, z] = [column('Acc_X'), column('Acc_Y'), column('Acc_Z')];
    close([meanOf(x.map((one, at) => Math.hypot(one, y[at] ?? 0, z[at] ?? 0)))], [9.692_211], 1e-5);
  });

  it('has these densities', () => {
    close([spectra.get('X')?.segments ?? 0, spectra.get('X')?.frequencies[1] ?? 0], [25, 0.234_384], 1e-6);
    const at = (axis: (typeof axes)[number], bins: readonly number[]) =>
      bins.map((bin) => decibelsOf(axis)[bin] ?? Number.NaN);
    close(at('X', [8, 128, 256]), [16.689, -6.602, -15.897], 0.01);
    close(at('Y', [4, 163, 244]), [22.299, -1.002, 1.035], 0.01);
    close(at('Z', [2, 85, 244]), [5.145, -24.687, 1.034], 0.01);
  });

  it('shakes so much from 20 to 50 Hz', () => {
    const shaking = axes.map((axis) => {
      const { frequencies, density } = spectra.get(axis) ?? welch([], usualWelch(rate, 2));
      return rmsOf(binPowers(frequencies, density, 20, 50));
    });
    close(shaking, [1.904_29, 2.704_19, 0.773_96], 1e-4);
  });

  it('has these peaks of 6 dB and more, among them the tone of 57.19 Hz', () => {
    const expected = [
      [1.875, 17.34, 31.173, 10.58],
      [0.938, 18.91, 38.205, 6.85],
      [0.469, 8.61, 57.19, 13.66],
    ] as const;
    for (const [at, axis] of axes.entries()) {
      const values = decibelsOf(axis);
      const peaks = summitsOf(values)
        .map((summit) => ({ bin: summit.at, ...prominenceAt(values, summit.at) }))
        .filter(({ prominence }) => prominence >= 6);
      const found = peaks.flatMap(({ bin, prominence }) => [(bin * rate) / 512, prominence]);
      close(found, expected[at] ?? [], 0.02);
    }
  });
});

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function deviationOf(values: readonly number[]): number {
  const mean = meanOf(values);
  return Math.sqrt(meanOf(values.map((value) => (value - mean) ** 2)));
}
