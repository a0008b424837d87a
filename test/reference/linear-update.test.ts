import assert from 'node:assert/strict';
import fc from 'fast-check';
import { independentWays, renewed, untold, updated } from '../../server/src/physics/linear-update';
import { near } from '../support/near';

interface Told {
  readonly weights: readonly number[];
  readonly reading: number;
  readonly variance: number;
}

const size = 4;
const told: fc.Arbitrary<readonly Told[]> = fc.array(
  fc.record({
    weights: fc.array(fc.double({ min: -2, max: 2, noNaN: true }), { minLength: size, maxLength: size }),
    reading: fc.double({ min: -3, max: 3, noNaN: true }),
    variance: fc.double({ min: 0.01, max: 2, noNaN: true }),
  }),
  { minLength: 1, maxLength: 8 },
);

function leftBy(all: readonly Told[]) {
  return all.reduce(
    (belief, { weights, reading, variance }) => updated(belief, weights, reading, variance),
    untold(size),
  );
}

/** The same in another way, all at once: what is known adds up, 1 + Σ w wᵀ / v, and is solved by plain elimination. */
function plainAfter(all: readonly Told[]): readonly number[] {
  const rows = Array.from({ length: size }, (_, one) => [
    ...Array.from({ length: size }, (__, other) => {
      const own = one === other ? 1 : 0;
      return all.reduce(
        (sum, { weights, variance }) => sum + ((weights[one] ?? 0) * (weights[other] ?? 0)) / variance,
        own,
      );
    }),
    all.reduce((sum, { weights, reading, variance }) => sum + ((weights[one] ?? 0) * reading) / variance, 0),
  ]);
  for (let at = 0; at < size; at += 1) {
    const pivot = rows[at] ?? [];
    for (const [index, row] of rows.entries()) {
      if (index === at) continue;
      const times = (row[at] ?? 0) / (pivot[at] ?? 1);
      rows[index] = row.map((value, column) => value - times * (pivot[column] ?? 0));
    }
  }
  return rows.map((row, at) => (row[size] ?? 0) / (row[at] ?? 1));
}

describe('what readings leave of a belief', () => {
  it('is halfway between what was thought and what was read where both are as sure (any textbook on estimation)', () => {
    const { mean, covariance } = updated(untold(1), [1], 0.8, 1);
    near(mean[0] ?? 0, 0.4, 1e-12);
    near(covariance[0]?.[0] ?? 0, 0.5, 1e-12);
  });

  it('is what all of them at once leave, by adding up what each tells (a second, plain reckoning: information form)', () => {
    fc.assert(
      fc.property(told, (all) => {
        const { mean } = leftBy(all);
        for (const [index, value] of plainAfter(all).entries())
          assert.ok(Math.abs(value - (mean[index] ?? 0)) < 1e-6, `${value} and ${mean[index]}`);
      }),
    );
  });

  it('does not hang on their order, and is never less sure than before (definition)', () => {
    fc.assert(
      fc.property(told, (all) => {
        const [one, other] = [leftBy(all), leftBy([...all].reverse())];
        for (const [index, value] of one.mean.entries())
          assert.ok(Math.abs(value - (other.mean[index] ?? 0)) < 1e-6);
        for (const [index, row] of one.covariance.entries()) assert.ok((row[index] ?? 0) <= 1 + 1e-9);
      }),
    );
  });

  it('knows nothing of a quantity for which another came (definition)', () => {
    const { mean, covariance } = renewed(updated(untold(2), [1, 1], 2, 0.1), 1);
    near(mean[0] ?? 0, 2 / 2.1, 1e-9);
    assert.equal(mean[1], 0);
    assert.deepEqual([covariance[0]?.[1], covariance[1]?.[0], covariance[1]?.[1]], [0, 0, 1]);
  });

  it('parts into independent ways whose products add up to it (definition of the Cholesky factors)', () => {
    fc.assert(
      fc.property(told, (all) => {
        const belief = leftBy(all);
        const ways = independentWays(belief);
        for (const [one, row] of belief.covariance.entries())
          for (const [other, value] of row.entries()) {
            const sum = ways.reduce((total, way) => total + (way[one] ?? 0) * (way[other] ?? 0), 0);
            assert.ok(Math.abs(sum - value) < 1e-6, `${sum} and ${value}`);
          }
      }),
    );
  });
});
