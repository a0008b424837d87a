import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { packed } from '../../../server/build/packed';
import { unpacked } from '../../../server/src/host/unpacked';

describe('a text that the build packs', () => {
  it('is unpacked as it was, in whatever script', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => unpacked(packed(text)) === text),
      { numRuns: 50 },
    );
  });

  it('is a quarter as long where it repeats itself as the catalogue does', () => {
    const text = JSON.stringify(
      Array.from({ length: 500 }, (_, index) => ({ name: `row-${index}`, unit: 'Hz' })),
    );
    assert.ok(packed(text).length < text.length / 4);
  });
});
