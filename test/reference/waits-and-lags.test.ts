import assert from 'node:assert/strict';
import { over, times, unit } from '../../server/src/physics/complex';
import { sizeAndPhase, waited } from '../../server/src/physics/frequency-response';
import { waitBehindLags } from '../../server/src/physics/waits-and-lags';
import { close } from '../support/close';
import { near } from '../support/near';

const frequencies = Array.from({ length: 30 }, (_, at) => at + 1);

/** 250 e^(−4 ms s) / ((1 + 25 ms s)(1 + 200 ms s)) */
const values = frequencies.map((frequency) => {
  const pulse = 2 * Math.PI * frequency;
  const late = times({ re: 250, im: 0 }, unit(-0.004 * pulse));
  return over(over(late, { re: 1, im: 0.025 * pulse }), { re: 1, im: 0.2 * pulse });
});
const response = { frequencies, re: values.map(({ re }) => re), im: values.map(({ im }) => im) };
const curve = { ...sizeAndPhase(response), deviation: frequencies.map(() => 0.01) };

describe('a wait behind lags', () => {
  it('and the gain come back from a response that is exact, with nothing left over (arithmetic)', () => {
    const fit = waitBehindLags(curve, [0.025, 0.2]);
    near(fit.wait, 0.004, 1e-9);
    near(fit.gain, 250, 1e-9);
    assert.ok(fit.misfit < 1e-12);
    for (const lags of [[0.02, 0.2], [0.03, 0.2], [0.025, 0.15], [0.2]])
      assert.ok(waitBehindLags(curve, lags).misfit > 10, `${lags}`);
  });

  it('scatters as points do: one over the root of Σ (2πf/deviation)² (any textbook on regression)', () => {
    const pulses = frequencies.reduce((sum, one) => sum + (2 * Math.PI * one) ** 2, 0);
    near(waitBehindLags(curve, [0.025]).waitDeviation, 0.01 / Math.sqrt(pulses), 1e-9);
  });

  it('adds to the phase what it takes, and nothing to the size (any textbook on control)', () => {
    const later = waited(response, 0.001);
    const fit = waitBehindLags({ ...curve, ...sizeAndPhase(later) }, [0.025, 0.2]);
    near(fit.wait, 0.005, 1e-9);
    close(sizeAndPhase(later).size, [...curve.size], 1e-9);
  });
});
