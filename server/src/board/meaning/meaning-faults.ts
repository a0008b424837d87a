import type { Catalog } from '../../catalog/catalog';
import { type Fault, faultsWithin } from '../../catalog/faults/fault';
import { readQuantity } from '../../catalog/faults/quantities';
import type { KnownParameter } from '../../catalog/known-parameter';
import type { BoardProfile, BoardSetting } from '../../catalog/model/board-profile';
import { staticWords } from '../../craft/line-check';
import { collectionOf, membersOf, openMember } from '../profile/members';
import { mannerOf, type ProfileRow, type SpellingManner } from '../profile/profile';
import { countingFaults } from './counting-faults';
import { gather, type HeldBy, heldBy, type Meaning, partKey } from './meanings';
import { partParameter, wordOfPart } from './part-parameter';
import { wordsToSpell } from './words-to-spell';

/** What is wrong with what a profile says its settings mean. */
export function meaningFaults(
  rows: readonly ProfileRow[],
  board: BoardProfile,
  catalog: Catalog,
): readonly Fault[] {
  const manner = board.text === undefined ? null : mannerOf(board.text);
  const faulty = new Set<ProfileRow>();
  const ofRows = rows.flatMap((row) => {
    const found = manner === null ? [] : rowFaults(row, manner, catalog);
    if (found.length > 0) faulty.add(row);
    return faultsWithin(placeOfRow(row), found);
  });
  // What is wrong with one part is told once, and not of the others again.
  const whole = gather(rows).filter(({ parts }) => parts.every((row) => !faulty.has(row)));
  return [
    ...memberFaults(board, catalog),
    ...ofRows,
    ...whole.flatMap(partFaults),
    ...whole.flatMap((meaning) => ofMemberFaults(meaning, whole, board, catalog)),
  ];
}

/** Where a row, or one of several values of a setting, stands in the file. */
function placeOfRow(row: ProfileRow | undefined): Fault['at'] {
  const { index, item } = row ?? { index: 0 };
  return item === undefined ? ['settings', index] : ['settings', index, 'items', item - 1];
}

/** A parameter by the catalogue's name, or at a path with members of its own. */
function parameterMeant(means: string, catalog: Catalog): KnownParameter | undefined {
  return catalog.parameters.get(means) ?? catalog.parameter(means);
}

const kindsFor: Readonly<Record<HeldBy, readonly string[]>> = {
  value: ['quantity', 'count', 'flag', 'word', 'words', 'text', 'date'],
  ends: ['range'],
  place: ['place'],
  cell: ['place'],
  samples: ['curve'],
  each: ['words'],
  numbers: ['words'],
  flags: ['words'],
};

/** How a setting says that it holds a part of such a parameter. */
const partsOf: Readonly<Record<string, string>> = {
  range: '"as" says "low" or "high"',
  place: '"as" says "row", "column" or {"cell": columns}',
  curve: '"as" says {"at": point}',
};

function rowFaults(
  { setting, groups }: ProfileRow,
  manner: SpellingManner,
  catalog: Catalog,
): readonly Fault[] {
  const { means, role } = setting;
  if (means === undefined) return [...roleFaults(role, catalog), ...withoutMeaning(setting)];
  if (role !== undefined) return [{ at: ['role'], message: 'what has a meaning needs no role' }];
  const known = parameterMeant(means, catalog);
  if (known === undefined) return [{ at: ['means'], message: `there is no parameter ${means}` }];
  return [
    ...asFaults(setting, known),
    ...packedFaults(setting, known),
    ...openFaults(means, [...groups, setting.name]),
    ...faultsWithin(['counts'], countingFaults(setting.counts ?? {}, partParameter(known, setting.as))),
    ...acrossFaults(setting, known),
    ...wordOfPartFaults(setting, known, catalog),
    ...wordFaults(setting, partParameter(known, setting.as), catalog),
    ...listFaults(setting, known, manner, catalog),
  ];
}

function roleFaults(role: string | undefined, catalog: Catalog): readonly Fault[] {
  return role === undefined || parameterMeant(role, catalog) !== undefined
    ? []
    : [{ at: ['role'], message: `there is no parameter ${role}` }];
}

/** What is said of a meaning that is not there. */
function withoutMeaning(setting: BoardSetting): readonly Fault[] {
  return (['as', 'counts', 'spelled'] as const).flatMap((key) =>
    setting[key] === undefined ? [] : [{ at: [key], message: `"${key}" needs "means"` }],
  );
}

function asFaults({ as, means }: BoardSetting, { parameter: { kind } }: KnownParameter): readonly Fault[] {
  if (kindsFor[heldBy(as)].includes(kind)) return [];
  const hint = partsOf[kind] ?? '"as" is left out';
  return [{ at: as === undefined ? ['means'] : ['as'], message: `${means} is a ${kind}: ${hint}` }];
}

/** Names for every member need a place for it. A board knows one pack, and not its name. */
function openFaults(means: string, texts: readonly string[]): readonly Fault[] {
  const collection = collectionOf(means);
  const isOpen = collection !== null && collection !== 'pack';
  const hasMember = texts.some((text) => text.includes(openMember));
  if (isOpen === hasMember) return [];
  const message = isOpen
    ? `${means} needs ${openMember} in the name, or one member in the place of <…>`
    : `${means} has no members to stand for ${openMember}`;
  return [{ at: ['name'], message }];
}

/** The point at which a curve is told must lie on it. */
function acrossFaults({ as }: BoardSetting, { across, parameter }: KnownParameter): readonly Fault[] {
  if (typeof as !== 'object' || !('at' in as) || across === undefined) return [];
  const at = ['as', 'at'];
  const { value, problem } = readQuantity(
    as.at,
    parameter.kind === 'curve' ? parameter.across.dimension : '',
  );
  if (value === undefined) return [{ at, message: problem }];
  if (value >= across.low && value <= across.high) return [];
  return [{ at, message: `${as.at} lies beyond the end of the curve` }];
}

