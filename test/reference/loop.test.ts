import assert from 'node:assert/strict';
import { add, type Complex, over, times, unit } from '../../server/src/physics/complex';
import { lowpass, notch } from '../../server/src/physics/filter';
import { type Axis, answerTo, type Call, delayPhase, openLoop } from '../../server/src/physics/loop';
import { axisCurve, curveOf } from '../../server/src/physics/loop-curve';
import { dragSlope, reactionLead, speedDamping } from '../../server/src/physics/motor';
import { type Margins, marginsOf, stabilityOf, swingOf } from '../../server/src/physics/stability';
import { closely, overshoot, quickened, reachOf, stepResponse } from '../../server/src/physics/step-response';
import { near } from '../support/near';
import { plainCall } from '../support/plain-call';

/** A ratio of polynomials in s, highest power first, at s = jω; ω in rad/s. */
function ratio(up: readonly number[], down: readonly number[]) {
  const at = (coefficients: readonly number[], s: Complex) =>
    coefficients.reduce<Complex>((sum, value) => add(times(sum, s), { re: value, im: 0 }), { re: 0, im: 0 });
  return (frequency: number): Complex => {
    const s = { re: 0, im: 2 * Math.PI * frequency };
    return over(at(up, s), at(down, s));
  };
}

const band = { from: 1e-3, to: 100 };
const degrees = (angle: number | null) => ((angle ?? Number.NaN) * 180) / Math.PI;
const perSecond = (frequency: number | null) => (frequency ?? Number.NaN) * 2 * Math.PI;
const stability = (loop: (frequency: number) => Complex, inside = band) => stabilityOf(curveOf(loop, inside));
const margins = (loop: (frequency: number) => Complex, inside = band): Margins =>
  marginsOf(stability(loop, inside)) ?? assert.fail('it swings');

describe('margins of a loop', () => {
  it('25/(s³+10s²+10s+10): 3.6000 at 3.1623, 29.1104° at 1.7844 (MathWorks, allmargin)', () => {
    const found = margins(ratio([25], [1, 10, 10, 10]));
    near(found.gainMargin ?? Number.NaN, 3.6, 1e-3);
    near(perSecond(found.gainMarginAt), 3.1623, 1e-3);
    near(degrees(found.phaseMargin), 29.1104, 1e-3);
    near(perSecond(found.crossover), 1.7844, 1e-3);
  });

  it('1/(s³+2s²+s): 2 at 1, 21.3864° at 0.68233 (plant of a MathWorks page, computed with SciPy)', () => {
    const found = margins(ratio([1], [1, 2, 1, 0]));
    near(found.gainMargin ?? Number.NaN, 2, 1e-3);
    near(degrees(found.phaseMargin), 21.3864, 1e-3);
    near(perSecond(found.crossover), 0.682_33, 1e-3);
  });

  it('15/(s³+6s²+11s+6): 4 at √11, 60.732° at 1.49072 (plant of python-control’s margin_test.py)', () => {
    const found = margins(ratio([15], [1, 6, 11, 6]));
    near(found.gainMargin ?? Number.NaN, 4, 1e-3);
    near(perSecond(found.gainMarginAt), Math.sqrt(11), 1e-3);
    near(degrees(found.phaseMargin), 60.732, 1e-3);
  });

  it('3/(s+1)³: 8/3 at √3, 41.69° (Åström and Murray, Feedback Systems, from memory); 5/11 from −1 at 1.32288', () => {
    const found = margins(ratio([3], [1, 3, 3, 1]));
    near(found.gainMargin ?? Number.NaN, 8 / 3, 1e-3);
    near(degrees(found.phaseMargin), 41.69, 1e-3);
    const { nearest } = stability(ratio([3], [1, 3, 3, 1]));
    near(nearest.distance, 5 / 11, 2e-3);
    near(perSecond(nearest.frequency), 1.322_88, 2e-2);
  });

  it('8.75(4s²+0.4s+1)/((100s+1)(s²+0.22s+1)(s²/100+0.008s+1)): 2.2716 at 10.0053; 97.5941° at 0.085 and, least of three crossovers, less at the last (python-control, margin_test.py)', () => {
    const product = (...polynomials: readonly (readonly number[])[]) =>
      polynomials.reduce((all, one) => {
        const made = Array.from({ length: all.length + one.length - 1 }, () => 0);
        for (const [i, a] of all.entries())
          for (const [j, b] of one.entries()) made[i + j] = (made[i + j] ?? 0) + a * b;
        return made;
      });
    const loop = ratio([35, 3.5, 8.75], [...product([100, 1], [1, 0.22, 1], [0.01, 0.008, 1])]);
    const { crossovers, nearest } = stability(loop);
    const [first] = crossovers;
    near(perSecond(first?.frequency ?? null), 0.085, 1e-3);
    near(180 + degrees(first?.phase ?? null), 97.5941, 1e-3);
    near(margins(loop).gainMargin ?? Number.NaN, 2.2716, 1e-3);
    near(perSecond(margins(loop).gainMarginAt), 10.0053, 1e-3);
    near(nearest.distance, 0.5591, 2e-3);
  });

  it('an integrator of 20 Hz with 5 ms of delay: 54°, 2.5 at 50 Hz (by hand)', () => {
    const loop = (frequency: number) =>
      times({ re: 0, im: -20 / frequency }, unit(-2 * Math.PI * frequency * 0.005));
    const found = margins(loop, { from: 0.1, to: 1000 });
    near(degrees(found.phaseMargin), 54, 1e-3);
    near(found.gainMargin ?? Number.NaN, 2.5, 1e-3);
    near(found.gainMarginAt ?? Number.NaN, 50, 1e-3);
  });
});

