import type { FoundParameter } from '../catalog/catalog';
import type { BoardSetting } from '../catalog/model/board-text';
import type { Value } from '../craft/value';
import type { CraftView } from '../craft/view';
import { keyOf, namesOf, type Profile } from './profile';
import { Speller } from './spelling';

/** One line that a script asks the board to hold. */
export interface Entry {
  readonly group: string;
  readonly name: string;
  /** In the board's spelling. */
  readonly value: string;
  /** The parameter that it comes from, as the script spells it. */
  readonly path: string;
}

/** A parameter that the board will hold otherwise than the script says it: rounded to its step. */
export interface Rounding {
  readonly path: string;
  readonly given: Value;
  readonly held: Value;
  readonly found: FoundParameter;
}

/** A parameter that can't be written, and why. */
export interface Refusal {
  readonly path: string;
  readonly reason: string;
}

export interface Entries {
  readonly entries: readonly Entry[];
  readonly roundings: readonly Rounding[];
  /** Set by the script and known to the board, but not in this way. */
  readonly refused: readonly Refusal[];
  /** Set by the script; the board has no name for them. */
  readonly unnamed: readonly string[];
}

/** What a craft with the view's pack comes to on a board, in the board's order. */
export function entriesOf(profile: Profile, view: CraftView): Entries {
  const entries: Entry[] = [];
  const roundings: Rounding[] = [];
  const refused: Refusal[] = [];
  const named = new Set<string>();
  for (const { group, settings } of profile.groups) {
    for (const row of settings) {
      for (const { path, member } of pathsOf(view, row.parameter)) {
        named.add(path);
        const setting = view.setting(path);
        if (setting === undefined) continue;
        const names = namesOf(row, group, member);
        const value = view.value(path);
        if (names === null || value === null) {
          const reason = names === null ? `the board has no ${member ?? ''}` : 'its value can’t be read';
          refused.push({ path, reason });
          continue;
        }
        const speller = new Speller(row, setting.found, profile.text);
        const spelled = speller.write(value);
        if (spelled.kind === 'refused') {
          refused.push({ path, reason: spelled.reason });
          continue;
        }
        entries.push(
          ...names.map(({ group: inGroup, name }, part) => ({
            group: inGroup,
            name,
            value: spelled.texts[part] ?? '',
            path,
          })),
        );
        const held = speller.read(spelled.texts);
        if (held.kind === 'value' && differ(value, held.value, row))
          roundings.push({ path, given: value, held: held.value, found: setting.found });
      }
    }
  }
  const unnamed = setPaths(view).filter((path) => !named.has(path));
  return { entries: unique(entries), roundings, refused, unnamed };
}

/** The paths that a catalogue name stands for on this craft, with the member in each. */
export function pathsOf(
  view: CraftView,
  name: string,
): readonly { readonly path: string; readonly member: string | null }[] {
  const at = name.indexOf('.<');
  if (at < 0) return [{ path: name, member: null }];
  const collection = name.slice(0, at);
  const placeholder = name.slice(at + 1, name.indexOf('>', at) + 1);
  // A board holds one pack's settings at a time: those of the pack in view.
  if (collection === 'pack')
    return view.pack === null ? [] : [{ path: name.replace(placeholder, view.pack), member: null }];
  return view.members(collection).map((member) => ({ path: name.replace(placeholder, member), member }));
}

/** Every parameter that some line of the craft sets for this pack. */
function setPaths(view: CraftView): readonly string[] {
  const paths = view.craft.settingPaths();
  const packs = view.craft.packs().filter((pack) => pack !== view.pack);
  return paths.filter(
    (path) =>
      view.catalog.parameter(path) !== undefined &&
      view.isSet(path) &&
      !packs.some((pack) => path.startsWith(`pack.${pack}.`)),
  );
}

function unique(entries: readonly Entry[]): readonly Entry[] {
  return [...new Map(entries.map((entry) => [keyOf(entry.group, entry.name), entry])).values()];
}

/** Whether the board's value is another one than the script's; binary dust is none. */
export function differ(one: Value, other: Value, row: BoardSetting): boolean {
  if (one.kind !== other.kind) return true;
  switch (one.kind) {
    case 'quantity':
    case 'count':
      return !isNear(one.value, (other as typeof one).value);
    case 'range': {
      const { low, high } = other as typeof one;
      return !isNear(one.low, low) || !isNear(one.high, high);
    }
    case 'place': {
      const place = other as typeof one;
      return one.row !== place.row || one.column !== place.column;
    }
    case 'words':
      return one.value.join('\n') !== (other as typeof one).value.join('\n');
    case 'curve':
      // Between its samples the board draws its own line: only what it was told can be compared.
      return row.by !== 'samples' && JSON.stringify(one) !== JSON.stringify(other);
    default:
      return one.value !== (other as typeof one).value;
  }
}

function isNear(one: number, other: number): boolean {
  return Math.abs(one - other) <= 1e-9 * Math.max(Math.abs(one), Math.abs(other));
}
