import assert from 'node:assert/strict';
import {
  type BenchRow,
  dragByPower,
  loadedResistance,
  powerFit,
  squareLaw,
  voltFit,
} from '../../server/src/physics/bench-table';
import { near } from '../support/near';

const perMinute = (2 * Math.PI) / 60;
const grams = 9.806_65e-3;

/** Throttle %, V, A, rpm, N m, grams of thrust; NaN: not told. */
type Line = readonly [number, number, number, number, number, number];

const rowsOf = (lines: readonly Line[]): readonly BenchRow[] =>
  lines.map(([throttle, voltage, current, turns, torque, thrust]) => ({
    throttle: throttle / 100,
    voltage,
    current,
    speed: turns * perMinute,
    torque: Number.isNaN(torque) ? null : torque,
    thrust: thrust * grams,
  }));

const lossless = (speedConstant: number) => ({ speedConstant, controllerLoss: 0 });

const found = <T>(one: T | null): T => one ?? assert.fail('no fit');

/** Made by the model, with as many digits as a number has: 2000 rpm/V, 0.1 ohm, 0.8 A, a pack of 14.8 V behind 20 mohm. */
function exactRows(): readonly BenchRow[] {
  const k = 2000 * perMinute;
  return [0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1].map((throttle) => {
    let [low, high] = [0, 14.8];
    const at = (voltage: number) => {
      const a = k * 1.510_87e-8;
      const volts = throttle * voltage;
      const speed = (-1 / k + Math.sqrt(1 / k ** 2 - 4 * 0.1 * a * (0.08 - volts))) / (2 * 0.1 * a);
      return { speed, current: throttle * (0.8 + a * speed ** 2) };
    };
    for (let step = 0; step < 100; step += 1) {
      const middle = (low + high) / 2;
      if (14.8 - 0.02 * at(middle).current > middle) low = middle;
      else high = middle;
    }
    const { speed, current } = at(low);
    return {
      throttle,
      voltage: low,
      current,
      speed,
      torque: 1.510_87e-8 * speed ** 2,
      thrust: 1.041_31e-6 * speed ** 2,
    };
  });
}

describe('a table that the model made exactly (2000 rpm/V, 0.1 ohm, 0.8 A, CT 0.129, CP 0.0926, 5 in)', () => {
  const rows = exactRows();
  const k = 2000 * perMinute;

  it('has the rows that were printed of it: at full throttle 14.370 V, 21.519 A, 24 435 rpm, 0.09893 Nm', () => {
    const full = rows.at(-1) ?? assert.fail();
    near(full.voltage, 14.37, 1e-4);
    near(full.current, 21.519, 1e-4);
    near((full.speed ?? 0) / perMinute, 24_435, 1e-4);
    near(full.torque ?? 0, 0.098_93, 1e-4);
  });

  it('comes back to 0.1 %: winding, friction, thrust and drag by the watts; the volts at full throttle with them', () => {
    const fit = found(powerFit(rows, lossless(k)));
    near(fit.resistance, 0.1, 1e-3);
    near(fit.friction * k, 0.8, 1e-3);
    const kT = found(squareLaw(rows, 'thrust')).value;
    const kQ = found(squareLaw(rows, 'torque')).value;
    near((kT * (2 * Math.PI) ** 2) / (1.225 * 0.127 ** 4), 0.129, 1e-3);
    near((kQ * (2 * Math.PI) ** 3) / (1.225 * 0.127 ** 5), 0.0926, 1e-3);
    near(found(loadedResistance(rows.at(-1) ?? assert.fail(), k)), 0.1, 1e-3);
    const volts = found(voltFit(rows, k));
    near(volts.speedConstant, k, 1e-3);
    near(volts.resistance, 0.1, 1e-3);
  });

  it('tells a controller that loses 3 % of its volts from the winding, and comes back as exactly', () => {
    const told = rows.map((row) => {
      const amperes = 0.8 + k * (row.torque ?? 0);
      return { ...row, current: row.current + 0.03 * amperes };
    });
    const stand = { speedConstant: k, controllerLoss: 0.03 };
    near(found(powerFit(told, stand)).resistance, 0.1, 1e-3);
    const motor = { ...stand, resistance: 0.1, friction: 0.8 / k };
    near(found(dragByPower(told, motor, ({ speed }) => speed)).value, 1.510_87e-8, 1e-3);
  });

  it('without a torque gives the drag back, the winding being known', () => {
    const untold = rows.map((row) => ({ ...row, torque: null }));
    assert.equal(powerFit(untold, lossless(k)), null);
    const motor = { ...lossless(k), resistance: 0.1, friction: 0.8 / k };
    near(found(dragByPower(untold, motor, ({ speed }) => speed)).value, 1.510_87e-8, 1e-3);
  });

  it('with the digits of a sales page comes back to 2 % (2 decimals of V and A, 10 rpm, 1 g, 0.001 Nm)', () => {
    const round = (value: number, to: number) => to * Math.round(value / to);
    const rough = rows.map((row) => ({
      ...row,
      voltage: round(row.voltage, 0.01),
      current: round(row.current, 0.01),
      speed: round(row.speed ?? 0, 10 * perMinute),
      torque: round(row.torque ?? 0, 0.001),
      thrust: round(row.thrust ?? 0, grams),
    }));
    near(found(squareLaw(rough, 'thrust')).value, 1.041_31e-6, 0.02);
    near(found(squareLaw(rough, 'torque')).value, 1.510_87e-8, 0.02);
    near(found(loadedResistance(rough.at(-1) ?? assert.fail(), k)), 0.1, 0.02);
  });
});

