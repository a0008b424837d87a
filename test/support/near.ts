import assert from 'node:assert/strict';

/** Holds that a computed value lies within a share of a published one. */
export function near(actual: number, expected: number, share: number): void {
  const off = Math.abs(actual - expected) / Math.max(Math.abs(expected), Number.MIN_VALUE);
  assert.ok(off <= share, `${actual} where ${expected} was expected, off by ${off}`);
}
