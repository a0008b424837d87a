import { strict as assert } from 'node:assert';
import { makeScript } from '../../../server/src/board/layer/make-script';
import { learnedProfile } from '../../../server/src/board/learn/learned-profile';
import { readListing } from '../../../server/src/board/listing/read-listing';
import { lookOf } from '../../../server/src/board/listing/value-look';
import { profileOf } from '../../../server/src/board/profile/profile';
import { testCatalog } from '../../support/catalog';
import { confirmed } from '../../support/confirmed';

describe('numbers with a mark between them', () => {
  for (const [value, between, items] of [
    ['1700..2100', '..', ['1700', '2100']],
    ['-20..35.5', '..', ['-20', '35.5']],
    ['1700-2100', '-', ['1700', '2100']],
    ['1700 – 2100', ' – ', ['1700', '2100']],
    ['1700 to 2100', ' to ', ['1700', '2100']],
    ['45/80/30', '/', ['45', '80', '30']],
  ] as const)
    it(`are several: ${value}`, () => assert.deepEqual(lookOf(value), { kind: 'list', between, items }));

  for (const value of ['2026-11-03', '2026-11', '1/1024', '-5', 'hall-to-hall', '3 to see', '12..3', 'a/b/c'])
    it(`are not made of ${value}`, () => assert.notEqual(lookOf(value).kind, 'list'));

  for (const ends of ['1700..2100', '1700 - 2100', '1700 to 2100'])
    it(`are the ends of a switch's range: ${ends}`, () => {
      const text = `wake channel = 5\nwake span = ${ends}\nidle = 5\n`;
      const listing = readListing(text, null);
      const said = confirmed(['wake span=switch.arm.on unit us']);
      const learned = learnedProfile(listing, 'kelp', said, testCatalog) ?? assert.fail();
      const script = makeScript(profileOf(learned.profile), testCatalog, text).text;
      assert.match(script, /\[switch\.arm\]\non = 1700\.\.2100 us\n/);
    });
});
