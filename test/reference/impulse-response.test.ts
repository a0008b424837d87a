import assert from 'node:assert/strict';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { crossSpectra } from '../../server/src/physics/cross-spectrum';
import { transformed } from '../../server/src/physics/fourier';
import { frequencyResponse, responseError, sizeAndPhase } from '../../server/src/physics/frequency-response';
import { ImpulseSums, regularised, stepOf } from '../../server/src/physics/impulse-response';
import { dot, leastSquares } from '../../server/src/physics/least-squares';
import { waitBehindLags } from '../../server/src/physics/waits-and-lags';
import { independentAverages, usualWelch } from '../../server/src/physics/welch';
import { delayAndLag } from '../../server/src/recording/estimate/response/late';
import { atOnce } from '../support/at-once';
import { close } from '../support/close';
import { near } from '../support/near';

/** The taps of rows, added one by one. */
function tapsOf(x: readonly number[], y: readonly number[], count: number, ridge = 0) {
  const sums = new ImpulseSums(count);
  for (const [at, value] of x.entries()) sums.add(value, y[at] ?? 0);
  return sums.fit(ridge);
}

const summed = (taps: readonly number[]) =>
  taps.map((_, at) => taps.slice(0, at + 1).reduce((sum, tap) => sum + tap, 0));

describe('an impulse response', () => {
  const asked = [1, -2, 3, 0, 2, -1, -3, 2, 1, 4, -2, -1, 0, 3, -4, 1, 2, -1, 0, 2, -3, 1, 4, -2];

  it('comes back from 24 samples without noise: 0, 0.5, 0.25 (arithmetic)', () => {
    const came = asked.map((_, at) => 0.5 * (asked[at - 1] ?? 0) + 0.25 * (asked[at - 2] ?? 0));
    const fit = tapsOf(asked, came, 3);
    close(fit?.taps ?? [], [0, 0.5, 0.25], 1e-9);
    near(fit?.sum ?? 0, 0.75, 1e-9);
    assert.ok((fit?.sumDeviation ?? 1) < 1e-6);
    assert.equal(tapsOf(asked.slice(0, 4), came.slice(0, 4), 3), null);
    assert.equal(
      tapsOf(
        asked.fill(1, 0, 0).map(() => 1),
        came,
        3,
      ),
      null,
    );
  });

  it('begins anew behind a gap, and its sum scatters as it says (any textbook on regression)', () => {
    const random = deviates(4);
    const off: number[] = [];
    let said = 0;
    for (let round = 0; round < 60; round += 1) {
      const sums = new ImpulseSums(4);
      let past = [0, 0];
      for (let at = 0; at < 200; at += 1) {
        if (at === 100) {
          sums.pause();
          past = [5, 5];
        }
        const x = random();
        sums.add(x, 1 + 0.6 * (past[0] ?? 0) + 0.4 * (past[1] ?? 0) + 0.5 * random());
        past = [x, past[0] ?? 0];
      }
      const fit = sums.fit();
      off.push((fit?.sum ?? 0) - 1);
      said += (fit?.sumDeviation ?? 0) / 60;
    }
    near(Math.sqrt(dot(off, off) / off.length), said, 0.3);
  });
});

describe('a step by inversion', () => {
  const bits = '111111000001000011000101001111010001110010010110111011001101010';
  const sequence = [...bits].map((bit) => (bit === '1' ? 1 : -1));
  /** Two samples late, then a lag of five, circular. */
  const answer = lagged(sequence);
  const [x, y] = [transformed(sequence), transformed(answer)];
  const input = x.re.map((re, bin) => re ** 2 + (x.im[bin] ?? 0) ** 2);
  const cross = {
    re: x.re.map((re, bin) => re * (y.re[bin] ?? 0) + (x.im[bin] ?? 0) * (y.im[bin] ?? 0)),
    im: x.re.map((re, bin) => re * (y.im[bin] ?? 0) - (x.im[bin] ?? 0) * (y.re[bin] ?? 0)),
  };

  it('of a 63-bit sequence of greatest length has 64 in all bins but the first, and gives back wait and lag (the register of six stages; arithmetic)', () => {
    close(input, [1, ...input.slice(1).map(() => 64)], 1e-9);
    const step = stepOf(
      regularised(input, cross, () => 0),
      63,
    );
    close(
      [2, 3, 4, 6, 8, 10, 15, 20].map((at) => step[at] ?? 0),
      [0.181_269, 0.329_68, 0.451_188, 0.632_121, 0.753_403, 0.834_701, 0.939_19, 0.977_629],
      1e-5,
    );
  });

  it('sinks where the regulariser is not relative to each bin’s power, most where least was asked for (arithmetic)', () => {
    for (const [share, level, atNothing] of [
      [0.001, 0.956_94, 0.9398],
      [0.01, 0.841_17, 0.6098],
      [0.1, 0.630_77, 0.1351],
    ] as const) {
      const response = regularised(input, cross, () => share * 64);
      near(stepOf(response, 63)[20] ?? 0, level, 1e-4);
      near(response.re[0] ?? 0, atNothing, 1e-3);
    }
    const relative = regularised(input, cross, (bin) => 0.01 * (input[bin] ?? 0));
    near(stepOf(relative, 63)[20] ?? 0, 0.977_629 / 1.01, 1e-5);
  });

  it('of a line of ten numbers grows by what comes before the call too, where it is asked to', () => {
    const response = transformed([1, 0, 0, 0, 0, 0, 0, 2]);
    close(stepOf(response, 8), [1, 1, 1, 1, 1, 1, 1, 3], 1e-9);
    close(stepOf(response, 8, 1), [3, 3, 3, 3, 3, 3, 3], 1e-9);
  });
});

