import { namesOf } from '../../../server/src/board/meaning/meanings';
import { Speller } from '../../../server/src/board/meaning/spelling';
import { collectionOf } from '../../../server/src/board/profile/members';
import { type Profile, profileOf } from '../../../server/src/board/profile/profile';
import { interpret } from '../../../server/src/craft/interpret';
import { noNames } from '../../../server/src/craft/line-check';
import type { Value } from '../../../server/src/craft/value';
import { parseLine } from '../../../server/src/language/parser';
import { type MeaningOnBoard, meaningsOn } from '../board-crafts';
import { testCatalog } from '../catalog';
import type { NamedSetting } from './named-listings';

/** The settings of an invented board under its own names, those of members for two of them. */
export function boardNames(board: string): readonly NamedSetting[] {
  const found = testCatalog.board(board);
  const profile = found === undefined ? null : profileOf(found);
  if (profile === null) throw new Error(`there is no board ${board} that writes settings`);
  return meaningsOn(profile, testCatalog).flatMap((one) => settingsOf(one, profile));
}

/** Members of collections of which a board knows all, under our own names. */
const anyMembers: ReadonlyMap<string, ReadonlyMap<string, string>> = new Map([
  [
    'overlay',
    new Map([
      ['1', 'cell-voltage'],
      ['2', 'armed-time'],
    ]),
  ],
]);

function settingsOf(one: MeaningOnBoard, profile: Profile): readonly NamedSetting[] {
  const { meaning, found } = one;
  const member = anyMembers.get(collectionOf(meaning.means) ?? '')?.get(one.member ?? '') ?? one.member;
  const value = sampleOf(one);
  const spelled = value === null ? null : new Speller(meaning, found, profile.manner).write(value);
  return (namesOf(profile, meaning, member) ?? []).map(({ groups, name }, at) => {
    const as = meaning.parts[at]?.setting.as;
    const part = as === undefined ? [] : [typeof as === 'string' ? as : JSON.stringify(as)];
    const keys = found.name.startsWith('pack.') ? [] : found.keys;
    return {
      group: groups.join(' '),
      name,
      value: (spelled?.kind === 'texts' ? spelled.texts[at] : undefined) ?? 'word',
      means: [found.name, ...(member === null ? keys : [member]), ...part].join(' '),
    };
  });
}

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
