import assert from 'node:assert/strict';
import fc from 'fast-check';
import { restVoltage } from '../../server/src/physics/cells';
import {
  chargeWhenDownTo,
  energyToUse,
  type Pack,
  packUnderLoad,
  secondsToUse,
  voltageUnderLoad,
} from '../../server/src/physics/discharge';
import { near } from '../support/near';
import { flownByTheClock, type PlainPack } from '../support/plain-discharge';

/** Open-circuit voltages of one cell in tenths of its charge. */
const pouch = [3.0, 3.6391, 3.6953, 3.7331, 3.7622, 3.7925, 3.8365, 3.9089, 3.9944, 4.0879, 4.2];
const highVoltage = [3.3, 3.69, 3.746, 3.776, 3.793, 3.829, 3.911, 3.978, 4.077, 4.183, 4.328];
const round = [2.5, 3.268, 3.443, 3.553, 3.645, 3.725, 3.821, 3.911, 4.009, 4.06, 4.166];
const phosphate = [2.0, 2.9781, 3.1685, 3.2058, 3.2525, 3.266, 3.2688, 3.274, 3.3097, 3.3142, 3.6];

const pouches = (resistance: number): PlainPack => ({ cells: 4, table: pouch, resistance, capacity: 1.5 });
const highVoltages: PlainPack = { cells: 6, table: highVoltage, resistance: 0.024, capacity: 1.3 };
const rounds: PlainPack = { cells: 4, table: round, resistance: 0.0832, capacity: 5.96 };
const phosphates: PlainPack = { cells: 4, table: phosphate, resistance: 0.04, capacity: 2.3 };

/** Pack, W, V a cell at which it ends; s, Ah, Wh, A at the start and the end, % left: by a Runge-Kutta method of the fourth order. */
const cases: readonly (readonly [PlainPack, number, number, ...result: readonly number[]])[] = [
  [pouches(0.016), 150, 3.5, 502.71, 1.3726, 20.946, 9.006, 10.714, 8.49],
  [pouches(0.016), 150, 3.3, 517.84, 1.4189, 21.577, 9.006, 11.363, 5.41],
  [pouches(0.016), 300, 3.5, 247.03, 1.3625, 20.586, 18.172, 21.427, 9.16],
  [pouches(0.016), 300, 3.3, 254.49, 1.4083, 21.207, 18.172, 22.725, 6.12],
  [pouches(0.016), 600, 3.5, 112.55, 1.2637, 18.758, 37.019, 42.857, 15.75],
  [pouches(0.016), 600, 3.3, 122.76, 1.3869, 20.46, 37.019, 45.441, 7.54],
  [pouches(0.032), 300, 3.5, 225.1, 1.2637, 18.758, 18.51, 21.428, 15.75],
  [pouches(0.032), 600, 3.5, 51.82, 0.5868, 8.637, 38.544, 42.857, 60.88],
  [pouches(0.032), 600, 3.3, 108.79, 1.2845, 18.131, 38.544, 45.454, 14.37],
  [highVoltages, 200, 3.5, 510.86, 1.2206, 28.381, 7.757, 9.523, 6.11],
  [highVoltages, 800, 3.5, 120.64, 1.1825, 26.808, 31.738, 38.089, 9.04],
  [rounds, 60, 2.8, 4935.35, 5.6407, 82.256, 3.668, 5.357, 5.36],
  [rounds, 240, 2.8, 1095.52, 5.3813, 73.034, 15.621, 21.427, 9.71],
  [phosphates, 100, 2.5, 983.1, 2.1589, 27.308, 7.084, 10.0, 6.13],
];

function packOf({ cells, table, resistance, capacity }: PlainPack): Pack {
  const tenths = table.length - 1;
  const atRest = table.map((voltage, index) => ({ charge: index / tenths, voltage }));
  return { cells, atRest, resistance, charge: 3600 * capacity };
}

