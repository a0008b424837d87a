import { strict as assert } from 'node:assert';
import { belowFloor, raised } from '../coverage.mjs';

const reached = { lines: 97.4, branches: 88, functions: 99.1 };

describe('the floor of the coverage', () => {
  it('fails what lies below it, and says by how much', () => {
    assert.deepEqual(belowFloor({ lines: 97.5, branches: 88, functions: 90 }, reached), [
      'lines: 97.4 %, and the floor is 97.5 %',
    ]);
  });

  it('rises to a little below what was reached', () => {
    assert.deepEqual(raised({}, reached), { lines: 97.1, branches: 87.7, functions: 98.8 });
  });

  it('never sinks', () => {
    const floor = { lines: 99, branches: 10, functions: 99 };
    assert.deepEqual(raised(floor, reached), { lines: 99, branches: 87.7, functions: 99 });
  });
});
