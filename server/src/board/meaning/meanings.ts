import type { PartHeld } from '../../catalog/model/board-profile';
import { parseQuantity } from '../../units/quantity';
import type { SettingKey } from '../listing/listing';
import { membersOf, withMember } from '../profile/members';
import type { Profile, ProfileRow } from '../profile/profile';
import { wordOfPart } from './part-parameter';

/** How the settings of a board hold one parameter between them. */
export type HeldBy = 'value' | 'ends' | 'place' | 'cell' | 'samples' | 'each' | 'numbers' | 'flags';

/** One parameter of the catalogue with the rows that hold it. */
export interface Meaning {
  /** A path of a script, or the catalogue's name where the rows stand for every member of a collection. */
  readonly means: string;
  readonly by: HeldBy;
  /** In the parameter's own order: low and high, row and column, points that rise, entries; words as the rows stand. */
  readonly parts: readonly ProfileRow[];
}

/** The meanings of a profile, each where its first row stands. */
export function meaningsOf(profile: Profile): readonly Meaning[] {
  return gathered(profile).all;
}

/** What a row has a part in; undefined for a row that nobody has given a meaning. */
export function meaningOf(profile: Profile, row: ProfileRow): Meaning | undefined {
  return gathered(profile).byRow.get(row);
}

interface MeaningsOfRows {
  readonly all: readonly Meaning[];
  readonly byRow: ReadonlyMap<ProfileRow, Meaning>;
}

const known = new WeakMap<Profile, MeaningsOfRows>();

function gathered(profile: Profile): MeaningsOfRows {
  const before = known.get(profile);
  if (before !== undefined) return before;
  const all = gather(profile.rows);
  const byRow = new Map(all.flatMap((meaning) => meaning.parts.map((row) => [row, meaning])));
  const made = { all, byRow };
  known.set(profile, made);
  return made;
}

/** Puts rows with the same meaning together. */
export function gather(rows: readonly ProfileRow[]): readonly Meaning[] {
  const byMeaning = new Map<string, ProfileRow[]>();
  for (const row of rows) {
    const { means } = row.setting;
    if (means === undefined) continue;
    const parts = byMeaning.get(means);
    if (parts === undefined) byMeaning.set(means, [row]);
    else parts.push(row);
  }
  return [...byMeaning].map(([means, parts]) => ({
    means,
    by: heldBy(parts[0]?.setting.as),
    parts: inOrder(parts),
  }));
}

export function heldBy(as: PartHeld | undefined): HeldBy {
  if (as === undefined) return 'value';
  if (as === 'low' || as === 'high') return 'ends';
  if (as === 'row' || as === 'column') return 'place';
  if ('cell' in as) return 'cell';
  if ('has' in as) return 'flags';
  if ('numberOf' in as) return 'numbers';
  return 'at' in as ? 'samples' : 'each';
}

function inOrder(parts: readonly ProfileRow[]): readonly ProfileRow[] {
  return [...parts].sort((one, other) => placeOf(one.setting.as) - placeOf(other.setting.as));
}

/** Where a part stands among the others of its parameter. */
function placeOf(as: PartHeld | undefined): number {
  if (as === undefined || as === 'low' || as === 'row') return 0;
  if (as === 'high' || as === 'column') return 1;
  if (!('at' in as || 'entry' in as)) return 0;
  return 'at' in as ? (parseQuantity(as.at)?.value ?? 0) : as.entry;
}

/** The same text for two that hold the same part. */
export function partKey(as: PartHeld | undefined): string {
  return wordOfPart(as) ?? String(placeOf(as));
}

/** What the board calls the parts of a meaning for one member; null for a member that the board does not know. */
export function namesOf(
  { board }: Profile,
  { means, parts }: Meaning,
  member: string | null,
): readonly SettingKey[] | null {
  const members = member === null ? null : membersOf(board, means);
  const spelled = members === null ? member : (members.get(member ?? '') ?? null);
  if (member !== null && spelled === null) return null;
  return parts.map(({ groups, name, setting, item }) => ({
    groups: groups.map((group) => withMember(group, spelled)),
    name: withMember(name, spelled),
    occurrence: setting.occurrence ?? 1,
    ...(item === undefined ? {} : { item }),
  }));
}