function lagged(values: readonly number[]): readonly number[] {
  const keep = Math.exp(-1 / 5);
  const size = values.length;
  let state = 0;
  const out = new Array<number>(size).fill(0);
  // Three rounds: the answer of the first is forgotten.
  for (let at = 0; at < 4 * size; at += 1) {
    state = keep * state + (1 - keep) * (values[(at + size - 2) % size] ?? 0);
    out[at % size] = state;
  }
  return out;
}

/** L. Ljung, System Identification: the laboratory air heater, from SLICOT's examples; BSD 3-Clause. */
const heater = join(__dirname, '../../../shared/reference/recordings/heater-and-air-12.5hz.csv');

describe('the air heater, a thousand measured samples', () => {
  if (!existsSync(heater)) {
    it('is left out: its file does not lie beside the project');
    return;
  }
  const lines = readFileSync(heater, 'utf8').trim().split('\n').slice(1);
  const column = (index: number) => lines.map((line) => Number(line.split(',')[index]));
  const centred = (values: readonly number[]) => {
    const mean = values.reduce((sum, one) => sum + one, 0) / values.length;
    return values.map((one) => one - mean);
  };
  const [power, air] = [centred(column(1)), centred(column(2))];

  /** A and B of y[n] + a1 y[n−1] + a2 y[n−2] = b1 u[n−d] + b2 u[n−d−1], and the mean square error. */
  function twoAndTwo(u: readonly number[], y: readonly number[], delay: number) {
    const first = delay + 1;
    const rows = y.slice(first).map((_, at) => {
      const now = at + first;
      return [-(y[now - 1] ?? 0), -(y[now - 2] ?? 0), u[now - delay] ?? 0, u[now - delay - 1] ?? 0];
    });
    const fit = leastSquares(rows, y.slice(first));
    assert.ok(fit !== null);
    return { ...fit, error: dot(fit.residuals, fit.residuals) / rows.length };
  }

  it('has the two poles and the delay of three samples that MathWorks prints (from memory; all digits recomputed)', () => {
    const some = twoAndTwo(centred(column(1).slice(0, 300)), centred(column(2).slice(0, 300)), 3);
    close(some.coefficients, [-1.273_74, 0.393_55, 0.066_618, 0.044_482], 5e-5);
    near(some.error, 0.001_685_31, 1e-2);
    const all = twoAndTwo(power, air, 3);
    close(all.coefficients, [-1.288_729_86, 0.406_658_69, 0.065_517_96, 0.043_826], 1e-6);
    for (const [at, error] of [0.008_728, 0.002_753, 0.001_633, 0.007_555, 0.009_948, 0.010_75].entries())
      near(twoAndTwo(power, air, at + 1).error, error, 0.01);
  });

  /** Of the order-4 model that SLICOT prints (IB01AD.res, IB01BD.res), at these samples. */
  const samples = [2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 30];
  const published = [-0.0038, 0.0702, 0.1953, 0.3358, 0.4671, 0.6661, 0.7849, 0.8523, 0.9043, 0.9397, 0.9641];

  it('answers a step as SLICOT’s model of order 4 does, within 0.006 to sample 15 and 0.03 after', () => {
    const step = summed(tapsOf(power, air, 40)?.taps ?? []);
    const found = samples.map((at) => step[at] ?? 0);
    close(
      found,
      [0.0017, 0.0703, 0.1983, 0.3401, 0.4711, 0.6673, 0.7848, 0.8523, 0.9014, 0.9295, 0.9435],
      2e-3,
    );
    close(found.slice(0, 9), published.slice(0, 9), 0.006);
    close(found.slice(9), published.slice(9), 0.03);
  });

  it('answers as one lag behind a wait: 0.948, 0.341 s and 0.229 s fit its step best (a plain search)', () => {
    const step = summed(tapsOf(power, air, 40)?.taps ?? []);
    const best = oneLagOf(step, 0.08);
    close([best.gain, best.lag, best.wait], [0.948, 0.341, 0.229], 0.03 * 0.229);
  });

  const setup = usualWelch(12.5, 128);
  const response = frequencyResponse(crossSpectra([power, air], setup), 0, 1);

  it('is coherent to 2 Hz and no further (SciPy 1.17.1), with the response of that model there', () => {
    const bins = [1, 4, 8, 12, 16, 20, 24, 32, 48, 64];
    close(
      bins.map((bin) => response.coherence[bin] ?? 0),
      [0.952, 0.972, 0.974, 0.97, 0.976, 0.978, 0.94, 0.652, 0.4, 0.162],
      0.005,
    );
    const { size } = sizeAndPhase(response);
    close(
      bins.slice(0, 7).map((bin) => size[bin] ?? 0),
      [0.9055, 0.7403, 0.4869, 0.3042, 0.1952, 0.1364, 0.0925],
      2e-3,
    );
    for (const [at, model] of [0.933, 0.7424, 0.4916, 0.3145, 0.2007, 0.1304, 0.0873].entries()) {
      const bin = bins[at] ?? 0;
      const chance = responseError(response.coherence[bin] ?? 0, 8) * 3;
      near(size[bin] ?? 0, model, Math.max(0.035, chance));
    }
  });

  it('inverted to a step sinks at its end, for the mean of each segment was taken away (SciPy 1.17.1)', () => {
    const step = stepOf(response, 128);
    close(
      [3, 5, 8, 10, 15].map((at) => step[at] ?? 0),
      [0.0631, 0.3292, 0.6449, 0.7557, 0.8552],
      0.005,
    );
  });

  it('waits behind the two lags of its poles as its polynomials do (those of MathWorks above; arithmetic)', () => {
    const bins = [...response.frequencies.keys()].filter(
      (bin) => bin > 0 && (response.coherence[bin] ?? 0) > 0.9,
    );
    const at = (values: readonly number[]) => bins.map((bin) => values[bin] ?? 0);
    const curve = sizeAndPhase({
      frequencies: at(response.frequencies),
      re: at(response.re),
      im: at(response.im),
    });
    const lags = [0.7368, 0.5519].map((pole) => -0.08 / Math.log(pole));
    const fit = waitBehindLags({ ...curve, deviation: at(response.scatter) }, lags);
    // Three samples and of the fourth what B has of it, less half a sample for each pole.
    const wait = 0.08 * (3 + 0.043_826 / (0.065_518 + 0.043_826) - 1);
    near(fit.wait, wait, 0.1);
    near(fit.gain, 0.9272, 0.05);
    // Told as a flight is, of which nobody says the lags; its lag is longer than motors have, and nobody looks there.
    const { delay } = atOnce(delayAndLag('the air', response, independentAverages(14, setup), 12.5));
    near(delay.told?.likely ?? 0, 1000 * wait, 0.02);
    assert.ok((delay.told?.high ?? 0) - (delay.told?.low ?? 0) < 2.1 * 82, 'a row either way, and chance');
  });
});

/**
 * K (1 − e^(−(t − D)/τ)) from D on with the least squares beside a step, tried by thousandths of a second: plain, slow, and of
 * nothing but its definition.
 */
function oneLagOf(step: readonly number[], every: number) {
  let best = { left: Number.POSITIVE_INFINITY, gain: 0, lag: 0, wait: 0 };
  for (let lag = 0.25; lag < 0.45; lag += 0.001)
    for (let wait = 0.1; wait < 0.35; wait += 0.001) {
      const model = step.map((_, at) => 1 - Math.exp(-Math.max(0, at * every - wait) / lag));
      const gain = dot(model, step) / dot(model, model);
      const left = step.reduce((sum, one, at) => sum + (one - gain * (model[at] ?? 0)) ** 2, 0);
      if (left < best.left) best = { left, gain, lag, wait };
    }
  return best;
}

/** Normal deviates, the same each time. */
function deviates(seed: number): () => number {
  let state = seed >>> 0;
  const uniform = () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
