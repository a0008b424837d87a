import assert from 'node:assert/strict';
import { fourierOf, transformed, transformedBack } from '../../server/src/physics/fourier';
import { close } from '../support/close';

const typed = [
  [
    [1, 1, 1, 1, 0, 0, 0, 0],
    [4, 1, 0, 1, 0],
    [0, -(1 + Math.SQRT2), 0, -(Math.SQRT2 - 1), 0],
  ],
  [
    [1, 2, 3, 4],
    [10, -2, -2],
    [0, 2, 0],
  ],
  [
    [1, 2, 3, 4, 5],
    [15, -2.5, -2.5],
    [0, 3.440_954_801_2, 0.812_299_240_6],
  ],
  [
    [1, 2, 3, 4, 5, 6, 7, 8],
    [36, -4, -4, -4, -4],
    [0, 9.656_854_249_5, 4, 1.656_854_249_5, 0],
  ],
  [
    [0, 1, 2, 3, 4, 3, 2, 1],
    [16, -6.828_427_124_7, 0, -1.171_572_875_3, 0],
    [0, 0, 0, 0, 0],
  ],
] as const;

describe('the Fourier transform', () => {
  it('has the bins that follow from its definition, for five short rows (by NumPy 2.4.6)', () => {
    for (const [values, re, im] of typed) {
      const bins = transformed(values);
      close(bins.re, re, 1e-10);
      close(bins.im, im, 1e-10);
    }
  });

  it('keeps the power: 204 of 1 … 8 is an eighth of that of its bins (Parseval)', () => {
    const { re, im } = transformed([1, 2, 3, 4, 5, 6, 7, 8]);
    const power = re.map((part, bin) => (bin === 0 || bin === 4 ? 1 : 2) * (part ** 2 + (im[bin] ?? 0) ** 2));
    close([power.reduce((sum, one) => sum + one, 0) / 8], [204], 1e-12 * 204);
  });

  it('is undone, for the lengths that SciPy tries (SciPy 1.17.1, fft/tests/test_basic.py)', () => {
    for (const size of [1, 2, 16, 128, 512, 53, 149, 281, 397]) {
      const values = Array.from({ length: size }, (_, at) => Math.sin(at * at) + 0.3);
      close(transformedBack(transformed(values), size), values, 1e-11);
    }
  });

  it('there is none of nothing', () => {
    for (const size of [0, 2.5, -1]) assert.throws(() => fourierOf(size), RangeError);
  });
});
