import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import type { ListedSetting, Listing } from '../../../server/src/board/listing/listing';
import { disagreements } from '../../support/listing-shapes/agreement';
import { boardOf, plans } from '../../support/listing-shapes/generate';
import { perfectReading } from '../../support/listing-shapes/perfect';
import { printed } from '../../support/listing-shapes/print';

type Spoil = (setting: ListedSetting) => readonly ListedSetting[];

const moved = ({ start, end }: { readonly start: number; readonly end: number }) => ({
  start: start - 1,
  end: end - 1,
});

/** Each way in which a reading can get one setting wrong. */
const spoils: Readonly<Record<string, Spoil>> = {
  'one left out': () => [],
  'one read twice': (one) => [one, { ...one, at: { ...one.at, name: moved(one.at.name) } }],
  'another value': (one) => [{ ...one, value: `${one.value}1` }],
  'another name': (one) => [{ ...one, name: `${one.name}1` }],
  'one group more': (one) => [{ ...one, groups: ['ghost', ...one.groups] }],
  'another occurrence': (one) => [{ ...one, occurrence: one.occurrence + 1 }],
  'a range that nobody said': (one) => [
    {
      ...one,
      stated: {
        range: { low: '-7', high: '7' },
        words: null,
        default: null,
        unit: one.stated?.unit ?? null,
        remark: null,
        at: one.at.name,
      },
    },
  ],
};

const listings = fc.tuple(plans().map(boardOf), fc.nat(199));

describe('what holds a reading against what was printed', () => {
  it('says nothing of one that is right', () => {
    fc.assert(
      fc.property(listings, ([board]) => {
        const listing = printed(board);
        assert.deepEqual(disagreements(board.shape, listing, perfectReading(listing)), []);
      }),
      { seed: 7, numRuns: 200 },
    );
  });

  for (const [what, spoil] of Object.entries(spoils)) {
    it(`sees ${what}`, () => {
      fc.assert(
        fc.property(listings, ([board, place]) => {
          const listing = printed(board);
          const right = perfectReading(listing);
          const index = place % right.settings.length;
          const settings = right.settings.flatMap((one, at) => (at === index ? spoil(one) : [one]));
          const wrong: Listing = { ...right, settings };
          assert.notDeepEqual(disagreements(board.shape, listing, wrong), []);
        }),
        { seed: 7, numRuns: 100 },
      );
    });
  }
});
