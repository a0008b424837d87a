import assert from 'node:assert/strict';
import { dot, leastSquares, leastSquaresOfSums, leverage } from '../../server/src/physics/least-squares';
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

  it('is the same from sums alone: Norris, of which the slope is certified as 1.00211681802045 and the rest as -0.262323073774029 (NIST Statistical Reference Datasets)', () => {
    const rowsOfNorris = norris.map(([, x]) => [1, x]);
    const values = norris.map(([y]) => y);
    const sum = (of: (y: number, x: number) => number) => norris.reduce((all, [y, x]) => all + of(y, x), 0);
    const normal = [
      [norris.length, sum((_, x) => x)],
      [sum((_, x) => x), sum((_, x) => x * x)],
    ];
    for (const fit of [
      leastSquares(rowsOfNorris, values),
      leastSquaresOfSums(normal, [sum((y) => y), sum((y, x) => x * y)]),
    ]) {
      near(fit?.coefficients[0] ?? 0, -0.262_323_073_774_029, 1e-8);
      near(fit?.coefficients[1] ?? 0, 1.002_116_818_020_45, 1e-10);
    }
    assert.equal(leastSquaresOfSums([[0]], [1]), null);
  });
});

/** y and x of Norris (NIST). */
const norris: readonly (readonly [number, number])[] = [
  [0.1, 0.2],
  [338.8, 337.4],
  [118.1, 118.2],
  [888.0, 884.6],
  [9.2, 10.1],
  [228.1, 226.5],
  [668.5, 666.3],
  [998.5, 996.3],
  [449.1, 448.6],
  [778.9, 777.0],
  [559.2, 558.2],
  [0.3, 0.4],
  [0.1, 0.6],
  [778.1, 775.5],
  [668.8, 666.9],
  [339.3, 338.0],
  [448.9, 447.5],
  [10.8, 11.6],
  [557.7, 556.0],
  [228.3, 228.1],
  [998.0, 995.8],
  [888.8, 887.6],
  [119.6, 120.2],
  [0.3, 0.3],
  [0.6, 0.3],
  [557.6, 556.8],
  [339.3, 339.1],
  [888.0, 887.2],
  [998.5, 999.0],
  [778.9, 779.0],
  [10.2, 11.1],
  [117.6, 118.3],
  [228.9, 229.2],
  [668.4, 669.1],
  [449.2, 448.9],
  [0.2, 0.5],
];
