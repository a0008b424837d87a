import { settingKey } from '../listing/setting-key';
import type { Profile } from '../profile/profile';
import type { Entry } from './entries';
import type { Unwritten } from './patch';

/**
 * Entries for lines that are made from forms: several values of one setting are one entry, which needs all of them,
 * since the board is told a setting as a whole.
 */
export function joinedItems(
  entries: readonly Entry[],
  profile: Profile | null,
): { readonly entries: readonly Entry[]; readonly unwritten: readonly Unwritten[] } {
  const joined = new Map<string, Entry[]>();
  for (const entry of entries) {
    const key = settingKey({ ...entry, item: undefined });
    const known = joined.get(key);
    if (known === undefined) joined.set(key, [entry]);
    else known.push(entry);
  }
  const unwritten: Unwritten[] = [];
  const whole = [...joined.values()].flatMap((items): readonly Entry[] => {
    const [first] = items;
    if (first?.item === undefined) return items;
    const { groups, name, occurrence } = first;
    const row = (item: number) => profile?.find(groups, name, occurrence, item)?.row;
    const isWhole = items.every((_, index) => items.some(({ item }) => item === index + 1));
    if (!isWhole || row(items.length + 1) !== undefined) {
      const reason = 'the board takes all values of it at once, and not all are set';
      unwritten.push(...items.map((entry) => ({ entry, reason })));
      return [];
    }
    const inOrder = items.toSorted((one, other) => (one.item ?? 0) - (other.item ?? 0));
    const { between = ' ', packed } = row(1)?.setting ?? {};
    const value =
      packed === true
        ? String(inOrder.reduce((sum, one, place) => sum + Number(one.value) * 2 ** place, 0))
        : inOrder.map((one) => one.value).join(between);
    return [{ ...first, item: undefined, value }];
  });
  return { entries: whole, unwritten };
}
