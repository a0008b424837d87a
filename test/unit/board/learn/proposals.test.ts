import assert from 'node:assert/strict';
import { learnedSettings } from '../../../../server/src/board/learn/learned-settings';
import { meansOf, type Proposal, type StandsFor } from '../../../../server/src/board/learn/propose/proposal';
import { proposals } from '../../../../server/src/board/learn/propose/propose';
import { readListing } from '../../../../server/src/board/listing/read-listing';
import { testCatalog } from '../../../support/catalog';
import { boardNames } from '../../../support/named-listings/board-names';
import {
  listingText,
  type NamedSetting,
  namedIn,
  numbered,
  ownSettings,
  shortened,
} from '../../../support/named-listings/named-listings';

/** Shares in per cent. A score may rise and not fall: who makes it better raises the line here. */
interface Score {
  readonly first: number;
  readonly inThree: number;
  readonly wrongButSure: number;
}

function proposed(settings: readonly NamedSetting[]): readonly (Proposal | null)[] {
  const learned = learnedSettings(readListing(listingText(settings), null));
  assert.equal(learned.length, settings.length, 'the listing is read whole');
  return proposals(learned, testCatalog);
}

function asText({ parameter, member, part }: StandsFor): string {
  const parts = part === null ? [] : [typeof part === 'string' ? part : JSON.stringify(part)];
  return [parameter, ...(member === null ? [] : [member]), ...parts].join(' ');
}

function scoreOf(settings: readonly NamedSetting[]): Score {
  const all = proposed(settings);
  const share = (isOne: (proposal: Proposal | null, means: string | null) => boolean) =>
    (100 * settings.filter(({ means }, index) => isOne(all[index] ?? null, means)).length) / settings.length;
  const isRight = (one: Proposal | null, means: string | null) => one !== null && asText(one) === means;
  return {
    first: share(isRight),
    inThree: share(
      (one, means) => one !== null && [one, ...one.rivals].some((other) => asText(other) === means),
    ),
    wrongButSure: share((one, means) => one?.sureness === 'sure' && !isRight(one, means)),
  };
}

function holds(naming: string, settings: readonly NamedSetting[], least: Score): void {
  it(`are found for names ${naming}`, function () {
    const { first, inThree, wrongButSure } = scoreOf(settings);
    const told = `${first.toFixed(1)} % right first, ${inThree.toFixed(1)} % in three, ${wrongButSure.toFixed(1)} % wrong but sure`;
    if (this.test !== undefined) this.test.title += ` (${settings.length}: ${told})`;
    assert.ok(first >= least.first && inThree >= least.inThree && wrongButSure <= least.wrongButSure, told);
  });
}

describe('what the settings of a listing may stand for', () => {
  const english = namedIn('english');
  holds('in plain English', english, { first: 98, inThree: 99, wrongButSure: 0 });
  holds('of a small board', boardNames('wren'), { first: 96, inThree: 96, wrongButSure: 0 });
  holds('of a large board', boardNames('heron'), { first: 94, inThree: 97, wrongButSure: 0 });
  holds('shortened, in camel case', shortened(english, 'camel'), { first: 95, inThree: 97, wrongButSure: 0 });
  holds('shortened, with underscores', shortened(english, 'snake'), {
    first: 94,
    inThree: 96,
    wrongButSure: 0,
  });
  holds('in German', namedIn('german'), { first: 98, inThree: 99, wrongButSure: 0 });
  holds('in French', namedIn('french'), { first: 97, inThree: 99, wrongButSure: 0 });

  it('is never sure for names that are numbers', () => {
    assert.deepEqual(
      proposed(numbered(english)).filter((one) => one?.sureness === 'sure'),
      [],
    );
  });

  it('is never sure for settings that a board has for itself', () => {
    assert.deepEqual(
      proposed(ownSettings()).filter((one) => one?.sureness === 'sure'),
      [],
    );
  });
});

describe('two filters that a board numbers each by itself', () => {
  it('are not both surely the first of the script', () => {
    const lines = ['gyro.lp1.type = first', 'gyro.lp1.cutoff = 200', 'gyro.notch1.centre = 210'];
    const settings = learnedSettings(readListing([...lines, 'gyro.notch1.width = 30'].join('\n'), null));
    const all = proposals(settings, testCatalog);
    const sure = settings.flatMap(({ groups, name }, at) => {
      const one = all[at];
      const isFirst = one != null && meansOf(one).startsWith('gyro.filter.1.');
      return isFirst && one.sureness === 'sure' ? [[...groups, name].join('.')] : [];
    });
    assert.ok(sure.includes('gyro.lp1.cutoff'), sure.join());
    assert.ok(!sure.some((name) => name.startsWith('gyro.notch1')), sure.join());
  });
});

describe('several sets of the same settings', () => {
  const sets = (selector: string) =>
    [
      ...['<about>', selector],
      ...['<profile 1 "calm">', 'roll proportional: 36', 'roll integral: 25', 'yaw proportional: 50'],
      ...['<profile 2 "orchard">', 'roll proportional: 48', 'roll integral: 33', 'yaw proportional: 67'],
      ...['<profile 3 "rain">', 'roll proportional: 30', 'roll integral: 21', 'yaw proportional: 42'],
    ].join('\n');

  /** By group, what is proposed for its settings. */
  function proposedFor(text: string) {
    const settings = learnedSettings(readListing(text, null));
    const all = proposals(settings, testCatalog);
    return settings.flatMap(({ groups }, index) => {
      const one = all[index];
      return groups[0]?.startsWith('profile') === true && one != null ? [[groups[0], one] as const] : [];
    });
  }

  it('stand for something where a setting says that they are in use, and it says so', () => {
    const found = proposedFor(sets('active profile: 2'));
    assert.deepEqual([...new Set(found.map(([group]) => group))], ['profile 2 "orchard"']);
    assert.deepEqual(
      found.map(([, one]) => meansOf(one)),
      ['control.roll.proportional', 'control.roll.integral', 'control.yaw.proportional'],
    );
    for (const [, { why }] of found) assert.match(why, /“active profile” says that 2 is in use\.$/);
  });

  it('are all proposed where none does, as of outputs or filters, which are all in use', () => {
    for (const selector of ['active profile: 7', 'lamp shade: 2', 'active colour: 2'])
      assert.ok(new Set(proposedFor(sets(selector)).map(([group]) => group)).size > 1, selector);
  });
});
