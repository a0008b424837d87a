import type { FoundParameter } from '../catalog/catalog';
import type { Value } from '../craft/value';
import type { CraftView } from '../craft/view';
import { differ } from './meaning/differ';
import { meaningsOf, namesOf } from './meaning/meanings';
import { pathsOf } from './meaning/paths';
import { Speller } from './meaning/spelling';
import { keyOf, oneGroup } from './one-group';
import type { Profile } from './profile/profile';

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
  for (const meaning of meaningsOf(profile)) {
    for (const { path, member } of pathsOf(view, meaning.means)) {
      named.add(path);
      const setting = view.setting(path);
      if (setting === undefined) continue;
      const names = namesOf(profile, meaning, member);
      const value = view.value(path);
      if (names === null || value === null) {
        const reason = names === null ? `the board has no ${member ?? ''}` : 'its value can’t be read';
        refused.push({ path, reason });
        continue;
      }
      const speller = new Speller(meaning, setting.found, profile.manner);
      const spelled = speller.write(value);
      if (spelled.kind === 'refused') {
        refused.push({ path, reason: spelled.reason });
        continue;
      }
      entries.push(
        ...names.map(({ groups, name }, part) => ({
          group: oneGroup(groups),
          name,
          value: spelled.texts[part] ?? '',
          path,
        })),
      );
      const held = speller.read(spelled.texts);
      if (held.kind === 'value' && differ(value, held.value, meaning.by))
        roundings.push({ path, given: value, held: held.value, found: setting.found });
    }
  }
  const unnamed = setPaths(view).filter((path) => !named.has(path));
  return { entries: unique(entries), roundings, refused, unnamed };
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
