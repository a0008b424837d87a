import type { ListedSetting, Listing } from '../listing/listing';
import type { DecimalMark } from '../listing/number-look';
import { digitsIn } from '../listing/packed';
import { valuesIn } from '../listing/values-in';
import type { Profile, ProfileRow } from './profile';

/**
 * A listing in which each of several values in one setting is a setting of its own, as the profile says: with the same
 * name, and the place of its value. Without such rows it is the same listing.
 */
export function withItems(listing: Listing, profile: Profile | null): Listing {
  if (profile === null || !profile.rows.some(({ item }) => item !== undefined)) return listing;
  const starts: number[] = [];
  const settings: ListedSetting[] = [];
  for (const setting of listing.settings) {
    starts.push(settings.length);
    const digits = packedOf(setting, profile, listing.forms.decimal);
    settings.push(...(digits ?? itemsOf(setting, listing.text, profile)));
  }
  starts.push(settings.length);
  const at = (index: number) => starts[index] ?? settings.length;
  const lines = listing.lines.map((line) => ({ ...line, first: at(line.first), end: at(line.end) }));
  return { ...listing, settings, lines };
}

function itemsOf(setting: ListedSetting, text: string, profile: Profile): readonly ListedSetting[] {
  const row = rowOfItems(setting, profile);
  if (row?.item === undefined) return [setting];
  const { start, end } = setting.at.value;
  return valuesIn(text.slice(start, end), row.setting.between ?? ' ').map((value, index) => ({
    ...setting,
    item: index + 1,
    value: value.text,
    at: { ...setting.at, value: { start: start + value.start, end: start + value.end } },
  }));
}

function rowOfItems(
  { groups, name, occurrence, item }: ListedSetting,
  profile: Profile,
): ProfileRow | undefined {
  return item === undefined ? profile.find(groups, name, occurrence)?.row : undefined;
}

/** Each binary digit of a number; null where its profile does not say so, and for what is no whole number. */
function packedOf(
  setting: ListedSetting,
  profile: Profile,
  mark: DecimalMark,
): readonly ListedSetting[] | null {
  const row = rowOfItems(setting, profile);
  const { packed, items = [] } = profile.board.settings[row?.index ?? -1] ?? {};
  const digits = packed === true ? digitsIn(setting.value, items.length, mark) : null;
  return (
    digits?.map((value, place) => ({ ...setting, item: place + 1, value, packedIn: setting.value })) ?? null
  );
}
