import { strict as assert } from 'node:assert';
import { makeScript } from '../../../server/src/board/layer/make-script';
import { learnedProfile } from '../../../server/src/board/learn/learned-profile';
import { learnedSettings } from '../../../server/src/board/learn/learned-settings';
import { readListing } from '../../../server/src/board/listing/read-listing';
import { profileOf } from '../../../server/src/board/profile/profile';
import { testCatalog } from '../../support/catalog';
import { confirmed } from '../../support/confirmed';

/** Texts that have to put quotes around what is no text. */
const texts = {
  JSON: '{ "calm": { "cut": "150 Hz", "idle": "5.5 %", "tongue": "dshot600", "keel": "Old 3 A" } }',
  YAML: 'calm:\n  cut: "150 Hz"\n  idle: \'5.5 %\'\n  tongue: "dshot600"\n  keel: "Old 3 A"\n',
  XML: '<kelp><calm cut="150Hz" idle="5.5%" tongue="dshot600" keel="Old 3 A"/><deep hue="5"/></kelp>',
};

const said = [
  'calm/cut=gyro.filter.1.cutoff unit Hz',
  'calm/idle=motor.idle unit %',
  'calm/tongue=esc.signal',
  'calm/keel=craft.name',
];

describe('what stands in quotes', () => {
  for (const [form, text] of Object.entries(texts)) {
    const listing = readListing(text, null);

    it(`in ${form} is a number where it has a unit, and a text else`, () => {
      const looks = learnedSettings(listing).map(({ name, look, number }) => [name, look, number]);
      const [cut, idle, ...others] = looks;
      assert.deepEqual(
        [cut, idle],
        [
          ['cut', 'number', 150],
          ['idle', 'number', 5.5],
        ],
      );
      for (const [name, look] of others) assert.equal(look === 'number', name === 'hue', `${name} ${look}`);
    });

    it(`in ${form} is read as the numbers, words and texts that are meant`, () => {
      const learned = learnedProfile(listing, 'kelp', confirmed(said), testCatalog) ?? assert.fail();
      const script = makeScript(profileOf(learned.profile), testCatalog, text).text;
      assert.match(script, /\[craft\]\nname = "Old 3 A"\n/);
      assert.match(script, /\[esc\]\nsignal = dshot600\n/);
      assert.match(script, /\[gyro\.filter\.1\]\ncutoff = 150 Hz\n/);
      assert.match(script, /\[motor\]\nidle = 5\.5 %\n/);
    });
  }
});