/** From full until a cell is down to a voltage. */
function flown(plain: PlainPack, power: number, lowest: number, current = 0) {
  const [pack, load] = [packOf(plain), { power, current }];
  const left = chargeWhenDownTo(pack, load, plain.cells * lowest);
  const at = (charge: number) =>
    packUnderLoad(plain.cells * restVoltage(pack.atRest, charge), plain.resistance, load)?.current ?? 0;
  return {
    seconds: secondsToUse(pack, load, 1, left) ?? Number.NaN,
    used: (1 - left) * plain.capacity,
    energy: (energyToUse(pack, load, 1, left) ?? Number.NaN) / 3600,
    current: [at(1), at(left)] as const,
    left,
  };
}

/** Within so much of it, or of 0 where nothing flies. */
function about(actual: number, expected: number, share: number, least: number): void {
  assert.ok(Math.abs(actual - expected) <= share * Math.abs(expected) + least, `${actual}, not ${expected}`);
}

describe('a pack that empties at a constant power', () => {
  it('lasts as 14 worked cases have it: tables of W. Ai et al. (J. Electrochem. Soc. 167, 2020), of the Linux kernel (samsung-sdi-battery.c), of tests of a round cell (ARTS-Lab, CC BY-SA 4.0) and of E. Prada et al. (J. Electrochem. Soc. 160, 2013); Runge-Kutta method', () => {
    for (const [
      plain,
      power,
      lowest,
      seconds = 0,
      used = 0,
      energy = 0,
      start = 0,
      end = 0,
      left = 0,
    ] of cases) {
      const one = flown(plain, power, lowest);
      near(one.seconds, seconds, 2e-3);
      near(one.used, used, 2e-3);
      near(one.energy, energy, 2e-3);
      near(one.current[0], start, 1e-3);
      near(one.current[1], end, 1e-3);
      about(100 * one.left, left, 0, 0.03);
    }
  });

  it('lasts as a plain clock has it, that halves its way to each voltage (the same cases)', () => {
    for (const [plain, power, lowest] of cases) {
      const [fast, slow] = [
        flown(plain, power, lowest),
        flownByTheClock(plain, { power }, { lowest: plain.cells * lowest }),
      ];
      about(fast.seconds, slow.seconds, 1e-3, 0.1);
      about(fast.used, slow.used, 1e-3, 1e-3);
      about(fast.energy, slow.energy, 1e-3, 1e-2);
      about(fast.left, slow.left, 1e-3, 1e-3);
    }
  });

  it('lasts as that clock has it with any pack and load that a craft may have, controllers’ loss with it (property)', () => {
    const plain = fc.record({
      cells: fc.integer({ min: 1, max: 8 }),
      table: fc.constantFrom(pouch, highVoltage, round, phosphate),
      resistance: fc.double({ min: 0.001, max: 0.06, noNaN: true }),
      capacity: fc.double({ min: 0.3, max: 6, noNaN: true }),
    });
    const share = fc.double({ min: 0.02, max: 0.9, noNaN: true });
    fc.assert(
      fc.property(plain, share, share, fc.constantFrom(0, 0.5, 2), (pack, part, floor, current) => {
        const most = (pack.cells * 3) ** 2 / (4 * pack.resistance);
        const power = Math.min(part * most, 60 * pack.cells * pack.capacity * part);
        const lowest = floor * 3.4;
        const slow = flownByTheClock(pack, { power, current }, { lowest: pack.cells * lowest, step: 0.2 });
        const fast = flown(pack, power, lowest, current);
        about(fast.seconds, slow.seconds, 5e-3, 0.5);
      }),
      { numRuns: 60 },
    );
  });

  it('gives by Ohm’s law 21.1795 A at 14.1646 V of 14.8 V behind 30 mΩ at 300 W, and never more than 1825.33 W (closed form)', () => {
    const loaded = packUnderLoad(14.8, 0.03, { power: 300, current: 0 });
    near(loaded?.current ?? 0, 21.179_54, 1e-6);
    near(loaded?.voltage ?? 0, 14.164_61, 1e-6);
    assert.ok(packUnderLoad(14.8, 0.03, { power: 1825.3, current: 0 }));
    assert.equal(packUnderLoad(14.8, 0.03, { power: 1825.4, current: 0 }), null);
    near(voltageUnderLoad(14.8, 0.03, { power: 300, current: 0 }), 14.164_61, 1e-6);
    const flat = packOf({ cells: 4, table: [3.7, 3.7], resistance: 0.03, capacity: 1.5 });
    near(secondsToUse(flat, { power: 300, current: 0 }, 1, 0.2) ?? 0, 203.97, 1e-5);
    assert.equal(secondsToUse(flat, { power: 1825.4, current: 0 }, 1, 0.2), null);
  });

  it('falls on a straight line from 4.2 to 3.5 V behind 20 mΩ in 231.4286 s at 20 A and 232.0152 s at 300 W (closed forms)', () => {
    const straight: PlainPack = { cells: 4, table: [3.5, 4.2], resistance: 0.02, capacity: 1.5 };
    const byCurrent = flown(straight, 0, 3.5, 20);
    near(byCurrent.left, 1 / 7, 1e-9);
    near(byCurrent.seconds, 231.428_6, 1e-6);
    const byPower = flown(straight, 300, 3.5);
    near(byPower.left, 0.153_061, 1e-5);
    near(byPower.seconds, 232.015_2, 1e-6);
    near(byPower.current[0], 18.253_81, 1e-6);
  });

  it('of 4.89 Ah at 4 × 3.7 V hovers 2909 s at 89.5 W, one of 4.88 Ah 2429 s at 107 W (L. Bauersfeld and D. Scaramuzza, IEEE RA-L 7(2), 2022, section VII-E)', () => {
    for (const [capacity, power, seconds] of [
      [4.89, 89.5, 2909],
      [4.88, 107, 2429],
    ] as const) {
      const flat = packOf({ cells: 4, table: [3.7, 3.7], resistance: 1e-9, capacity });
      near(secondsToUse(flat, { power, current: 0 }, 1, 0) ?? 0, seconds, 1e-3);
    }
  });

  it('is within 5 % of a round cell that was measured at 3, 6, 9 and 12 A: 3548, 1767.5, 1170.3 and 870.3 s down to 2.5 V, with the resistance of its 10 s pulses (ARTS-Lab, dataset of a 3 Ah cell, CC BY-SA 4.0)', () => {
    const cell: PlainPack = { cells: 1, table: round, resistance: 0.0416, capacity: 2.98 };
    for (const [current, seconds] of [
      [3, 3548],
      [6, 1767.5],
      [9, 1170.3],
      [12, 870.3],
    ] as const)
      near(flown(cell, 0, 2.5, current).seconds, seconds, 0.05);
  });

  it('never lasts a negative time, and longer with more charge, less resistance or less power (property)', () => {
    const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        number(1e-3, 0.2),
        number(0.1, 10),
        number(1, 2000),
        number(2, 4.3),
        (resistance, capacity, power, lowest) => {
          const at = (change: Partial<PlainPack>, watts = power) =>
            flown({ cells: 4, table: pouch, resistance, capacity, ...change }, watts, lowest).seconds;
          const now = at({});
          assert.ok(now >= 0, `${now}`);
          assert.ok(at({ capacity: 1.1 * capacity }) >= now);
          assert.ok(at({ resistance: 0.9 * resistance }) >= now - 1e-9);
          assert.ok(at({}, 0.9 * power) >= now - 1e-9);
        },
      ),
    );
  });

  it('shows at rest what its table says between its points, and level beyond (definition)', () => {
    const points = packOf(pouches(0.016)).atRest;
    near(restVoltage(points, 0.55), (3.7925 + 3.8365) / 2, 1e-12);
    assert.equal(restVoltage(points, 1.2), 4.2);
    assert.equal(restVoltage(points, -1), 3);
  });
});
