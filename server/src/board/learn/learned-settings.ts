import type { ListedSetting, Listing, SettingKey, Stated } from '../listing/listing';
import type { DecimalMark } from '../listing/number-look';
import { isKnownUnit } from '../listing/unit-words';
import { isBareHex, type Look, lookOf, numberOf } from '../listing/value-look';

/** What a value looks like, as far as it tells which kinds of parameters it may be. */
export type LearnedLook = 'number' | 'flag' | 'word' | 'words' | 'text' | 'list';

/** A setting of a listing that nobody has said the meaning of. */
export interface LearnedSetting extends SettingKey {
  readonly value: string;
  readonly look: LearnedLook;
  /** For a number: what it comes to, without its unit; else NaN. */
  readonly number: number;
  readonly stated: Stated | null;
}

/** The settings of a listing as something to be said the meaning of. */
export function learnedSettings({ settings, forms }: Listing): readonly LearnedSetting[] {
  const width = widthOfHex(settings.map(({ value }) => value));
  return settings.map(({ groups, name, occurrence, value, style, stated }) => {
    // Whatever an attribute of XML says stands in quotes.
    const seen = learnedLookOf(value, forms.decimal, forms.container === 'xml' ? plain : style);
    const isHex = seen.look === 'number' && value.length === width && /^\d+$/.test(value);
    const { look, number } = isHex ? { look: 'word' as const, number: Number.NaN } : seen;
    return { groups, name, occurrence, value, look, number, stated };
  });
}

const plain = { kind: 'plain' } as const;

const leastHex = 2;

/**
 * How many digits all numbers have in a listing that writes them in base 16 without a sign for it; null where it does
 * not. There, `0226` is no 226.
 */
function widthOfHex(values: readonly string[]): number | null {
  const hex = values.filter(isBareHex);
  const widths = new Set(
    [...hex, ...values.filter((value) => /^\d+$/.test(value))].map(({ length }) => length),
  );
  return hex.length >= leastHex && widths.size === 1 ? (hex[0]?.length ?? null) : null;
}

/** What a value looks like, and what it comes to. */
export function learnedLookOf(
  value: string,
  mark: DecimalMark,
  style: ListedSetting['style'] = plain,
): Pick<LearnedSetting, 'look' | 'number'> {
  const seen = lookOf(value, mark);
  return { look: learnedLook(seen, style), number: numberOf(seen)?.value ?? Number.NaN };
}

/** In quotes it is a text, but for a number with its unit: JSON has no other way to write one. */
function learnedLook(seen: Look, style: ListedSetting['style']): LearnedLook {
  const isMeasure = seen.kind === 'measure' && isKnownUnit(seen.unit);
  if (style.kind === 'quoted' && !isMeasure) return 'text';
  switch (seen.kind) {
    case 'number':
    case 'measure':
      return 'number';
    case 'list':
    case 'tuple':
      return 'list';
    case 'text':
      return 'words';
    case 'empty':
      return 'text';
    default:
      return seen.kind;
  }
}

/** What a pilot calls a setting by: `calm/first-cut`. */
export function settingName({ groups, name, occurrence }: SettingKey): string {
  return [...groups, name].join('/') + (occurrence === 1 ? '' : `#${occurrence}`);
}
