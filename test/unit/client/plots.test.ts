import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { areaBetween, pathThrough } from '../../../client/sheet/plots/paths';
import { scaleOf, ticksOf } from '../../../client/sheet/plots/scales';

const even = { title: '', unit: '', isLogarithmic: false };
const logarithmic = { ...even, isLogarithmic: true };

describe('the axes of a drawing', () => {
  it('have round ticks, about as many as were asked for', () => {
    assert.deepEqual(ticksOf({ ...even, low: 0, high: 1 }, 5), [0, 0.2, 0.4, 0.6, 0.8, 1]);
    assert.deepEqual(ticksOf({ ...even, low: -40, high: 5 }, 4), [-40, -30, -20, -10, 0]);
    assert.deepEqual(
      ticksOf({ ...even, low: 0.1, high: 0.3 }, 2),
      [0.1, 0.2, 0.3],
      'each the nearest number',
    );
    assert.deepEqual(ticksOf({ ...even, low: 3, high: 3 }, 4), [3]);
  });

  it('are marked at 1, 2 and 5 of each decade where they are logarithmic', () => {
    assert.deepEqual(ticksOf({ ...logarithmic, low: 10, high: 500 }, 8), [10, 20, 50, 100, 200, 500]);
    assert.deepEqual(ticksOf({ ...logarithmic, low: 0.1, high: 1000 }, 4), [0.1, 1, 10, 100, 1000]);
    assert.deepEqual(ticksOf({ ...logarithmic, low: 220, high: 450 }, 3), [300, 400], 'less than a decade');
  });

  it('lead from values to pixels and back, and no farther than their ends', () => {
    const axis = fc.tuple(fc.double({ min: 0.1, max: 50, noNaN: true }), fc.boolean());
    fc.assert(
      fc.property(axis, fc.double({ min: 0, max: 1, noNaN: true }), ([low, isLogarithmic], share) => {
        const high = low * 40;
        const scale = scaleOf({ ...even, low, high, isLogarithmic }, 300, 40);
        const value = low + share * (high - low);
        assert.ok(Math.abs(scale.invert(scale(value)) - value) < 1e-6 * high);
        assert.equal(scale(low / 2), 300);
        assert.equal(scale(high * 2), 40);
      }),
    );
    assert.equal(Math.round(scaleOf({ ...logarithmic, low: 1, high: 100 }, 0, 200)(10)), 100);
    assert.equal(scaleOf({ ...even, low: 7, high: 7 }, 0, 200)(7), 100, 'where there is one value only');
  });
});

describe('the paths of a drawing', () => {
  it('break where there is nothing to draw, and show a point that is alone', () => {
    assert.equal(
      pathThrough([[1, 2], [3, 4.12345], null, [5, 6], null, null, [7, 8], [9, 10]]),
      'M1,2L3,4.123M5,6ZM7,8L9,10',
    );
    assert.equal(pathThrough([null]), '');
  });

  it('go around what lies between two curves', () => {
    assert.equal(areaBetween([[1, 2, 3], [4, 5, 6], null, [7, 8, 9]]), 'M1,3L4,6L4,5L1,2ZM7,9L7,8Z');
  });
});
