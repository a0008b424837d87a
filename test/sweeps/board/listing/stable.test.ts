import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { readListing } from '../../../../server/src/board/listing/read-listing';
import { disagreements } from '../../../support/listing-shapes/agreement';
import { withAnotherValue, withoutSetting } from '../../../support/listing-shapes/edits';
import { boardOf, plans } from '../../../support/listing-shapes/generate';
import { printed } from '../../../support/listing-shapes/print';

const listings = fc.tuple(plans().map(boardOf), fc.nat(9999));
const runs = { seed: 11, numRuns: 120 };

/** Whether a changed listing is read rightly by the forms of the one before it. */
function holdsAfter(
  change: (board: ReturnType<typeof boardOf>, place: number) => ReturnType<typeof boardOf> | null,
) {
  return fc.property(listings, ([board, place]) => {
    const before = printed(board);
    const read = readListing(before.text, null);
    const index = place % board.items.length;
    const changed = change(board, index);
    // How a word is turned off, only a listing in which one is off can tell.
    const isUntold =
      board.items[index]?.value.look === 'presence' &&
      read.forms.lines.every(({ negation }) => negation === undefined);
    fc.pre(!isUntold && changed !== null && disagreements(board.shape, before, read).length === 0);
    const after = printed(changed);
    assert.deepEqual(disagreements(changed.shape, after, readListing(after.text, read.forms)), []);
  });
}

describe('the forms that were found', () => {
  it('read the listing with another value in it', () => {
    fc.assert(
      holdsAfter((board, index) => {
        const changed = withAnotherValue(board, index, index);
        return changed === null ? null : { ...board, ...changed };
      }),
      runs,
    );
  });

  it('read it without one of its settings', () => {
    fc.assert(
      holdsAfter((board, index) =>
        board.items.length < 4 ? null : { ...board, ...withoutSetting(board, index) },
      ),
      runs,
    );
  });

  it('keep numbers that are the board’s own, though a line is spaced as behind a tool’s counter', () => {
    const lines = ['[1] tilt: 2', '[2] reach:', '[3] pace: 4', '[4] lamp: 5'];
    const { forms } = readListing(lines.join('\n'), null);
    const { settings, left } = readListing(lines.with(2, '[3]  pace: 4').join('\n'), forms);
    assert.deepEqual(
      settings.map(({ name }) => name),
      ['tilt', 'reach', 'pace', 'lamp'],
    );
    assert.deepEqual(left, []);
  });
});
