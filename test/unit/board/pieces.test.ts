import assert from 'node:assert/strict';
import { profileOf } from '../../../server/src/board/profile/profile';
import { piecesOf } from '../../../server/src/board/writing/write-text';
import { testCatalog } from '../../support/catalog';

describe('a text for a board that reads slowly (K03)', () => {
  const board = testCatalog.board('heron');
  const profile = board === undefined ? null : profileOf(board);
  assert.ok(profile !== null);
  const pace = { lines: 40, pause: '1 s' };
  const slow = { ...profile, text: { ...profile.text, pace } };
  const lines = Array.from({ length: 1500 }, (_, index) => `line ${index}\n`);

  it('comes in pieces of as many lines as it takes at once, none lost and none twice', () => {
    const pieces = piecesOf(slow, { lines });
    assert.equal(pieces.length, Math.ceil(1500 / 40));
    assert.ok(pieces.every((piece) => piece.trimEnd().split('\n').length <= 40));
    assert.equal(pieces.join(''), lines.join(''));
  });

  it('comes in pieces that any board takes where nobody has said how many lines it does', () => {
    const { pace: _, ...text } = slow.text;
    const pieces = piecesOf({ ...slow, text }, { lines });
    assert.equal(pieces.length, 3);
    assert.equal(pieces.join(''), lines.join(''));
  });
});
