import assert from 'node:assert/strict';
import { readBoard } from '../../../../server/src/additions/read-board';
import { learnedProfile } from '../../../../server/src/board/learn/learned-profile';
import { settingName } from '../../../../server/src/board/learn/learned-settings';
import { profileText } from '../../../../server/src/board/learn/profile-text';
import { type Confirmation, confirmedAs, nothingConfirmed } from '../../../../server/src/board/learn/said';
import { readListing } from '../../../../server/src/board/listing/read-listing';
import { workspaceWithBoard } from '../../../support/additions';
import { testCatalog } from '../../../support/catalog';
import { listings } from '../../../support/listings';

const capture = [
  '* tern bench listing',
  'calm/first-cut := 225',
  'calm/first-kind := steep (one of: none, gentle, steep)',
  'calm/idle-share := 65',
  'levers/live-from := 1750',
  'levers/live-to := 2050',
  'self/blink := yes',
  'self/blink-pitch := 440 (100..2000)',
  "self/craft-name := 'Sandmartin'",
].join('\n');

function made(confirmed: Readonly<Record<string, string>>) {
  const skeleton = learnedProfile(
    readListing(capture, null),
    'tern',
    confirmedAs(Object.entries(confirmed)),
    testCatalog,
  );
  assert.ok(skeleton);
  return skeleton;
}

/** What is wrong with a profile as a file of the workspace. */
function problems(profile: unknown): readonly string[] {
  const read = readBoard(JSON.stringify(profile), 'tern');
  return read.kind === 'broken' ? read.problems.map(({ message }) => message) : [];
}

