import type { BoardLayer } from '../../board/layer/layer';
import { type Meaning, meaningOf, meaningsOf, namesOf } from '../../board/meaning/meanings';
import type { Profile, RowFound } from '../../board/profile/profile';
import type { Catalog } from '../../catalog/catalog';

/** A parameter with the member of its collection. */
export interface HeldOnBoard {
  readonly meaning: Meaning;
  readonly member: string | null;
}

export function heldIn(profile: Profile | null, found: RowFound | undefined): HeldOnBoard | null {
  const meaning = profile === null || found === undefined ? undefined : meaningOf(profile, found.row);
  return meaning === undefined ? null : { meaning, member: found?.member ?? null };
}

/** The places of all the settings that a parameter is held in, in the order of its names. */
export function partsOf(
  { settings }: BoardLayer,
  profile: Profile,
  { meaning, member }: HeldOnBoard,
): readonly number[] {
  return (namesOf(profile, meaning, member) ?? []).flatMap(({ groups, name, item }) => {
    const own = JSON.stringify(groups);
    const at = settings.findLastIndex(
      (setting) => setting.name === name && setting.item === item && JSON.stringify(setting.groups) === own,
    );
    return at < 0 ? [] : [at];
  });
}

/** What a path of a script is on a board; null where the board has no setting for it. */
export function heldAt(profile: Profile, catalog: Catalog, path: string): HeldOnBoard | null {
  const parameter = catalog.parameter(path);
  if (parameter === undefined) return null;
  const own = meaningsOf(profile).find(({ means }) => means === path || means === parameter.name);
  if (own === undefined) return null;
  const isOfMember = own.means === parameter.name && !parameter.name.startsWith('pack.');
  return { meaning: own, member: isOfMember ? (parameter.keys[0] ?? null) : null };
}