/** One digit says on or off, and nothing else. */
function packedFaults({ as, means, packed }: BoardSetting, known: KnownParameter): readonly Fault[] {
  if (packed !== true || partParameter(known, as).parameter.kind === 'flag') return [];
  return [{ at: ['means'], message: `one digit says on or off, and ${means} is more` }];
}

/** A list can only have words that there are for it. */
function wordOfPartFaults(
  { as, means }: BoardSetting,
  known: KnownParameter,
  catalog: Catalog,
): readonly Fault[] {
  const word = known.parameter.kind === 'words' ? wordOfPart(as) : null;
  const words = wordsToSpell(known, catalog);
  if (word === null || words === null || words.includes(word)) return [];
  return [{ at: ['as'], message: `"${word}" is no word of ${means}` }];
}

/** A setting of one member that the rows for every member hold already. */
function ofMemberFaults(
  { means, parts }: Meaning,
  all: readonly Meaning[],
  board: BoardProfile,
  catalog: Catalog,
): readonly Fault[] {
  const found = collectionOf(means) === null ? catalog.parameter(means) : undefined;
  const [member] = found?.keys ?? [];
  const forAll = all.find((other) => other.means === found?.name && other.means !== means);
  if (member === undefined || forAll === undefined) return [];
  const members = membersOf(board, forAll.means);
  if (members !== null && !members.has(member)) return [];
  const message = `${means} is what ${forAll.parts[0]?.name} means already`;
  return [{ at: [...placeOfRow(parts[0]), 'means'], message }];
}

/** The parts of a parameter must be there, each once. */
function partFaults({ means, by, parts }: Meaning): readonly Fault[] {
  const at = (row: ProfileRow | undefined) => [...placeOfRow(row), 'means'];
  const mixed = parts.find(({ setting }) => heldBy(setting.as) !== by);
  if (mixed !== undefined)
    return [{ at: at(mixed), message: `${means} is held in another way by another setting` }];
  const byPart = new Map<string, ProfileRow>();
  for (const row of parts) {
    const key = partKey(row.setting.as);
    const before = byPart.get(key);
    if (before !== undefined)
      return [{ at: at(row), message: `${means} is what ${before.name} means already` }];
    byPart.set(key, row);
  }
  const missing = missingPart(by, parts);
  return missing === null ? [] : [{ at: at(parts[0]), message: `${means} needs ${missing} as well` }];
}

function missingPart(by: HeldBy, parts: readonly ProfileRow[]): string | null {
  const held = parts.map(({ setting }) => setting.as);
  const without = (...wanted: readonly string[]) => wanted.find((one) => !held.some((as) => as === one));
  if (by === 'ends') return quoted(without('low', 'high'));
  if (by === 'place') return quoted(without('row', 'column'));
  if (by === 'samples') return parts.length < 2 ? 'a second point' : null;
  if (by !== 'each') return null;
  const gap = parts.findIndex(
    ({ setting: { as } }, index) => typeof as === 'object' && 'entry' in as && as.entry !== index + 1,
  );
  return gap < 0 ? null : `entry ${gap + 1}`;
}

function quoted(part: string | undefined): string | null {
  return part === undefined ? null : `"${part}"`;
}

/** Words of a list must be told apart: none may hold what stands between two of them, or be what an empty one is. */
function listFaults(
  { as, spelled }: BoardSetting,
  known: KnownParameter,
  { list }: SpellingManner,
  catalog: Catalog,
): readonly Fault[] {
  if (known.parameter.kind !== 'words' || as !== undefined) return [];
  const words = staticWords(known, catalog) ?? [];
  const own = new Map(Object.entries(spelled ?? {}));
  const wrong = words
    .map((word) => own.get(word) ?? word)
    .find((word) => word.includes(list.between) || word === list.none);
  if (wrong === undefined) return [];
  return [{ at: ['spelled'], message: `"${wrong}" can’t be told apart in a list of this board` }];
}

function wordFaults(
  { spelled, means }: BoardSetting,
  known: KnownParameter,
  catalog: Catalog,
): readonly Fault[] {
  if (spelled === undefined) return [];
  const words = wordsToSpell(known, catalog);
  const own = Object.values(spelled);
  const twice = own.find((word, index) => own.indexOf(word) !== index);
  return [
    ...(twice === undefined ? [] : [{ at: ['spelled'], message: `"${twice}" stands for two words` }]),
    ...Object.keys(spelled).flatMap((word) =>
      words === null || words.includes(word)
        ? []
        : [{ at: ['spelled', word], message: `"${word}" is no word of ${means}` }],
    ),
  ];
}

/** Members that a collection does not have, and collections that there are not. */
function memberFaults({ members = {} }: BoardProfile, catalog: Catalog): readonly Fault[] {
  return Object.entries(members).flatMap(([collection, table]): readonly Fault[] => {
    const at = ['members', collection];
    if (catalog.collection(collection) === undefined)
      return [{ at, message: `there is no collection ${collection}` }];
    const known = catalog.members(collection).map(({ name }) => name);
    const spelled = Object.values(table);
    const twice = spelled.find((word, index) => spelled.indexOf(word) !== index);
    return [
      ...(twice === undefined ? [] : [{ at, message: `"${twice}" stands for two members` }]),
      ...Object.keys(table).flatMap((member) =>
        known.length === 0 || known.includes(member)
          ? []
          : [
              {
                at: [...at, member],
                message: `"${member}" is none of ${collection}: ${known.join(', ')}`,
              },
            ],
      ),
    ];
  });
}