describe('tables with a measured torque (tables of Seoul National University, fitted with NumPy)', () => {
  const tables: readonly (readonly [
    name: string,
    kv: number,
    lines: readonly Line[],
    number,
    number,
    number,
    number,
    number,
    number,
  ])[] = [
    [
      '3520, 13 by 6.5 inches',
      550,
      [
        [40, 22.49, 4.96, 4834, 0.162, 912],
        [45, 22.47, 6, 5181, 0.187, 1053],
        [50, 22.45, 7.26, 5558, 0.215, 1208],
        [55, 22.43, 8.88, 5990, 0.249, 1396],
        [60, 22.39, 10.87, 6404, 0.29, 1619],
        [65, 22.35, 13.47, 6895, 0.34, 1890],
        [70, 22.3, 16.12, 7313, 0.386, 2140],
        [75, 22.25, 19.27, 7732, 0.438, 2412],
        [80, 22.19, 22.6, 8119, 0.494, 2711],
        [90, 22.06, 30.77, 8940, 0.607, 3289],
        [100, 21.99, 34.89, 9252, 0.667, 3575],
      ],
      0.046,
      2.66,
      0.0029,
      3.638e-5,
      6.778e-7,
      0.1481,
    ],
    [
      '3520, 14 by 7 inches',
      550,
      [
        [40, 22.49, 5.15, 4423, 0.185, 973],
        [45, 22.46, 6.71, 4888, 0.224, 1169],
        [50, 22.43, 8.5, 5313, 0.268, 1408],
        [55, 22.37, 11.18, 5785, 0.326, 1689],
        [60, 22.34, 13.7, 6192, 0.38, 1954],
        [65, 22.29, 16.9, 6664, 0.44, 2247],
        [70, 22.23, 20.26, 7056, 0.498, 2529],
        [75, 22.16, 24.56, 7454, 0.57, 2863],
        [80, 22.08, 29.2, 7818, 0.646, 3216],
        [90, 21.93, 38.47, 8481, 0.776, 3787],
        [100, 21.83, 44.28, 8762, 0.854, 4116],
      ],
      0.0506,
      2.64,
      0.0034,
      4.652e-5,
      9.531e-7,
      0.1332,
    ],
    [
      '2814',
      1200,
      [
        [40, 15.1, 11.63, 8205, 0.141, 868],
        [45, 15.06, 13.82, 8704, 0.16, 978],
        [50, 15.03, 15.84, 9162, 0.177, 1085],
        [55, 14.99, 18.17, 9519, 0.195, 1179],
        [60, 14.95, 20.4, 9844, 0.213, 1255],
        [65, 14.91, 22.93, 10_207, 0.234, 1354],
        [70, 14.85, 26, 10_630, 0.258, 1463],
        [75, 14.78, 30.26, 11_085, 0.289, 1611],
        [80, 14.71, 34.78, 11_611, 0.32, 1760],
        [90, 14.54, 45.13, 12_479, 0.379, 2044],
        [100, 14.46, 49.57, 12_788, 0.402, 2152],
      ],
      0.038,
      5.24,
      0.0072,
      1.167e-5,
      2.118e-7,
      0.0767,
    ],
    [
      '4125',
      540,
      [
        [40, 22.37, 11.21, 4943, 0.341, 1674],
        [45, 22.34, 13.58, 5313, 0.395, 1929],
        [50, 22.29, 16.21, 5650, 0.452, 2205],
        [55, 22.25, 19.14, 5978, 0.513, 2492],
        [60, 22.17, 23.2, 6382, 0.595, 2864],
        [65, 22.1, 27.69, 6806, 0.676, 3233],
        [70, 22.02, 32.79, 7193, 0.766, 3655],
        [75, 21.93, 38.58, 7571, 0.863, 4081],
        [80, 21.8, 45.8, 7963, 0.97, 4541],
        [85, 21.68, 52.89, 8301, 1.072, 4951],
        [90, 21.53, 62.57, 8577, 1.213, 5163],
        [100, 21.36, 72.77, 8879, 1.344, 5537],
      ],
      0.0276,
      6.17,
      0.0054,
      6.313e-5,
      1.421e-6,
      0.0675,
    ],
  ];
  for (const [name, kv, lines, resistance, idle, spread, kT, kQ, loaded] of tables)
    describe(name, () => {
      const rows = rowsOf(lines);
      const k = kv * perMinute;

      it('have the printed winding and current without a load by their watts, and by them miss the power as little (the same tables, power balance)', () => {
        const fit = found(powerFit(rows, lossless(k)));
        near(fit.resistance, resistance, 0.02);
        near(fit.friction * k, idle, 0.02);
        near(fit.spread, spread, 0.05);
      });

      it('have the printed thrust and drag by the square of the speed, and more ohms by their volts than their watts allow (the same tables)', () => {
        near(found(squareLaw(rows, 'thrust')).value, kT, 2e-3);
        near(found(squareLaw(rows, 'torque')).value, kQ, 2e-3);
        const full = rows.at(-1) ?? assert.fail();
        near(found(loadedResistance(full, k)), loaded, 3e-3);
        const bound =
          (full.voltage * full.current - (full.torque ?? 0) * (full.speed ?? 0)) / full.current ** 2;
        assert.ok(loaded > bound && resistance < bound);
      });
    });
});

