import assert from 'node:assert/strict';
import fc from 'fast-check';
import { curveSlope, curveValue, monotoneCurve } from '../../server/src/physics/monotone-curve';
import { near } from '../support/near';

const through = (...points: readonly (readonly [number, number])[]) =>
  monotoneCurve(points.map(([x, y]) => ({ x, y })));

describe('a monotone curve (Fritsch and Carlson, SIAM Journal on Numerical Analysis 17, 1980)', () => {
  it('through (0,0), (1,1), (2,1), (3,2): the published rule worked by hand', () => {
    const curve = through([0, 0], [1, 1], [2, 1], [3, 2]);
    assert.deepEqual(curve.slopes, [1, 0, 0, 1]);
    for (const [x, y] of [
      [0.25, 0.296_875],
      [0.5, 0.625],
      [1.5, 1],
      [2.5, 1.375],
    ] as const)
      near(curveValue(curve, x), y, 1e-12);
  });

  it('through (0,0), (1,1), (2,10): the circle of radius 3 draws the slopes in', () => {
    const curve = through([0, 0], [1, 1], [2, 10]);
    for (const [index, slope] of [0.588_348_41, 2.941_742_03, 9].entries())
      near(curve.slopes[index] ?? Number.NaN, slope, 1e-7);
    for (const [x, y] of [
      [0.25, 0.101_092_34],
      [0.5, 0.205_825_8],
      [0.75, 0.457_646_36],
      [1.5, 4.742_717_75],
    ] as const)
      near(curveValue(curve, x), y, 1e-6);
  });

  it('through the data of NAG’s e01bec example (as carried in SciPy 1.17.1, test_polyint.py)', () => {
    const x = [7.99, 8.09, 8.19, 8.7, 9.2, 10, 12, 15, 20];
    const y = [0, 0.276_43e-4, 0.4375e-1, 0.169_18, 0.469_43, 0.943_74, 0.998_64, 0.999_92, 0.999_99];
    const curve = monotoneCurve(x.map((value, index) => ({ x: value, y: y[index] ?? 0 })));
    // NAG chooses its slopes by another rule: the two agree to some thousandths.
    for (const [at, value] of [
      [9.191, 0.464],
      [10.392, 0.9645],
      [11.593, 0.9965],
      [12.794, 0.9992],
    ] as const)
      near(curveValue(curve, at), value, 6e-3);
  });

  it('is a straight line through two points, and level beyond its ends', () => {
    const curve = through([0, 0], [1, 2]);
    near(curveValue(curve, 0.3), 0.6, 1e-12);
    near(curveSlope(curve, 0.3), 2, 1e-12);
    assert.deepEqual([curveValue(curve, -1), curveValue(curve, 4)], [0, 2]);
  });

  it('never leaves the stretch between two points, and its slope is the one it climbs by', () => {
    const rising = fc
      .array(fc.tuple(fc.integer({ min: 1, max: 50 }), fc.integer({ min: 0, max: 500 })), {
        minLength: 2,
        maxLength: 8,
      })
      .map((steps) => {
        let [x, y] = [0, 0];
        return steps.map(([wide, high]) => {
          x += wide;
          y += high;
          return { x, y };
        });
      });
    fc.assert(
      fc.property(rising, fc.double({ min: 0, max: 1, noNaN: true }), (points, share) => {
        const curve = monotoneCurve(points);
        for (const [index, to] of points.slice(1).entries()) {
          const from = points[index];
          assert.ok(from);
          const x = from.x + share * (to.x - from.x);
          const value = curveValue(curve, x);
          assert.ok(value >= from.y - 1e-9 && value <= to.y + 1e-9);
          const step = 1e-6 * (to.x - from.x);
          const climbed = (curveValue(curve, x + step) - curveValue(curve, x - step)) / (2 * step);
          if (share > 1e-3 && share < 1 - 1e-3) assert.ok(Math.abs(climbed - curveSlope(curve, x)) < 1e-2);
        }
      }),
    );
  });

  it('is refused where x does not rise', () => {
    assert.throws(() => through([0, 0], [0, 1]), RangeError);
  });
});
