import assert from 'node:assert/strict';
import { prominenceAt, summitsApart, summitsOf, widthAt } from '../../server/src/physics/peaks';
import { close } from '../support/close';

const places = (values: readonly number[]) => summitsOf(values).map(({ at }) => at);

describe('peaks, by the tests of SciPy 1.17.1 (test_peak_finding.py)', () => {
  it('stand at the middle of a flat top, and at no end', () => {
    const values = [-1.3, 0, 1, 0, 2, 2, 0, 3, 3, 3, 2.99, 4, 4, 4, 4, -10, -5, -5, -5, -5, -5, -10];
    assert.deepEqual(places(values), [2, 4, 8, 12, 18]);
    assert.deepEqual(
      summitsOf(values).map(({ from, to }) => [from, to]),
      [
        [2, 2],
        [4, 5],
        [7, 9],
        [11, 14],
        [16, 20],
      ],
    );
    assert.deepEqual(places([1, 0, 2]), []);
    assert.deepEqual(places([3, 3, 0, 4, 4]), []);
    const heights = [0, 1 / 3, 0, 2.5, 0, 4, 0];
    assert.deepEqual(
      places(heights).filter((at) => (heights[at] ?? 0) >= 0.5),
      [3, 5],
    );
  });

  it('stand out over the higher of their two bases', () => {
    const values = [-1, 1.2, 1.2, 1, 3.2, 1.3, 2.88, 2.1];
    const found = [1, 2, 4, 6].map((at) => prominenceAt(values, at));
    close(
      found.map(({ prominence }) => prominence),
      [0.2, 0.2, 1.9, 0.78],
      1e-9,
    );
    assert.deepEqual(
      found.map(({ left, right }) => [left, right]),
      [
        [0, 3],
        [0, 3],
        [0, 5],
        [5, 7],
      ],
    );
    for (const at of [1, 3, 5])
      assert.deepEqual(prominenceAt([0, 2, 1, 2, 1, 2, 0], at), { prominence: 2, left: 0, right: 6 });
  });

  it('are so wide at a share of their height', () => {
    const table = [
      [0.25, 2.5, 3.5],
      [0.5, 2, 4],
      [0.75, 1.5, 4.5],
      [1, 1, 5],
    ] as const;
    for (const [share, from, to] of table) {
      const width = widthAt([1, 0, 1, 2, 1, 0, -1], 3, share);
      close([width.from, width.to], [from, to], 1e-12);
    }
    const values = [1, 0, 1, 2, 1, 0, -1, 4, 0];
    const narrow = places(values).filter((at) => width(values, at) <= 2);
    assert.deepEqual(narrow, [7]);
    const { from, to } = widthAt(values, 7, 0.75);
    close([from, to], [6.4, 7.75], 1e-12);
  });

  it('give way to higher ones that are nearer than a distance', () => {
    const values = Array.from({ length: 21 }, (_, at) => (at % 3 === 1 ? 1 + at : 0));
    const all = summitsOf(values);
    assert.deepEqual(summitsApart(values, all, 3), all);
    assert.deepEqual(
      summitsApart(values, all, 3.0001).map(({ at }) => at),
      all.map(({ at }) => at).filter((at) => (19 - at) % 6 === 0),
    );
  });
});

function width(values: readonly number[], at: number): number {
  const { from, to } = widthAt(values, at, 0.75);
  return to - from;
}
