import assert from 'node:assert/strict';
import { findingsIn } from '../../../support/findings';

const packs = '[pack.a]\nchemistry = lipo\ncells = 4\n[pack.b]\nchemistry = lipo\ncells = 4\n';

function told(text: string, start: string): readonly (string | null)[] {
  return findingsIn(text)
    .filter((finding) => finding.id.startsWith(start))
    .map((finding) => finding.pack);
}

describe('rules about the craft, where a pack has settings of its own', () => {
  it('find what only one pack sets', () => {
    const spin = '[motor]\nspin = inward\n[esc]\nspin = inward\n[esc @ b]\nspin = outward\n';
    assert.deepEqual(told(packs + spin, 'turn/spin-'), ['b']);
  });

  it('stay silent where the only pack sets what they miss', () => {
    const craft = '[craft]\nname = "x"\n[pack.a]\ncells = 4\n';
    assert.equal(told(craft, 'safe/no-arm-switch').length, 1);
    const set = `${craft}[switch.arm @ a]\nchannel = 5\non = 1750..2050 us\n`;
    assert.deepEqual(told(set, 'safe/no-arm-switch'), []);
  });

  it('tell once what holds for every pack', () => {
    const spin = '[motor]\nspin = inward\n[esc]\nspin = outward\n[power @ b]\nwarn-cell = 3.4 V\n';
    assert.deepEqual(told(packs + spin, 'turn/spin-'), [null]);
  });
});
