import { strict as assert } from 'node:assert';
import {
  dimension,
  divided,
  isPlain,
  multiplied,
  plain,
  raised,
  sameDimension,
  spelledOut,
} from '../../../server/src/units/dimension';

const time = dimension({ time: 1 });
const length = dimension({ length: 1 });

describe('a dimension', () => {
  it('is the same whichever way it was come by', () => {
    const speed = divided(length, time);
    assert.ok(sameDimension(speed, dimension({ length: 1, time: -1 })));
    assert.ok(sameDimension(multiplied(speed, time), length));
    assert.ok(!sameDimension(speed, length));
  });

  it('is gone when everything cancels out', () => {
    assert.ok(isPlain(divided(length, length)));
    assert.ok(isPlain(plain));
    assert.ok(isPlain(raised(length, 0)));
    assert.ok(!isPlain(time));
  });

  it('has no negative zero in its key, which would keep like from like', () => {
    assert.equal(raised(plain, -1).key, plain.key);
    assert.equal(divided(plain, plain).key, plain.key);
    assert.equal(raised(raised(time, -1), -1).key, time.key);
  });

  it('has a root: that of an area is a length', () => {
    assert.ok(sameDimension(raised(raised(length, 2), 0.5), length));
  });

  it('is spelled out for a person when it has no name', () => {
    assert.equal(spelledOut(plain), 'a plain number');
    assert.equal(spelledOut(dimension({ time: -2, length: 1 })), 'a quantity in time^-2 · length');
  });
});
