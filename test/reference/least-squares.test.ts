import assert from 'node:assert/strict';
import { dot, leastSquares, leverage } from '../../server/src/physics/least-squares';
import { near } from '../support/near';

const quartet = {
  across: [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5],
  up: [8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68],
};

describe('a line through points', () => {
  const rows = quartet.across.map((x) => [1, x]);

  it('is 3.00 + 0.500 x through the first of four well-known sets, with a sum of squares of 13.76 left (F. J. Anscombe, Graphs in Statistical Analysis, 1973, from memory)', () => {
    const fit = leastSquares(rows, quartet.up);
    assert.ok(fit !== null);
    near(fit.coefficients[0] ?? 0, 3, 1e-3);
    near(fit.coefficients[1] ?? 0, 0.5, 1e-3);
    near(dot(fit.residuals, fit.residuals), 13.76, 1e-3);
  });

  it('hangs wholly on a point that alone tells its slope: its leverage is 1, and all of them add up to the columns (any textbook on regression; the fourth of those sets)', () => {
    const lonely = [8, 8, 8, 8, 8, 8, 8, 19, 8, 8, 8].map((x) => [1, x]);
    const fit = leastSquares(lonely, quartet.up);
    assert.ok(fit !== null);
    near(leverage(fit.inverse, [1, 19]), 1, 1e-9);
    near(
      lonely.reduce((sum, row) => sum + leverage(fit.inverse, row), 0),
      2,
      1e-9,
    );
  });

  it('there is none where the columns can not be told apart', () => {
    assert.equal(
      leastSquares(
        quartet.across.map((x) => [1, x, 2 * x]),
        quartet.up,
      ),
      null,
    );
    assert.equal(leastSquares([[1, 8]], [3]), null);
  });
});
