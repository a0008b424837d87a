import { chanceLevel, chiSquaredAt, chiSquaredBelow, densitySpan } from '../../server/src/physics/chance';
import { close } from '../support/close';
import { near } from '../support/near';

const decibels = (ratio: number) => 10 * Math.log10(ratio);

describe('chance', () => {
  it('χ²: 95 of 100 lie below 3.841 with one degree of freedom, 18.307 with ten, 124.342 with a hundred (Abramowitz and Stegun, table 26.8)', () => {
    for (const [freedom, value] of [
      [1, 3.8415],
      [10, 18.307],
      [100, 124.342],
    ] as const) {
      near(chiSquaredAt(freedom, 0.95), value, 2e-5);
      near(chiSquaredBelow(freedom, value), 0.95, 1e-5);
    }
  });

  it('χ² with two degrees of freedom lies below x by 1 − e^(−x/2) (any textbook on statistics)', () => {
    for (const value of [0.1, 1, 5, 20]) near(chiSquaredBelow(2, value), 1 - Math.exp(-value / 2), 1e-10);
  });

  it('a mean of 8, 16, 32, 64 spectra holds the true one within these dB 95 times of a hundred (Welch 1967; by SciPy 1.17.1)', () => {
    for (const [averages, low, high] of [
      [8, -2.56, 3.65],
      [16, -1.89, 2.43],
      [32, -1.38, 1.65],
      [64, -1, 1.13],
    ] as const) {
      const span = densitySpan(averages, 0.95);
      close([decibels(span.low), decibels(span.high)], [low, high], 0.02);
    }
  });

  it('a bin of noise stands so many dB over its mean once in a thousand, and in a hundred thousand (by SciPy 1.17.1)', () => {
    for (const [averages, thousand, more] of [
      [1, 8.39, 10.61],
      [8, 3.9, 5.14],
      [16, 2.91, 3.87],
      [32, 2.14, 2.88],
      [64, 1.56, 2.11],
    ] as const)
      close(
        [decibels(chanceLevel(averages, 1e-3)), decibels(chanceLevel(averages, 1e-5))],
        [thousand, more],
        0.02,
      );
  });
});
