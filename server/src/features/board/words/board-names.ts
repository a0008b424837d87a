import type { BoardLayer } from '../../../board/layer/layer';
import type { SettingKey } from '../../../board/listing/listing';
import { settingOfOwnPath } from '../../../board/listing/own-path';
import { settingText } from '../../../board/listing/setting-text';
import { meaningsOf, namesOf } from '../../../board/meaning/meanings';
import { collectionOf, membersOf, withMember } from '../../../board/profile/members';
import type { Catalog } from '../../../catalog/catalog';
import { isOwnPath, stepsOf } from '../../../language/path-text';
import { type HeldOnBoard, heldAt } from '../held';
import { withoutEnd } from './without-end';

/** What a board calls what the catalogue knows by paths. */
export class BoardNames {
  private readonly called = new Map<string, string | null>();
  private readonly held = new Map<string, HeldOnBoard | null>();

  constructor(
    private readonly layer: BoardLayer,
    private readonly catalog: Catalog,
  ) {}

  heldAt(path: string): HeldOnBoard | null {
    const known = this.held.get(path);
    if (known !== undefined) return known;
    const { profile } = this.layer;
    const made = profile === null ? null : heldAt(profile, this.catalog, path);
    this.held.set(path, made);
    return made;
  }

  /** `loop-rate`, `arming-live-from and arming-live-to`; null for what the board has no setting for. */
  parameter(path: string): string | null {
    const known = this.called.get(path);
    if (known !== undefined) return known;
    const made = this.nameOf(path);
    this.called.set(path, made);
    return made;
  }

  private nameOf(path: string): string | null {
    if (path.includes('<')) return this.openName(path);
    const own = isOwnPath(path) ? settingOfOwnPath(stepsOf(path)) : null;
    if (own !== null) return settingText(own);
    const { profile } = this.layer;
    const held = this.heldAt(path);
    if (profile === null || held === null) return null;
    const names = (namesOf(profile, held.meaning, held.member) ?? []).map((key) => this.short(key));
    const [first, last] = [names[0], names.at(-1)];
    if (first === undefined || last === undefined) return null;
    if (names.length === 1) return first;
    return held.meaning.by === 'samples' || held.meaning.by === 'each'
      ? `${first} to ${last}`
      : names.join(' and ');
  }

  /** `gyro-cleaner-<number>-corner`, of any member of a collection. */
  private openName(path: string): string | null {
    const { profile } = this.layer;
    const meaning = profile === null ? undefined : meaningsOf(profile).find(({ means }) => means === path);
    const [first] = meaning?.parts ?? [];
    const [open] = /<[a-z]+>/.exec(path) ?? [];
    if (first === undefined || open === undefined) return null;
    const { groups, name } = first;
    return this.short({ groups, name: withMember(name, open), occurrence: 1 });
  }

  /** What the names of all settings of a member begin with: `gyro-cleaner-2` for `gyro.filter.2`. */
  member(path: string): string | null {
    const { profile } = this.layer;
    const at = path.lastIndexOf('.');
    if (profile === null || at < 0) return null;
    const [collection, member] = [path.slice(0, at), path.slice(at + 1)];
    const own = meaningsOf(profile).filter(({ means }) => collectionOf(means) === collection);
    const names = own.flatMap((meaning) => (namesOf(profile, meaning, member) ?? []).map(({ name }) => name));
    const [first = '', ...others] = names;
    const same = others.reduce(sameStart, first);
    const whole = withoutEnd(same, /[^\p{L}\p{N}]/u);
    return whole === '' ? null : whole;
  }

  /** How the board spells a member of a collection of which a setting is. */
  memberWord(path: string, member: string): string | null {
    const { profile } = this.layer;
    const means = this.heldAt(path)?.meaning.means;
    if (profile === null || means === undefined) return null;
    return membersOf(profile.board, means)?.get(member) ?? null;
  }

  /** The name alone where no other setting has it. */
  private short(key: SettingKey): string {
    const rows = this.layer.profile?.rows ?? [];
    const { name, ...rest } = key;
    const isAlone = rows.filter((row) => withMember(row.name, '') === name).length < 2;
    return settingText(isAlone ? { ...rest, name, groups: [] } : key);
  }
}

function sameStart(one: string, other: string): string {
  let length = 0;
  while (length < one.length && one[length] === other[length]) length += 1;
  return one.slice(0, length);
}
