import { strict as assert } from 'node:assert';
import { makeScript } from '../../../server/src/board/layer/make-script';
import { learnedProfile } from '../../../server/src/board/learn/learned-profile';
import { readListing } from '../../../server/src/board/listing/read-listing';
import { profileOf } from '../../../server/src/board/profile/profile';
import { testCatalog } from '../../support/catalog';
import { confirmed } from '../../support/confirmed';

describe('a script made from a capture', () => {
  it('has a value in the unit that its line states, where that is another one than its profile knows', () => {
    const said = confirmed(['calm cut=gyro.filter.1.cutoff unit Hz']);
    const listing = readListing('calm cut = 900 Hz\nsoft cut = 120 Hz\nidle = 5', null);
    const learned = learnedProfile(listing, 'dipper', said, testCatalog) ?? assert.fail();
    const profile = profileOf(learned.profile);
    const { text } = makeScript(profile, testCatalog, 'calm cut = 1.2 kHz\nsoft cut = 120 Hz\nidle = 5');
    assert.match(text, /\[gyro\.filter\.1\]\ncutoff = 1200 Hz\n/);
  });
});
