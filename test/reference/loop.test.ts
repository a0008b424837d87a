import assert from 'node:assert/strict';
import { add, type Complex, over, polar, times, unit } from '../../server/src/physics/complex';
import { type Axis, delayPhase, margins, openLoop } from '../../server/src/physics/loop';
import { halfTime, overshoot, stepResponse } from '../../server/src/physics/step-response';
import { near } from '../support/near';

/** A ratio of polynomials in s, highest power first, at s = jω; ω in rad/s. */
function ratio(up: readonly number[], down: readonly number[]) {
  const at = (coefficients: readonly number[], s: Complex) =>
    coefficients.reduce<Complex>((sum, value) => add(times(sum, s), { re: value, im: 0 }), { re: 0, im: 0 });
  return (frequency: number) => {
    const s = { re: 0, im: 2 * Math.PI * frequency };
    return polar(over(at(up, s), at(down, s)));
  };
}

const band = { from: 1e-3, to: 100 };
const degrees = (angle: number | null) => ((angle ?? Number.NaN) * 180) / Math.PI;
const perSecond = (frequency: number | null) => (frequency ?? Number.NaN) * 2 * Math.PI;

describe('margins of a loop', () => {
  it('25/(s³+10s²+10s+10): 3.6000 at 3.1623, 29.1104° at 1.7844 (MathWorks, allmargin)', () => {
    const found = margins(ratio([25], [1, 10, 10, 10]), band);
    near(found.gainMargin ?? Number.NaN, 3.6, 1e-3);
    near(perSecond(found.gainMarginAt), 3.1623, 1e-3);
    near(degrees(found.phaseMargin), 29.1104, 1e-3);
    near(perSecond(found.crossover), 1.7844, 1e-3);
  });

  it('15/(s³+6s²+11s+6): 4 at √11, 60.732° at 1.49072 (plant of python-control’s margin_test.py)', () => {
    const found = margins(ratio([15], [1, 6, 11, 6]), band);
    near(found.gainMargin ?? Number.NaN, 4, 1e-3);
    near(perSecond(found.gainMarginAt), Math.sqrt(11), 1e-3);
    near(degrees(found.phaseMargin), 60.732, 1e-3);
  });

  it('3/(s+1)³: 8/3 at √3, 41.69° (Åström and Murray, Feedback Systems, from memory)', () => {
    const found = margins(ratio([3], [1, 3, 3, 1]), band);
    near(found.gainMargin ?? Number.NaN, 8 / 3, 1e-3);
    near(degrees(found.phaseMargin), 41.69, 1e-3);
  });

  it('an integrator of 20 Hz with 5 ms of delay: 54°, 2.5 at 50 Hz (by hand)', () => {
    const loop = (frequency: number) =>
      polar(times({ re: 0, im: -20 / frequency }, unit(-2 * Math.PI * frequency * 0.005)));
    const found = margins(loop, { from: 0.1, to: 1000 });
    near(degrees(found.phaseMargin), 54, 1e-3);
    near(found.gainMargin ?? Number.NaN, 2.5, 1e-3);
    near(found.gainMarginAt ?? Number.NaN, 50, 1e-3);
  });

  it('are negative for a loop that swings by itself, and absent where nothing crosses', () => {
    const calmer = ratio([25], [1, 10, 10, 10]);
    const louder = (frequency: number) => ({ ...calmer(frequency), gain: 5 * calmer(frequency).gain });
    const wild = margins(louder, band);
    assert.ok((wild.phaseMargin ?? 1) < 0);
    const calm = margins(ratio([0.5], [1, 1]), band);
    assert.deepEqual([calm.crossover, calm.phaseMargin, calm.gainMargin], [null, null, null]);
  });
});

describe('a wait', () => {
  it('costs 360° × f × T: 18° for 1 ms at 50 Hz, 86.4° for 4 ms at 60 Hz (any textbook)', () => {
    near(degrees(delayPhase(50, 1e-3)), 18, 1e-12);
    near(degrees(delayPhase(60, 4e-3)), 86.4, 1e-12);
  });
});

/** Proportional gain on an integrating body behind a lag: ω0²/(s (s + 2ζω0)). */
function secondOrder(damping: number): Axis {
  const natural = 40;
  return {
    gains: { proportional: natural / (2 * damping), integral: 0, derivative: 0 },
    gyroFilters: [],
    derivativeFilters: [],
    authority: 1,
    motorLag: 1 / (2 * damping * natural),
    delay: 0,
  };
}

describe('an axis with a lag and nothing else is the textbook’s second-order loop', () => {
  for (const [damping, over100, margin] of [
    [0.3, 37.233, 33.27],
    [0.5, 16.303, 51.83],
    [0.7, 4.599, 65.16],
  ] as const) {
    it(`damping ${damping}: ${over100} % over, ${margin}° (second-order step response, any textbook)`, () => {
      const axis = secondOrder(damping);
      near(degrees(margins((frequency) => openLoop(axis, frequency), band).phaseMargin), margin, 2e-3);
      near(100 * overshoot(stepResponse(axis, { gyro: 32_000, control: 32_000 }, 1)), over100, 2e-2);
    });
  }

  it('answers half of a step after about (1 + 0.7 ζ)/ω0 (delay time, Ogata, Modern Control Engineering, from memory)', () => {
    const time = halfTime(stepResponse(secondOrder(0.5), { gyro: 32_000, control: 32_000 }, 1));
    near(time ?? Number.NaN, (1 + 0.7 * 0.5) / 40, 6e-2);
  });
});
