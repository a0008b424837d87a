import assert from 'node:assert/strict';
import { findingsIn } from '../../../support/findings';

const motor = '[motor]\ncells-limit = 4\n';
const pack = (name: string, cells: number) => `[pack.${name}]\nchemistry = lipo\ncells = ${cells}\n`;

/** What was found about too many cells: the pack and the beginning of the sentence. */
function told(text: string): readonly (readonly [string | null, boolean])[] {
  return findingsIn(text)
    .filter(({ id }) => id === 'turn/motor-cells')
    .map(({ pack: name, message }) => [name, message.startsWith('With pack')]);
}

describe('which packs a finding holds for', () => {
  it('is not said where there is one pack', () => {
    assert.deepEqual(told(`${motor}${pack('only', 6)}`), [[null, false]]);
  });

  it('is said where some packs are concerned', () => {
    assert.deepEqual(told(`${motor}${pack('light', 4)}${pack('heavy', 6)}`), [['heavy', true]]);
  });
});
