import { strict as assert } from 'node:assert';
import { readListing } from '../../../../server/src/board/listing/read-listing';

const texts: readonly (readonly [what: string, text: string])[] = [
  [
    'a note about a flight',
    'Yesterday I flew the new quad in the park. It was windy, and the battery was cold.\nThe left front motor sounded rough after the second pack.\nI think the bearing is gone. Tomorrow I will change it and fly again.\n',
  ],
  [
    'a letter',
    'Dear Anna,\n\nthank you for your letter. We had a lovely time: the children played all day.\nPlease give my regards to Tom.\n\nYours,\nBea\n',
  ],
  [
    'minutes of a meeting',
    'Meeting notes 12 May\n\n- Tom brings the charger\n- Anna asks the landowner\n- next flying day: 3 June at 10:00\n\nWe agreed that nobody flies over the road.\n',
  ],
  [
    'steps to take',
    'Step 1: unplug the battery.\nStep 2: remove the propellers.\nStep 3: connect the cable.\nThen wait for the light to turn green.\n',
  ],
  [
    'numbers told in sentences',
    'Our rates are: roll 600, pitch 600 and yaw 400. I like them.\nThe filter sits at 120 Hz because the motors are noisy.\n',
  ],
  ['another language', 'Das Wetter war gut. Wir sind geflogen.\nDer Akku war leer, und wir gingen heim.\n'],
  ['one sentence', 'It crashed again, and I do not know why.\n'],
];

const listings: readonly (readonly [what: string, text: string, names: readonly string[]])[] = [
  [
    'settings said in sentences of one kind',
    'The tilt limit is 25 degrees\nThe idle power is 5 percent\nThe failsafe action is hold\nThe motor protocol is fast\n',
    ['The tilt limit', 'The motor protocol'],
  ],
  [
    'settings with a sentence above each',
    'The largest tilt of the craft.\ntilt_limit = 25\nWhat the motors get when the stick is down.\nidle_power = 55\nWhat it does when the link is lost.\nfailsafe = hold\n',
    ['tilt_limit', 'idle_power', 'failsafe'],
  ],
  [
    'settings with what a pilot wrote before them',
    'Here is what my board printed when I asked it, I hope that this is all of it\n\ntilt_limit = 25\nidle_power = 55\nfailsafe = hold\n',
    ['tilt_limit', 'idle_power', 'failsafe'],
  ],
  [
    'settings of plain words',
    'tilt limit 25\nidle power 55\nfailsafe hold\nmotor stop off\n',
    ['tilt limit', 'idle power', 'failsafe', 'motor stop'],
  ],
  ['one setting', 'tilt_limit = 25\n', ['tilt_limit']],
];

describe('what is no listing', () => {
  for (const [what, text] of texts)
    it(`has no settings: ${what}`, () => {
      const { settings, refused } = readListing(text, null);
      assert.deepEqual(settings, []);
      assert.equal(refused, 'The text is sentences: no line of it looks like a setting.');
    });

  for (const [what, text, names] of listings)
    it(`is told from ${what}`, () => {
      const { settings, refused } = readListing(text, null);
      assert.equal(refused, null);
      const found = new Set(settings.map(({ name }) => name));
      for (const name of names) assert.ok(found.has(name), `${name} of ${[...found].join(', ')}`);
    });
});
