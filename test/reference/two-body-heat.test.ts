import assert from 'node:assert/strict';
import fc from 'fast-check';
import {
  type Heating,
  resistanceToAir,
  settledWarmth,
  type TwoBodies,
  warmthAfter,
} from '../../server/src/physics/two-body-heat';
import { near } from '../support/near';
import { plainHeatAfter } from '../support/plain-heat';

const kelvin = (celsius: number) => celsius + 273.15;

function about(actual: number | undefined, celsius: number, within: number): void {
  const got = (actual ?? Number.NaN) - 273.15;
  assert.ok(Math.abs(got - celsius) <= within, `${got} °C where ${celsius} °C was expected`);
}

/** As a data sheet tells it: time constants in place of capacities. */
function bySheet(toAir: number, within: number, windingTime: number, motorTime: number): TwoBodies {
  return { winding: windingTime / within, housing: motorTime / toAir, within, toAir };
}

function cold(celsius: number) {
  return { winding: kelvin(celsius), housing: kelvin(celsius) };
}

describe('a winding in its housing', () => {
  const steady = (loss: number, air: number): Heating => ({
    winding: { loss, at: kelvin(20), growth: 0 },
    housing: 0,
    air: kelvin(air),
  });

  describe('with the numbers of a robot’s motor (PR2 motor heating model: 4.65 and 1.93 K/W, 41.6 and 1120 s)', () => {
    const bodies = bySheet(4.65, 1.93, 41.6, 1120);

    it('warms with 10 W from 25 °C as its equations are solved exactly (table to 0.001 K)', () => {
      for (const [seconds, winding, housing] of [
        [1, 25.4584, 25.0005],
        [10, 29.1274, 25.0457],
        [41.6, 37.3736, 25.6116],
        [100, 43.8505, 27.3807],
        [300, 51.9133, 33.9416],
        [1120, 70.9058, 52.2821],
        [3000, 86.5191, 67.3646],
        [10_000, 90.786, 71.4864],
      ] as const) {
        const warm = warmthAfter(bodies, steady(10, 25), cold(25), seconds);
        about(warm.winding, winding, 1e-3);
        about(warm.housing, housing, 1e-3);
      }
    });

    it('settles at 90.80 °C and 71.50 °C (the same)', () => {
      const settled = settledWarmth(bodies, steady(10, 25));
      about(settled?.winding, 90.8, 1e-3);
      about(settled?.housing, 71.5, 1e-3);
    });

    it('is at 155 °C after 271.8 s with 50 W, 45.19 s with 100 W, 17.03 s with 200 W (the same)', () => {
      for (const [watts, seconds] of [
        [50, 271.8],
        [100, 45.19],
        [200, 17.03],
      ] as const)
        about(warmthAfter(bodies, steady(watts, 25), cold(25), seconds).winding, 155, 0.03);
    });
  });

  describe('of an outrunner in a leg (University of Michigan, opensourceleg: 16.29 and 512.2 J/K, 1.070 and 1.941 K/W)', () => {
    const bodies = { winding: 16.2924, housing: 512.249, within: 1.070287, toAir: 1.940662 };
    // There the coefficient is counted from 65 °C.
    const at = (current: number): Heating => ({
      winding: { loss: 0.376 * current ** 2, at: kelvin(65), growth: 3.93e-3 },
      housing: 0,
      air: kelvin(21),
    });

    it('warms with 5, 10 and 20 A as in the table of that model (0.01 K)', () => {
      for (const [current, seconds, winding] of [
        [5, 1, 21.4643],
        [5, 10, 24.6754],
        [5, 30, 28.1068],
        [5, 60, 29.777],
        [5, 300, 33.3992],
        [10, 1, 22.8634],
        [10, 10, 36.1661],
        [10, 30, 51.6972],
        [10, 60, 60.352],
        [10, 300, 80.1212],
        [20, 1, 28.5553],
        [20, 10, 89.9627],
        [20, 30, 193.38],
      ] as const)
        about(warmthAfter(bodies, at(current), cold(21), seconds).winding, winding, 0.01);
    });

    it('settles with 5, 8 and 10 A, and runs away with 15 A (the same)', () => {
      for (const [current, winding, housing] of [
        [5, 47.338, 37.976],
        [8, 104.784, 75.002],
        [10, 189.69, 129.73],
      ] as const) {
        const settled = settledWarmth(bodies, at(current));
        about(settled?.winding, winding, 0.01);
        about(settled?.housing, housing, 0.01);
      }
      assert.equal(settledWarmth(bodies, at(15)), null);
    });

    it('is at 115 °C after 904.04 s with 10 A, 41.75 s with 15 A, 14.195 s with 20 A, 5.135 s with 30 A (the same)', () => {
      for (const [current, seconds] of [
        [10, 904.04],
        [15, 41.75],
        [20, 14.195],
        [30, 5.135],
      ] as const)
        about(warmthAfter(bodies, at(current), cold(21), seconds).winding, 115, 0.05);
    });
  });

  it('with a load that comes and goes is as warm as in the example (Modelica Standard Library 4, Thermal.HeatTransfer.Examples.Motor)', () => {
    const bodies = { winding: 2500, housing: 25_000, within: 1 / 10, toAir: 1 / 25 };
    let warm = cold(20);
    let now = 0;
    const told = new Map([
      [60, [21.786, 21.172]],
      [360, [29.082, 26.246]],
      [600, [85.114, 31.907]],
      [960, [54.63, 37.891]],
      [1200, [105.779, 42.089]],
      [1800, [116.866, 48.656]],
      [3600, [130.342, 56.881]],
      [3960, [82.318, 56.876]],
      [7200, [134.329, 59.32]],
    ]);
    while (now < 7200) {
      const loss = now % 600 < 360 ? 100 : 1000;
      const heating = { winding: { loss, at: kelvin(95), growth: 3.03e-3 }, housing: 500, air: kelvin(20) };
      warm = warmthAfter(bodies, heating, warm, 60);
      now += 60;
      const [winding, core] = told.get(now) ?? [];
      if (winding === undefined || core === undefined) continue;
      about(warm.winding, winding, 0.02);
      about(warm.housing, core, 0.02);
    }
  });

  it('evens out between two masses of 15 J/K as the published result has it (Modelica Standard Library 4, reference result TwoMasses.csv)', () => {
    // Nothing reaches the air there: what stands in for it conducts ten million times worse.
    const bodies = { winding: 15, housing: 15, within: 1 / 10, toAir: 1e6 };
    for (const [seconds, one, other] of [
      [0.25, 358.97609, 287.32391],
      [0.5, 348.82036, 297.47964],
    ] as const) {
      const start = { winding: kelvin(100), housing: kelvin(0) };
      const warm = warmthAfter(bodies, steady(0, 0), start, seconds);
      assert.ok(Math.abs(warm.winding - one) < 1e-3, `${warm.winding}`);
      assert.ok(Math.abs(warm.housing - other) < 1e-3, `${warm.housing}`);
    }
  });

  it('is at about 155 °C with the current that a data sheet allows for long (maxon EC 13, five windings; 3.5 %)', () => {
    const bodies = bySheet(32, 2.46, 0.72, 188);
    for (const [resistance, current] of [
      [1.4, 1.31],
      [2.48, 0.973],
      [5.74, 0.645],
      [13.2, 0.424],
      [24.6, 0.312],
    ] as const) {
      // The current at which copper alone comes to 155 °C lies a little above: friction heats as well.
      const allowed = (amperes: number) =>
        settledWarmth(bodies, {
          winding: { loss: resistance * amperes ** 2, at: kelvin(25), growth: 3.9e-3 },
          housing: 0,
          air: kelvin(25),
        })?.winding ?? Number.POSITIVE_INFINITY;
      assert.ok(allowed(current) < kelvin(155));
      assert.ok(allowed(1.035 * current) > kelvin(155));
    }
  });

  const plausible = fc.record({
    winding: fc.double({ min: 0.3, max: 20, noNaN: true }),
    housing: fc.double({ min: 2, max: 60, noNaN: true }),
    within: fc.double({ min: 0.5, max: 5, noNaN: true }),
    toAir: fc.double({ min: 0.8, max: 10, noNaN: true }),
    loss: fc.double({ min: 0.1, max: 60, noNaN: true }),
    iron: fc.double({ min: 0, max: 10, noNaN: true }),
    seconds: fc.double({ min: 0.1, max: 60, noNaN: true }),
  });

  it('warms as small steps forward in time have it, whatever it is made of (second reckoning, Runge and Kutta)', () => {
    fc.assert(
      fc.property(plausible, ({ loss, iron, seconds, ...bodies }) => {
        const heating = {
          winding: { loss, at: kelvin(20), growth: 3.93e-3 },
          housing: iron,
          air: kelvin(15),
        };
        const { winding, housing } = warmthAfter(bodies, heating, cold(15), seconds);
        const [slowWinding, slowHousing] = plainHeatAfter(
          {
            ...bodies,
            loss: (at) => loss * (1 + 3.93e-3 * (at - kelvin(20))),
            housingLoss: iron,
            air: kelvin(15),
          },
          [kelvin(15), kelvin(15)],
          seconds,
          2000,
        );
        near(winding - kelvin(15), slowWinding - kelvin(15), 1e-3);
        near(housing - kelvin(15), slowHousing - kelvin(15), 1e-3);
      }),
      { numRuns: 60 },
    );
  });

  it('comes in the end to where it settles, and is cooled by what its housing’s temperature shows (the equations, both ways)', () => {
    fc.assert(
      fc.property(plausible, ({ loss, iron, seconds, ...bodies }) => {
        const heating = {
          winding: { loss, at: kelvin(20), growth: 3.93e-3 },
          housing: iron,
          air: kelvin(15),
        };
        const { housing } = warmthAfter(bodies, heating, cold(15), seconds);
        near(resistanceToAir(bodies, heating, { housing, seconds }) ?? Number.NaN, bodies.toAir, 0.02);
        const settled = settledWarmth(bodies, heating);
        if (settled === null) return;
        // Close to where nothing settles it takes for ever.
        if (settled.winding < kelvin(400)) {
          near(warmthAfter(bodies, heating, cold(15), 1e5).winding, settled.winding, 1e-6);
          const read = { housing: settled.housing, seconds: Number.POSITIVE_INFINITY };
          near(resistanceToAir(bodies, heating, read) ?? Number.NaN, bodies.toAir, 1e-6);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('tells no resistance to the air by a housing that is no warmer than the air, or warmer than all heat makes it (definition)', () => {
    const bodies = { winding: 1, housing: 10, within: 2 };
    const read = (celsius: number) =>
      resistanceToAir(bodies, steady(10, 20), { housing: kelvin(celsius), seconds: 60 });
    assert.equal(read(20), null);
    // 600 J in 11 J/K are less than 55 K.
    assert.equal(read(80), null);
    assert.notEqual(read(50), null);
  });

  it('is the cooler, the more mass it has and the better it is cooled, and the hotter, the more current (any craft)', () => {
    fc.assert(
      fc.property(plausible, ({ loss, iron, seconds, ...bodies }) => {
        const warmed = (change: Partial<TwoBodies>, by = 1) =>
          warmthAfter(
            { ...bodies, ...change },
            {
              winding: { loss: by * loss, at: kelvin(20), growth: 3.93e-3 },
              housing: iron,
              air: kelvin(15),
            },
            cold(15),
            seconds,
          ).winding;
        const now = warmed({});
        const little = 1e-9 * now;
        assert.ok(warmed({ winding: 1.1 * bodies.winding }) < now + little);
        assert.ok(warmed({ housing: 1.1 * bodies.housing }) < now + little);
        assert.ok(warmed({ toAir: 0.9 * bodies.toAir }) < now + little);
        assert.ok(warmed({}, 1.1) > now);
      }),
      { numRuns: 100 },
    );
  });
});
