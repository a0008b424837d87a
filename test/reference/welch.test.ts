import assert from 'node:assert/strict';
import {
  densityScale,
  independentAverages,
  segmentBins,
  segmentsOf,
  sidesOf,
  toneBandwidth,
  usualWelch,
  welch,
} from '../../server/src/physics/welch';
import { close } from '../support/close';
import { near } from '../support/near';

const sixteen = Array.from({ length: 16 }, (_, at) => (at % 8 === 0 ? 1 : 0));
const eights = usualWelch(1, 8);

describe('the density of Welch', () => {
  it('has the values of the tests of SciPy 1.17.1 (test_spectral.py, TestWelch, TestPeriodogram)', () => {
    close(welch(sixteen, eights).density, [1 / 12, 11 / 72, 2 / 9, 2 / 9, 1 / 9], 1e-7);
    const third = 0.170_721_13;
    const nines = welch(sixteen, { ...usualWelch(1, 9), overlap: 4 }).density;
    close(nines, [0.124_774_55, 0.234_309_33, third, third, third], 1e-7);
    const tones = welch(sixteen, eights).density.map((one) => one * toneBandwidth(eights));
    close(tones, [0.015_625, 0.028_645_83, 0.041_666_67, 0.041_666_67, 0.020_833_33], 1e-7);
    const every = Array.from({ length: 64 }, (_, at) => (at % 8 === 0 ? 1 : 0));
    const fours = welch(every, { ...usualWelch(1, 16), overlap: 4 }).density;
    close(fours, [0, 1 / 12, 1 / 3, 1 / 5, 1 / 3, 1 / 5, 1 / 3, 1 / 5, 1 / 6], 1e-12);
    for (const [size, each, last] of [
      [16, 1 / 8, 1 / 16],
      [15, 2 / 15, 2 / 15],
    ] as const) {
      const impulse = Array.from({ length: size }, (_, at) => (at === 0 ? 1 : 0));
      const { density } = welch(impulse, { ...usualWelch(1, size), window: 'rectangular' });
      close(
        density,
        [0, ...Array.from({ length: 6 }, () => each), each, last].slice(0, density.length),
        1e-12,
      );
    }
  });

  it('lies half on either side of 0 Hz, bin by bin of each segment (SciPy 1.17.1, TestWelch.test_real_twosided)', () => {
    const bins = segmentBins(eights);
    const both = [0, 4, 8].map((from) => {
      const found = bins(sixteen, from) ?? [];
      return [0, 1, 2, 3, 4].map(
        (bin) => densityScale(eights) * ((found[2 * bin] ?? 0) ** 2 + (found[2 * bin + 1] ?? 0) ** 2),
      );
    });
    const mean = [0, 1, 2, 3, 4].map((bin) => both.reduce((sum, one) => sum + (one[bin] ?? 0), 0) / 3);
    close(mean, [1 / 12, 11 / 144, 1 / 9, 1 / 9, 1 / 9], 1e-8);
    const { density } = welch(sixteen, eights);
    close(
      mean.map((one, bin) => one * sidesOf(bin, 8)),
      [...density],
      1e-12,
    );
  });

  it('keeps the mean, or takes no window, where it is told (by SciPy 1.17.1)', () => {
    close(
      welch(sixteen, { ...eights, without: 'nothing' }).density,
      [1 / 9, 2 / 9, 2 / 9, 2 / 9, 1 / 9],
      1e-7,
    );
    const plain = welch(sixteen, { ...eights, window: 'rectangular' }).density;
    close(plain, [0, 0.25, 0.25, 0.25, 0.125], 1e-7);
  });

  it('sees nothing in a straight line of which the line is taken out (SciPy 1.17.1, test_detrend_linear)', () => {
    const line = Array.from({ length: 10 }, (_, at) => at + 0.04);
    close(welch(line, { ...usualWelch(1, 10), without: 'line' }).density, [0, 0, 0, 0, 0, 0], 1e-15);
  });

  it('gives a tone of amplitude 20 a power of 200, in its bin and over all, by any window (SciPy 1.17.1, test_window_correction)', () => {
    const tone = Array.from({ length: 10_000 }, (_, at) => 20 * Math.sin((2 * Math.PI * 300 * at) / 10_000));
    for (const window of ['hann', 'bartlett', 'flat top'] as const) {
      const setup = { ...usualWelch(10_000, 1000), window };
      const { frequencies, density } = welch(tone, setup);
      const bin = frequencies.indexOf(300);
      near((density[bin] ?? 0) * toneBandwidth(setup), 200, 1e-9);
      near(Math.sqrt(10 * density.reduce((sum, one) => sum + one, 0)), 14.1421, 1e-3);
    }
  });

  it('leaves out a segment in which a cell says nothing', () => {
    const sum = new Float64Array(5);
    assert.equal(segmentsOf(eights).addTo(sum, [1, 2, Number.NaN, 4, 5, 6, 7, 8], 0), false);
    close(sum, [0, 0, 0, 0, 0], 0);
  });

  it('scatters like so many independent segments of a Hann window (Welch 1967; the formula as the Rust crate dsmc 0.13.0 documents it)', () => {
    const table = [
      [4, 3.84, 2.3816],
      [8, 7.6291, 4.4393],
      [16, 15.208, 8.5866],
      [32, 30.366, 16.896],
      [64, 60.682, 33.52],
    ] as const;
    const setup = usualWelch(1, 1024);
    for (const [segments, half, quarter] of table) {
      near(independentAverages(segments, setup), half, 1e-4);
      near(independentAverages(segments, { ...setup, overlap: 768 }), quarter, 1e-4);
    }
    assert.equal(independentAverages(0, setup), 0);
  });
});
