import assert from 'node:assert/strict';
import type { Complex } from '../../server/src/physics/complex';
import { over, times, unit } from '../../server/src/physics/complex';
import { type SizeAndPhase, sizeAndPhase } from '../../server/src/physics/frequency-response';
import {
  fallsBelow,
  phaseBetween,
  phaseDelayOf,
  reachesPhase,
  resonanceOf,
} from '../../server/src/physics/response-figures';
import { near } from '../support/near';

const half = Math.SQRT1_2;

/** A response in closely spaced points. */
function curveOf(at: (frequency: number) => Complex, from: number, to: number): SizeAndPhase {
  const frequencies = Array.from({ length: 3000 }, (_, step) => from * (to / from) ** (step / 2999));
  const values = frequencies.map(at);
  return sizeAndPhase({ frequencies, re: values.map(({ re }) => re), im: values.map(({ im }) => im) });
}

describe('figures of a response along frequencies', () => {
  it('are those of a loop ωc/s e^(−sT), closed, at 20 Hz with 5 ms (arithmetic)', () => {
    const curve = curveOf(
      (frequency) => {
        const open = times({ re: 0, im: -20 / frequency }, unit(-2 * Math.PI * frequency * 0.005));
        return over(open, { re: 1 + open.re, im: open.im });
      },
      0.5,
      130,
    );
    const { size, frequency } = resonanceOf(curve);
    near(size, 1.121_97, 1e-4);
    near(frequency, 25.53, 1e-3);
    near(fallsBelow(curve, half) ?? 0, 48.23, 1e-3);
    near(reachesPhase(curve, (-135 * Math.PI) / 180) ?? 0, 37.36, 1e-3);
    near(reachesPhase(curve, -Math.PI) ?? 0, 50, 1e-3);
    near(1000 * (phaseDelayOf(curve) ?? 0), 2.814, 1e-3);
  });

  it('are those of three second-order loops with a wait (arithmetic)', () => {
    const table = [
      [15, 0.7, 0.005, 17.6645, 26.9385, 15.1509, 3.819],
      [10, 0.6, 0.01, 10.7033, 15.149, 11.4825, 7.803],
      [20, 1, 0.003, 26.6475, 44.6676, 12.872, 2.215],
    ] as const;
    for (const [natural, damping, wait, at135, at180, at3, delay] of table) {
      const curve = curveOf(
        (frequency) => {
          const share = frequency / natural;
          return times(
            over({ re: 1, im: 0 }, { re: 1 - share ** 2, im: 2 * damping * share }),
            unit(-2 * Math.PI * frequency * wait),
          );
        },
        0.5,
        120,
      );
      near(reachesPhase(curve, (-135 * Math.PI) / 180) ?? 0, at135, 1e-4);
      near(reachesPhase(curve, -Math.PI) ?? 0, at180, 1e-4);
      near(fallsBelow(curve, half) ?? 0, at3, 1e-4);
      near(1000 * (phaseDelayOf(curve) ?? 0), delay, 1e-3);
    }
  });

  it('are those of the roll of a helicopter: −135° at 4.00 rad/s, 122.9 ms (the model of J. A. Ham, C. K. Gardner, M. B. Tischler, Table 3)', () => {
    // Attitude: p/δ = 0.988 e^(−0.051 s) / (s² + s/0.155 + 55.35), once more over s; frequencies in rad/s here.
    const turn = 2 * Math.PI;
    const curve = curveOf(
      (frequency) => {
        const pulse = turn * frequency;
        const rate = over(times({ re: 0.988, im: 0 }, unit(-0.051 * pulse)), {
          re: 55.35 - pulse ** 2,
          im: pulse / 0.155,
        });
        return over(rate, { re: 0, im: pulse });
      },
      0.5 / turn,
      20 / turn,
    );
    near(turn * (reachesPhase(curve, (-135 * Math.PI) / 180) ?? 0), 4.0036, 1e-3);
    const at180 = reachesPhase(curve, -Math.PI) ?? 0;
    near(turn * at180, 6.4238, 1e-3);
    near(phaseDelayOf(curve) ?? 0, 0.1229, 1e-3);
    // By gain: where 6 dB more is left of it than at half a turn.
    const size = curve.size[curve.frequencies.findIndex((one) => one >= at180)] ?? 0;
    near(turn * (fallsBelow(curve, 2 * size) ?? 0), 2.7673, 3e-3);
  });

  it('are none where the curve does not show them', () => {
    const flat = { frequencies: [1, 2, 4], size: [1, 0.9, 0.8], phase: [-0.1, -0.2, -0.4] };
    assert.equal(fallsBelow(flat, half), null);
    assert.equal(fallsBelow({ ...flat, size: [0.5, 0.9, 0.4] }, half), null);
    assert.equal(reachesPhase(flat, -Math.PI), null);
    assert.equal(phaseDelayOf({ ...flat, phase: [-3, -3.05, -4] }), null);
    assert.equal(phaseBetween(flat, 8), null);
    assert.equal(phaseBetween(flat, 1), -0.1);
    near(phaseBetween(flat, 3) ?? 0, -0.3, 1e-9);
    assert.deepEqual(resonanceOf(flat), { size: 1, frequency: 1 });
  });
});
