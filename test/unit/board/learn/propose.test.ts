import assert from 'node:assert/strict';
import { type LearnedSetting, learnedSettings } from '../../../../server/src/board/learn/learned-settings';
import { proposeParameters } from '../../../../server/src/board/learn/propose/ranked';
import { readListing } from '../../../../server/src/board/listing/read-listing';
import { namesOf } from '../../../../server/src/board/meaning/meanings';
import { Speller } from '../../../../server/src/board/meaning/spelling';
import { profileOf } from '../../../../server/src/board/profile/profile';
import { interpret } from '../../../../server/src/craft/interpret';
import { noNames } from '../../../../server/src/craft/line-check';
import type { Value } from '../../../../server/src/craft/value';
import { parseLine } from '../../../../server/src/language/parser';
import { type MeaningOnBoard, meaningsOn } from '../../../support/board-crafts';
import { testCatalog } from '../../../support/catalog';

/** The default, or the middle of what is usual, or the first word. */
function sampleOf({ found, meaning }: MeaningOnBoard): Value | null {
  const { parameter, usual } = found;
  const statement = parseLine(`value = ${parameter.default?.value ?? ''}`);
  if (statement.kind === 'setting' && statement.value !== null)
    return interpret(statement.value, found, noNames, null).value;
  const middle = usual === undefined ? 0 : (usual.low + usual.high) / 2;
  switch (parameter.kind) {
    case 'quantity':
      return { kind: 'quantity', value: middle, unit: parameter.unit };
    case 'count':
      return { kind: 'count', value: Math.round(middle) };
    case 'range':
      return { kind: 'range', low: usual?.low ?? 0, high: usual?.high ?? 1, unit: parameter.unit };
    case 'flag':
      return { kind: 'flag', value: true };
    case 'place':
      return { kind: 'place', row: 3, column: 4 };
    case 'curve':
      return {
        kind: 'curve',
        points: [
          { x: 0, y: 0 },
          { x: 1, y: 6 },
        ],
      };
    case 'text':
      return { kind: 'text', value: 'Sandmartin' };
    default: {
      const word = Object.keys(meaning.parts[0]?.setting.spelled ?? {})[0];
      return word === undefined ? null : { kind: 'word', value: word };
    }
  }
}

interface Ranked {
  readonly name: string;
  readonly right: string;
  /** From 0; -1: not among them. */
  readonly place: number;
  readonly first: string;
}

/** A setting as a listing would show it, with nothing stated. */
function settingOf(groups: readonly string[], name: string, value: string): LearnedSetting {
  const nowhere = { start: 0, end: 0 };
  const isQuoted = /^["'].*["']$/.test(value);
  const listing = readListing('', null);
  const setting = {
    groups,
    name,
    occurrence: 1,
    value,
    style: isQuoted ? ({ kind: 'quoted', mark: "'" } as const) : ({ kind: 'plain' } as const),
    at: { name: nowhere, value: nowhere },
    stated: null,
  };
  const [learned] = learnedSettings({ ...listing, settings: [setting] });
  if (learned === undefined) throw new Error('a setting of a listing is one');
  return learned;
}

function ranked(board: string): readonly Ranked[] {
  const found = testCatalog.board(board);
  const profile = found === undefined ? null : profileOf(found);
  assert.ok(profile);
  return meaningsOn(profile, testCatalog).flatMap((one) => {
    const value = sampleOf(one);
    const spelled = value === null ? null : new Speller(one.meaning, one.found, profile.manner).write(value);
    return (namesOf(profile, one.meaning, one.member) ?? []).map(({ groups, name }, part): Ranked => {
      const group = groups.join(' ');
      const text = spelled?.kind === 'texts' ? (spelled.texts[part] ?? '1') : 'word';
      const setting = settingOf(groups, name, text);
      const proposals = proposeParameters(setting, testCatalog).map(({ parameter }) => parameter);
      return {
        name: `${group} ${name}`,
        right: one.meaning.means,
        place: proposals.indexOf(one.meaning.means),
        first: proposals[0] ?? '',
      };
    });
  });
}

describe('what a setting of an unknown board may stand for', () => {
  for (const board of ['wren', 'heron']) {
    it(`is among the first three for nine of ten names of ${board}`, () => {
      const all = ranked(board);
      const missed = all.filter(({ place }) => place < 0 || place > 2);
      const share = 1 - missed.length / all.length;
      assert.ok(
        share >= 0.9,
        `${(100 * share).toFixed(1)} % of ${all.length}; ${missed
          .slice(0, 40)
          .map(({ name, right, first }) => `${name}: ${right}, not ${first}`)
          .join('\n')}`,
      );
    });
  }

  it('comes with a reason that names the value', () => {
    const setting = settingOf(['calm'], 'gyro-cutoff', '225');
    const [first] = proposeParameters(setting, testCatalog);
    assert.equal(first?.parameter, 'gyro.filter.<number>.cutoff');
    assert.match(first?.reason ?? '', /^both say .*cutoff.*; 225 is usual within 5 to 4000 Hz$/);
  });

  it('is nothing for words that nobody says', () => {
    const setting = settingOf([], 'zzyzx', '1');
    assert.deepEqual(proposeParameters(setting, testCatalog), []);
  });
});
