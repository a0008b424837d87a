import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import type { Listing, Stretch } from '../../../server/src/board/listing/listing';
import { readListing } from '../../../server/src/board/listing/read-listing';
import { boardForms } from '../../../server/src/catalog/model/board-forms';
import { boardOf, plans } from '../../support/listing-shapes/generate';
import { printed } from '../../support/listing-shapes/print';
import { capture } from '../inputs/board-texts';
import { anyText, slipped } from '../inputs/texts';
import { target } from '../target';

const texts = fc.oneof(
  { weight: 1, arbitrary: anyText },
  { weight: 1, arbitrary: capture },
  { weight: 1, arbitrary: fc.array(anyText, { maxLength: 12 }).map((lines) => lines.join('\n')) },
  { weight: 3, arbitrary: slipped(plans().map((plan) => printed(boardOf(plan)).text)) },
);

/** Texts whose forms nobody told. */
export const listing = target<string>(
  {
    name: 'listing',
    share: 4,
    holds: 'what a text says has its place in it, and its own forms read it in the same way',
  },
  texts,
  (text) => {
    const read = readListing(text, null);
    holdsPlaces(read);
    assert.deepEqual(boardForms.parse(read.forms), read.forms);
    assert.deepEqual(readListing(text, read.forms).settings, read.settings);
  },
);

function holdsPlaces({ text, settings, left, comments, echoes, understood }: Listing): void {
  const lies = ({ start, end }: Stretch) => assert.ok(0 <= start && start <= end && end <= text.length);
  let before = 0;
  for (const { at } of settings) {
    lies(at.name);
    lies(at.value);
    // Names and values of two settings share nothing; within one, the value may come first.
    const start = Math.min(at.name.start, at.value.start);
    assert.ok(start >= before || at.name.start === at.name.end, `${start} before ${before}`);
    before = Math.max(before, at.name.end, at.value.end);
  }
  for (const stretch of [...left.map(({ at }) => at), ...comments, ...echoes]) lies(stretch);
  assert.ok(understood >= 0 && understood <= 1);
}
