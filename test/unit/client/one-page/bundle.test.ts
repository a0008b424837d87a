import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { strToU8, zipSync } from 'fflate';
import { bundleOf, textsIn } from '../../../../client/one-page/bundle';

describe('a bundle of scripts', () => {
  it('gives back what it was made of', () => {
    const name = fc.stringMatching(/^[a-z]{1,8}\.craft$/);
    const texts = fc.uniqueArray(fc.tuple(name, fc.string({ unit: 'grapheme' })), {
      selector: ([path]) => path,
      maxLength: 5,
    });
    fc.assert(
      fc.property(texts, (all) => assert.deepEqual(new Map(textsIn(bundleOf(all))?.texts), new Map(all))),
      { numRuns: 30 },
    );
  });

  it('puts nothing outside of the folder, makes no text of what is none, and names what it leaves out', () => {
    const bytes = zipSync({
      '../out.craft': strToU8('x'),
      '/root.craft': strToU8('x'),
      'boards/': new Uint8Array(),
      'boards/wren.json': strToU8('{}'),
      'photo.png': new Uint8Array([0x89, 0x50, 0x4e, 0x47]),
    });
    assert.deepEqual(textsIn(bytes), {
      texts: [['boards/wren.json', '{}']],
      others: ['../out.craft', '/root.craft', 'photo.png'],
    });
  });

  it('says of what is no bundle that it is none', () => {
    assert.equal(textsIn(strToU8('[craft]\nname = "Wren"\n')), null);
    const cut = bundleOf([['wren.craft', '[craft]\n']]).subarray(0, 40);
    assert.equal(textsIn(cut), null);
  });
});
