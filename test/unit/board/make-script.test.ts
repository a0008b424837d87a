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

  it('has what its text accepts behind what it is accepted of, whether in a comment or beside', () => {
    const wren = profileOf(testCatalog.board('wren') ?? assert.fail('no wren'));
    const tilt = 'wake/arming-tilt-most <- 180';
    const id = 'safe/arms-at-any-tilt';
    const inComment = `~ by hand\n~ accept ${id}: starts from a hook\n${tilt}`;
    assert.match(
      makeScript(wren, testCatalog, inComment).text,
      /\[arming\]\n# by hand\ntilt-limit = 180 deg # accept safe\/arms-at-any-tilt: starts from a hook\n$/,
    );
    const setting = { groups: ['wake'], name: 'arming-tilt-most', occurrence: 1 };
    const accepted = [
      { setting, check: id, reason: 'starts from a hook' },
      { setting: { ...setting, name: 'gone' }, check: id, reason: 'was there once' },
    ];
    const { text } = makeScript(wren, testCatalog, tilt, { board: null, accepted, fault: null });
    assert.match(text, /^tilt-limit = 180 deg # accept safe\/arms-at-any-tilt: starts from a hook$/m);
    assert.match(text, /^# not taken over: accept safe\/arms-at-any-tilt of wake gone: was there once$/m);
  });
});
