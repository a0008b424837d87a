import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { packed } from '../../../server/build/packed';
import { unpacked } from '../../../server/src/host/unpacked';
import { withScratch } from '../../support/scratch';

describe('a text that the build packs', () => {
  it('is unpacked as it was, in whatever script', () =>
    withScratch({}, async (scratch) => {
      fc.assert(
        fc.property(fc.string({ unit: 'grapheme' }), (text) => {
          scratch.write('text.br', Buffer.from(packed(text)));
          return unpacked('text.br', scratch.path) === text;
        }),
        { numRuns: 50 },
      );
    }));

  it('is a quarter as long where it repeats itself as the catalogue does', () => {
    const text = JSON.stringify(
      Array.from({ length: 500 }, (_, index) => ({ name: `row-${index}`, unit: 'Hz' })),
    );
    assert.ok(packed(text).length < text.length / 4);
  });

  it('is told to be missing, or broken, with its path and what to do', () =>
    withScratch({ 'broken.br': 'no such thing' }, async (scratch) => {
      for (const name of ['missing.br', 'broken.br'])
        assert.throws(
          () => unpacked(name, scratch.path),
          ({ message }: Error) =>
            message.includes(scratch.file(name)) && message.includes('install propsoff'),
        );
    }));
});
