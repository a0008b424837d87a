import type { BoardProfile, BoardSetting } from '../../catalog/model/board-profile';
import { nameKey, settingKey } from '../listing/setting-key';
import { membersOf, memberText, openMember, withMember } from './members';

/** One setting of a board's profile. */
export interface ProfileRow {
  readonly setting: BoardSetting;
  /** The outermost first; none where the setting stands in no group. */
  readonly groups: readonly string[];
  readonly name: string;
  /** Its place among the settings of the profile. */
  readonly index: number;
  /** Which of several values that stand in the setting it is, from 1; none for one that holds one value. */
  readonly item?: number;
}

/** A row with the member of a collection that stood in its name. */
export interface RowFound {
  readonly row: ProfileRow;
  /** The catalogue's name of the member; null where the name has none. */
  readonly member: string | null;
}

/** The rows of a profile, to be looked up as the board writes them. */
export class NameTable {
  private readonly exact = new Map<string, RowFound>();
  /** Names with an open member by the two halves around it, and how long these halves are. */
  private readonly open = new Map<string, ProfileRow>();
  private readonly halves = new Map<string, readonly [before: number, after: number]>();

  constructor(rows: readonly ProfileRow[], board: BoardProfile) {
    for (const row of rows) this.add(row, board);
  }

  /** `item`: which of several values; the first row of the setting where none is asked for. */
  find(groups: readonly string[], name: string, occurrence = 1, item?: number): RowFound | undefined {
    const own = this.findItem(groups, name, occurrence, item);
    return own ?? (item === undefined ? this.findItem(groups, name, occurrence, 1) : undefined);
  }

  private findItem(
    groups: readonly string[],
    name: string,
    occurrence: number,
    item: number | undefined,
  ): RowFound | undefined {
    const own =
      this.exact.get(settingKey({ groups, name, occurrence, item })) ??
      this.exact.get(nameKey({ groups, name, item }));
    if (own !== undefined) return own;
    const key = nameKey({ groups, name, item });
    for (const [before, after] of this.halves.values()) {
      const member = key.slice(before, key.length - after);
      if (!memberText.test(member)) continue;
      const row = this.open.get(openKey(key.slice(0, before), key.slice(key.length - after)));
      if (row !== undefined) return { row, member };
    }
    return undefined;
  }

  private add(row: ProfileRow, board: BoardProfile): void {
    const { groups, name, setting } = row;
    const key = keyOf(row, groups, name);
    const [before = '', after] = key.split(openMember);
    if (after === undefined) {
      this.exact.set(key, { row, member: null });
      return;
    }
    const members = membersOf(board, setting.means);
    if (members === null) {
      this.open.set(openKey(before, after), row);
      this.halves.set(`${before.length} ${after.length}`, [before.length, after.length]);
    } else
      for (const [member, spelled] of members) {
        const filled = keyOf(
          row,
          groups.map((group) => withMember(group, spelled)),
          withMember(name, spelled),
        );
        this.exact.set(filled, { row, member });
      }
  }
}

/** Of every occurrence of a name, or of one. */
function keyOf({ setting, item }: ProfileRow, groups: readonly string[], name: string): string {
  const { occurrence } = setting;
  return occurrence === undefined
    ? nameKey({ groups, name, item })
    : settingKey({ groups, name, occurrence, item });
}

/** No half of a key holds a line's end. */
function openKey(before: string, after: string): string {
  return `${before}\n${after}`;
}