describe('tables without a torque (tables of the Czech Technical University, fitted with NumPy)', () => {
  const good: readonly Line[] = [
    [50, 16.61, 4.19, 5313, Number.NaN, 621],
    [60, 16.53, 6.79, 6156, Number.NaN, 868],
    [70, 16.42, 10.11, 6971, Number.NaN, 1112],
    [80, 16.29, 13.93, 7913, Number.NaN, 1288],
    [90, 16.13, 18.83, 8348, Number.NaN, 1625],
    [100, 15.95, 24.17, 8951, Number.NaN, 1876],
    [50, 16.53, 3.72, 5422, Number.NaN, 494],
    [60, 16.45, 6.03, 6336, Number.NaN, 687],
    [70, 16.36, 9.1, 7051, Number.NaN, 897],
    [80, 16.22, 12.96, 7716, Number.NaN, 1135],
    [90, 16.07, 17.42, 8616, Number.NaN, 1345],
    [100, 15.91, 22.97, 9168, Number.NaN, 1576],
    [50, 16.69, 4.39, 5325, Number.NaN, 543],
    [60, 16.59, 6.92, 6145, Number.NaN, 732],
    [70, 16.47, 10.33, 7031, Number.NaN, 903],
    [80, 16.35, 13.93, 7691, Number.NaN, 1113],
    [90, 16.19, 18.85, 8476, Number.NaN, 1357],
    [100, 16.02, 23.53, 9159, Number.NaN, 1538],
    [50, 16.82, 3.41, 5568, Number.NaN, 482],
    [60, 16.74, 5.47, 6522, Number.NaN, 669],
    [70, 16.66, 7.98, 7368, Number.NaN, 871],
    [80, 16.55, 11.37, 8345, Number.NaN, 1055],
    [90, 16.42, 15.19, 9136, Number.NaN, 1321],
    [100, 16.26, 19.88, 9836, Number.NaN, 1546],
  ];

  it('of a 3110 motor of 780 rpm/V come to 779 rpm/V and 0.180 ohm over four propellers (the same tables, fit of volts)', () => {
    const fit = found(voltFit(rowsOf(good), 780 * perMinute));
    near(fit.speedConstant / perMinute, 779, 4e-3);
    near(fit.resistance, 0.1801, 0.02);
  });

  it('of a 2312 motor of 920 rpm/V speak against what is printed: 1241 rpm/V, here by three of the four propellers (the same tables, fit of volts)', () => {
    const bad: readonly Line[] = [
      [50, 16.66, 3.09, 5688, Number.NaN, 401],
      [60, 16.61, 4.8, 6508, Number.NaN, 529],
      [70, 16.54, 6.72, 7213, Number.NaN, 656],
      [80, 16.48, 9.05, 7788, Number.NaN, 787],
      [90, 16.4, 11.48, 8608, Number.NaN, 911],
      [100, 16.32, 14.26, 9068, Number.NaN, 1024],
      [50, 16.66, 2.8, 5899, Number.NaN, 363],
      [60, 16.62, 4.27, 6842, Number.NaN, 486],
      [70, 16.56, 6.09, 7639, Number.NaN, 599],
      [80, 16.51, 8.14, 8448, Number.NaN, 734],
      [90, 16.43, 10.46, 9125, Number.NaN, 867],
      [100, 16.35, 13.19, 9708, Number.NaN, 989],
      [50, 16.7, 2.73, 5939, Number.NaN, 323],
      [60, 16.66, 4.17, 6902, Number.NaN, 429],
      [70, 16.59, 6.06, 7648, Number.NaN, 542],
      [80, 16.52, 8.22, 8499, Number.NaN, 663],
      [90, 16.45, 10.5, 9076, Number.NaN, 781],
      [100, 16.37, 13.27, 9722, Number.NaN, 891],
    ];
    near(found(voltFit(rowsOf(bad), 920 * perMinute)).speedConstant / perMinute, 1241, 0.03);
  });

  it('of seven propellers at full throttle come to 2394 rpm/V and 0.098 ohm for 2600 printed (P. Cao, J. Strawson, fit of volts)', () => {
    const full: readonly Line[] = [
      [100, 7.143, 8.734, 15_065, Number.NaN, 287.9],
      [100, 7.167, 10.109, 14_796, Number.NaN, 316.6],
      [100, 7.145, 9.181, 14_943, Number.NaN, 292.9],
      [100, 7.189, 7.711, 15_418, Number.NaN, 275.2],
      [100, 7.182, 8.991, 15_095, Number.NaN, 298.6],
      [100, 7.169, 9.746, 14_892, Number.NaN, 305.3],
      [100, 7.058, 10.412, 14_477, Number.NaN, 329.6],
    ];
    const fit = found(voltFit(rowsOf(full), 2600 * perMinute));
    near(fit.speedConstant / perMinute, 2394, 5e-3);
    near(fit.resistance, 0.098, 0.02);
    const [one] = rowsOf(full);
    near(found(loadedResistance(one ?? assert.fail(), 2600 * perMinute)), 0.15, 0.05);
  });
});