describe('a profile made from a capture', () => {
  it('is a profile without a fault, of every shape of listing', () => {
    for (const { text, shape } of listings(60, true)) {
      const skeleton = learnedProfile(readListing(text, null), 'tern', nothingConfirmed, testCatalog);
      assert.ok(skeleton, shape);
      assert.deepEqual(problems(skeleton.profile), [], shape);
    }
  });

  it('tells names apart that differ in case alone', () => {
    const text = 'gainRoll := 5\ngainroll := 6\nGainRoll := 7\n';
    const skeleton = learnedProfile(readListing(text, null), 'tern', nothingConfirmed, testCatalog);
    assert.deepEqual(
      skeleton?.profile.settings.map(({ name }) => name),
      ['gainRoll', 'gainroll', 'GainRoll'],
    );
    assert.deepEqual(problems(skeleton?.profile), []);
  });

  it('takes nothing for a parameter that was not confirmed', () => {
    const { profile, mapped } = made({});
    assert.deepEqual(mapped, []);
    assert.equal(profile.settings.length, 8);
    assert.ok(profile.settings.every(({ means }) => means === undefined));
    assert.equal(profile.hardware, undefined);
    assert.deepEqual(problems(profile), []);
  });

  it('names what was confirmed, with the scale where only one makes it usual', () => {
    const { profile, mapped } = made({ 'calm/idle-share': 'motor.idle' });
    assert.deepEqual(mapped, ['calm/idle-share']);
    const row = profile.settings.find(({ name }) => name === 'idle-share');
    assert.deepEqual([row?.means, row?.counts], ['motor.idle', { scale: 10, step: '0.1 %' }]);
    assert.deepEqual(problems(profile), []);
  });

  it('takes what more than one scale makes usual by its role, and no word that nobody has spelled', () => {
    const { profile, mapped, outcomes } = made({
      'calm/first-cut': 'control.feedforward-cutoff',
      'calm/first-kind': 'derivative.input',
    });
    assert.deepEqual(mapped, []);
    const rows = profile.settings.filter(({ group }) => group === 'calm');
    assert.deepEqual(
      rows.map(({ means, role }) => [means, role]),
      [
        [undefined, 'control.feedforward-cutoff'],
        [undefined, undefined],
        [undefined, undefined],
      ],
    );
    assert.deepEqual(
      outcomes.map(({ key, is, why }) => [key, is, why]),
      [
        ['calm/first-cut', 'role', 'more than one way of counting gives usual values'],
        ['calm/first-kind', 'left', 'nobody has said which word of it “steep” is'],
      ],
    );
    assert.deepEqual(problems(profile), []);
  });

  it('spells the words of a list in all its settings as they were said of one', () => {
    const text = [
      'out1 job = FL',
      'out2 job = FR',
      'out3 job = RL',
      'out4 job = RR',
      'picture band = R',
    ].join('\n');
    const spelled = { 'front-left': 'FL', 'front-right': 'FR', 'rear-left': 'RL', 'rear-right': 'RR' };
    const settings = new Map<string, readonly Confirmation[]>([
      ['out1 job', [{ means: 'motor.order', parts: [{ entry: 1 }], spelled }]],
      ...[2, 3, 4].map(
        (entry) => [`out${entry} job`, [{ means: 'motor.order', parts: [{ entry }] }]] as const,
      ),
      ['picture band', [{ means: 'video.band' }]],
    ]);
    const skeleton = learnedProfile(
      readListing(text, null),
      'tern',
      { ...nothingConfirmed, settings },
      testCatalog,
    );
    assert.deepEqual(
      skeleton?.outcomes.map(({ key, is, conversions }) => [key, is, conversions[0]?.preview.quantity]),
      [
        ['out1 job', 'taken', '[front-left]'],
        ['out2 job', 'taken', '[front-right]'],
        ['out3 job', 'taken', '[rear-left]'],
        ['out4 job', 'taken', '[rear-right]'],
        // A letter is a word of the parameter in either case.
        ['picture band', 'taken', 'r'],
      ],
    );
  });

  it('holds a range in its two settings, the lower number first', () => {
    const both = { 'levers/live-to': 'signal-loss.switch-on', 'levers/live-from': 'signal-loss.switch-on' };
    const rows = made(both).profile.settings.filter(({ group }) => group === 'levers');
    assert.deepEqual(
      rows.map(({ name, means, as }) => [name, means, as]),
      [
        ['live-from', 'signal-loss.switch-on', 'low'],
        ['live-to', 'signal-loss.switch-on', 'high'],
      ],
    );
    assert.equal(made({ 'levers/live-to': 'signal-loss.switch-on' }).mapped.length, 0);
  });

  it('keeps what the listing states of words and ranges', () => {
    const { settings } = made({}).profile;
    const kind = settings.find(({ name }) => name === 'first-kind');
    assert.deepEqual(kind?.words, ['none', 'gentle', 'steep']);
    const pitch = settings.find(({ name }) => name === 'blink-pitch');
    assert.deepEqual(pitch?.range, ['100', '2000']);
  });

  it('works as a board of the workspace: its text is read with it', () => {
    const { profile } = made({ 'calm/first-cut': 'control.feedforward-cutoff' });
    const additions = workspaceWithBoard('boards/tern.json', profile);
    assert.deepEqual(additions.problems.get('boards/tern.json'), []);
    assert.ok(additions.catalog.board('tern'));
  });

  it('keeps a name that holds a tab as it stands', () => {
    const read = readListing('meadow\teager-otter\t4574\r', null);
    const profile = learnedProfile(read, 'tern', nothingConfirmed, testCatalog)?.profile;
    assert.deepEqual(problems(profile), []);
  });

  it('keeps no captured value, and no statement that its own capture breaks', () => {
    const text = 'calm/first-cut := 225 (0..100)\ncalm/second-cut := 47 (0..100)\n';
    const profile = learnedProfile(readListing(text, null), 'tern', nothingConfirmed, testCatalog)?.profile;
    assert.deepEqual(
      profile?.settings.map(({ name, range }) => [name, range]),
      [
        ['first-cut', undefined],
        ['second-cut', ['0', '100']],
      ],
    );
    assert.doesNotMatch(JSON.stringify(profile), /225|47/);
  });

  it('is written with one row a setting', () => {
    const { profile } = made({});
    const text = profileText(profile);
    assert.deepEqual(JSON.parse(text), profile);
    for (const { name } of profile.settings)
      assert.equal(text.split('\n').filter((line) => line.includes(JSON.stringify(name))).length, 1, name);
  });

  it('has names for its settings that tell group, setting and which of several', () => {
    assert.equal(settingName({ groups: [], name: 'cut', occurrence: 1 }), 'cut');
    assert.equal(settingName({ groups: ['calm', 'gyro'], name: 'cut', occurrence: 2 }), 'calm/gyro/cut#2');
  });
});
