import assert from 'node:assert/strict';

/** Holds that computed values lie within a distance of published ones, all of them. */
export function close(actual: ArrayLike<number>, expected: readonly number[], distance: number): void {
  assert.equal(actual.length, expected.length);
  for (const [at, value] of expected.entries()) {
    const off = Math.abs((actual[at] ?? Number.NaN) - value);
    assert.ok(off <= distance, `${actual[at]} at ${at} where ${value} was expected, off by ${off}`);
  }
}