describe('the count of turns round −1', () => {
  const verdict = (loop: (frequency: number) => Complex) => stability(loop).verdict;

  it('30/(s(s+1)(s+5)) is at its ultimate gain: calm with 1 % less, swinging at √5 with 1 % more (Ogata, Modern Control Engineering, from memory)', () => {
    assert.equal(verdict(ratio([29.7], [1, 6, 5, 0])), 'calm');
    assert.equal(verdict(ratio([30.3], [1, 6, 5, 0])), 'swings');
    near(perSecond(swingOf(stability(ratio([30.3], [1, 6, 5, 0])))), Math.sqrt(5), 1e-3);
  });

  it('k(0.5s+1.3)/(s³+1.2s²+1.6s) is calm for k below 2.74286 and nowhere above (MathWorks, plant of "Assessing Gain and Phase Margins", computed)', () => {
    const loop = (k: number) => ratio([0.5 * k, 1.3 * k], [1, 1.2, 1.6, 0]);
    for (const [k, expected] of [
      [1, 'calm'],
      [2.73, 'calm'],
      [2.755, 'swings'],
      [50, 'swings'],
    ] as const)
      assert.equal(verdict(loop(k)), expected, String(k));
  });

  it('a loop that an integral alone drives past half a turn swings, however much phase its last crossover seems to have (Routh: s³ + s² + s + 2)', () => {
    // (s + 2)/(s²(s + 1)): the integral is faster than the lag.
    assert.equal(verdict(ratio([1, 2], [1, 1, 0, 0])), 'swings');
    assert.equal(verdict(ratio([1, 0.5], [1, 1, 0, 0])), 'calm');
  });

  it('a loop that is calm between two gains is calm there and swings beyond either (Routh: 0.5 K > 8, from k = 3(s+1)²)', () => {
    // k (s+1)²/s³: stable for k > 0.5 alone.
    assert.equal(verdict(ratio([1, 2, 1], [1, 0, 0, 0])), 'calm');
    assert.equal(verdict(ratio([0.4, 0.8, 0.4], [1, 0, 0, 0])), 'swings');
  });

  it('has no margins for a loop that swings, nor for one that nothing crosses (definition)', () => {
    assert.equal(marginsOf(stability(ratio([125], [1, 10, 10, 10]))), null);
    assert.equal(verdict(ratio([125], [1, 10, 10, 10])), 'swings');
    assert.equal(verdict(ratio([0.5], [1, 1])), 'unanswered');
    assert.equal(marginsOf(stability(ratio([0.5], [1, 1]))), null);
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
    path: { gyroFilters: [], derivativeFilters: [], delay: 0 },
    authority: 1,
    motorLag: 1 / (2 * damping * natural),
    reactionLead: 0,
  };
}

const often = { gyro: 32_000, control: 32_000 };

describe('an axis with a lag and nothing else is the textbook’s second-order loop', () => {
  for (const [damping, over100, margin] of [
    [0.3, 37.233, 33.27],
    [0.5, 16.303, 51.83],
    [0.7, 4.599, 65.16],
  ] as const) {
    it(`damping ${damping}: ${over100} % over, ${margin}° (second-order step response, any textbook)`, () => {
      const axis = secondOrder(damping);
      const found = marginsOf(stabilityOf(axisCurve(axis, band)));
      near(degrees(found?.phaseMargin ?? null), margin, 2e-3);
      near(100 * overshoot(stepResponse(axis, often, plainCall, 5, closely)), over100, 2e-2);
    });
  }

  it('answers half of a step after about (1 + 0.7 ζ)/ω0 (delay time, Ogata, Modern Control Engineering, from memory)', () => {
    const { values, interval } = stepResponse(secondOrder(0.5), often, plainCall, 5, closely);
    near(values.findIndex((value) => value >= 0.5) * interval, (1 + 0.7 * 0.5) / 40, 6e-2);
  });
});

describe('an axis with its filters as waits', () => {
  const crossover = 5;
  const smooth = lowpass(1000, Math.SQRT1_2, 32_000);
  const filtered = (filters: Axis['path']['gyroFilters']): Axis => ({
    ...secondOrder(0.5),
    path: { gyroFilters: filters, derivativeFilters: [], delay: 1e-3 },
  });

  it('waits √2/ωc longer for a low-pass of order 2 far above, 225 µs for 1 kHz (analogue prototype, any textbook)', () => {
    const quick =
      quickened(filtered([smooth]), often, crossover, closely) ?? assert.fail('it does more than wait');
    near(quick.axis.path.delay, 1e-3 + Math.SQRT2 / (2 * Math.PI * 1000), 1e-3);
    assert.ok(quick.rates.gyro < often.gyro / 50);
  });

  it('overshoots as it does with them (by the full simulation)', () => {
    const axis = filtered([smooth]);
    const quick = quickened(axis, often, crossover, closely) ?? assert.fail('it does more than wait');
    const slowly = overshoot(stepResponse(axis, often, plainCall, crossover, closely));
    const quickly = overshoot(stepResponse(quick.axis, quick.rates, plainCall, crossover, closely));
    assert.ok(Math.abs(100 * (quickly - slowly)) < 0.5, `${quickly} and ${slowly}`);
  });

  it('is looked at as often above its crossover as it may swing there, and overshoots the same (by the full simulation)', () => {
    assert.equal(reachOf(crossover, null), crossover);
    assert.equal(reachOf(crossover, 3 * crossover), crossover);
    const reach = reachOf(crossover, 40 * crossover);
    near(reach, 8 * crossover, 1e-12);
    const axis = filtered([smooth]);
    const far = quickened(axis, often, crossover, closely, reach) ?? assert.fail('it does more than wait');
    const usual = quickened(axis, often, crossover, closely) ?? assert.fail('it does more than wait');
    near(far.rates.control / (closely.rounds * crossover), 8, 1e-12);
    assert.ok(far.rates.control > usual.rates.control);
    const slowly = overshoot(stepResponse(axis, often, plainCall, crossover, closely));
    const quickly = overshoot(stepResponse(far.axis, far.rates, plainCall, crossover, closely));
    assert.ok(Math.abs(100 * (quickly - slowly)) < 0.2, `${quickly} and ${slowly}`);
  });

  it('is not looked at where a filter takes away what the loop moves (definition)', () => {
    assert.equal(quickened(filtered([notch(15, 10, 32_000)]), often, crossover, closely), null);
  });
});

describe('an axis along a band', () => {
  const axis: Axis = {
    gains: { proportional: 0.05, integral: 0.3, derivative: 6e-4 },
    path: {
      gyroFilters: [notch(120, 12, 8000), lowpass(250, Math.SQRT1_2, 8000)],
      derivativeFilters: [lowpass(90, Math.SQRT1_2, 4000)],
      delay: 1e-3,
    },
    authority: 900,
    motorLag: 0.03,
    reactionLead: 0.18,
  };
  const { frequencies, re, im } = axisCurve(axis, { from: 0.1, to: 2000 });

  it('is the open loop at each of its frequencies (by the other computation)', () => {
    for (const [place, frequency] of frequencies.entries()) {
      const one = openLoop(axis, frequency);
      const size = Math.hypot(one.re, one.im);
      assert.ok(Math.abs((re[place] ?? Number.NaN) - one.re) < 1e-9 * size, `${frequency} Hz`);
      assert.ok(Math.abs((im[place] ?? Number.NaN) - one.im) < 1e-9 * size, `${frequency} Hz`);
    }
  });

  it('is looked at closely on both sides of a notch (definition)', () => {
    const inside = frequencies.filter((frequency) => Math.abs(frequency - 120) < 12.1);
    assert.ok(inside.filter((frequency) => frequency < 120).length >= 3, inside.join(' '));
    assert.ok(inside.filter((frequency) => frequency > 120).length >= 3, inside.join(' '));
  });
});

describe('the reaction of rotors', () => {
  it('of a five-inch racer gives 4.60 times the torque at the start of a step, and a zero at 5.43 rad/s; 2.96 and 8.46 with three inches (R. Ferede et al., TU Delft, arXiv 2504.21586)', () => {
    // Moments over the body's inertia: drag a rad/s, reaction a rad/s², lag in s.
    for (const [slope, reaction, lag, start, zero] of [
      [1.07e-2, 1.97e-3, 0.04, 4.6, 5.43],
      [9.64e-3, 1.14e-3, 0.04, 2.96, 8.46],
      [3.38e-3, 3.24e-4, 0.03, 3.2, 10.43],
    ] as const) {
      const lead = reactionLead(reaction, slope);
      near(1 / lead, zero, 1e-3);
      near(lead / lag, start, 2e-3);
      const axis: Axis = { ...secondOrder(0.5), authority: 1, motorLag: lag, reactionLead: lead };
      // Far above the lag the loop is that of the body alone with the torque of the start.
      const high = openLoop(axis, 1e4);
      const plain = openLoop({ ...axis, motorLag: 0, reactionLead: 0 }, 1e4);
      near(Math.hypot(high.re, high.im) / Math.hypot(plain.re, plain.im), start, 2e-3);
    }
  });

  it('starts with 1 + Kt²/(2 R kQ Ω) times what it comes to (lag and lead with the same inertia)', () => {
    const motor = { speedConstant: 251.3, resistance: 0.1, idleCurrent: 0.8 };
    const [factor, speed, inertia] = [1.5e-8, 1200, 6.62e-6];
    const lag = inertia / speedDamping(motor, speed, factor);
    const start = reactionLead(inertia, dragSlope(speed, factor)) / lag;
    near(start, 1 + 1 / (251.3 ** 2 * 2 * 0.1 * factor * speed), 1e-12);
    // 34.07 ms: the lag of such a racer by its motor's data.
    near(lag, 34.07e-3, 1e-2);
  });
});

describe('the answer to a call', () => {
  // 20 Hz of crossover, 5 ms of wait: the open loop is ωc/s e^(−sT).
  const axis: Axis = {
    gains: { proportional: 1, integral: 0, derivative: 0 },
    path: { gyroFilters: [], derivativeFilters: [], delay: 5e-3 },
    authority: 2 * Math.PI * 20,
    motorLag: 0,
    reactionLead: 0,
  };
  const plain: Call = { isKicked: false, feedforward: 0, feedforwardFilters: [] };
  const size = ({ re, im }: Complex) => Math.hypot(re, im);
  const phase = ({ re, im }: Complex) => degrees(Math.atan2(im, re));

  it('is L/(1 + L): 1.00128 at 2 Hz, 1.10134 at 20, 0.91448 at 40, 0.66667 and −180° at 50 (computed with NumPy)', () => {
    for (const [frequency, gain, angle] of [
      [2, 1.001_28, -5.735],
      [20, 1.101_34, -63],
      [40, 0.914_48, -145.585],
      [50, 0.666_67, -180],
    ] as const) {
      const answer = answerTo(axis, plain, frequency);
      near(size(answer), gain, 1e-4);
      near(-Math.abs(phase(answer)), angle, 1e-3);
    }
  });

  it('with the derivative on the gyro alone lacks its part of the call, and with feedforward has its part more', () => {
    const held: Axis = { ...axis, gains: { proportional: 1, integral: 2, derivative: 0.003 } };
    const frequency = 15;
    const s = { re: 0, im: 2 * Math.PI * frequency };
    const loop = openLoop(held, frequency);
    const kicked = answerTo(held, { ...plain, isKicked: true }, frequency);
    const own = over(loop, add({ re: 1, im: 0 }, loop));
    near(size(kicked), size(own), 1e-12);
    const slow = add({ re: 1, im: 0 }, over({ re: 2, im: 0 }, s));
    const whole = add(slow, times({ re: 0.003, im: 0 }, s));
    near(size(answerTo(held, plain, frequency)), size(times(over(slow, whole), own)), 1e-12);
    // As much ahead as the derivative would have given.
    const ahead = answerTo(held, { ...plain, feedforward: 0.003 }, frequency);
    near(size(ahead), size(own), 1e-12);
    near(phase(ahead), phase(own), 1e-9);
  });
});
