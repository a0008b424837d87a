import { strict as assert } from 'node:assert';
import { findUnitSymbol, unitTable } from '../../../server/src/units/unit-table';

describe('the table of units', () => {
  it('holds every symbol once, each with a name of its own', () => {
    assert.equal(new Set(unitTable.map(({ symbol }) => symbol)).size, unitTable.length);
    assert.equal(new Set(unitTable.map(({ name }) => name)).size, unitTable.length);
  });

  it('has a positive factor for each', () => {
    for (const { symbol, factor } of unitTable) assert.ok(factor > 0 && Number.isFinite(factor), symbol);
  });

  it('tells capital and small letters apart: mW is no MW, Hz no hz', () => {
    for (const wrong of ['hz', 'HZ', 'v', 'MW', 'mah', 'KHz', 'Deg', 'a']) {
      assert.equal(findUnitSymbol(wrong), undefined, wrong);
    }
  });

  it('keeps C for the discharge rating of a pack, apart from frequencies', () => {
    const rating = findUnitSymbol('C');
    assert.equal(rating?.family, 'discharge-rating');
    assert.equal(rating?.dimension.key, findUnitSymbol('Hz')?.dimension.key);
    assert.equal(findUnitSymbol('Hz')?.family, undefined);
    assert.equal(findUnitSymbol('baud')?.family, 'symbol-rate');
  });

  it('has an angle as a dimension of its own, so that deg/s is not Hz', () => {
    assert.notEqual(findUnitSymbol('rpm')?.dimension.key, findUnitSymbol('Hz')?.dimension.key);
  });
});
