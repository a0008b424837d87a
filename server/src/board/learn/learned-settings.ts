import type { ListedSetting, Listing, SettingKey, Stated } from '../listing/listing';
import type { DecimalMark } from '../listing/number-look';
import { lookOf, numberOf } from '../listing/value-look';

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
  return settings.map(({ groups, name, occurrence, value, style, stated }) => {
    const { look, number } = learnedLookOf(value, forms.decimal, style);
    return { groups, name, occurrence, value, look, number, stated };
  });
}

/** What a value looks like, and what it comes to. */
export function learnedLookOf(
  value: string,
  mark: DecimalMark,
  style: ListedSetting['style'] = { kind: 'plain' },
): Pick<LearnedSetting, 'look' | 'number'> {
  const seen = lookOf(value, mark);
  return { look: learnedLook(seen.kind, style), number: numberOf(seen)?.value ?? Number.NaN };
}

function learnedLook(kind: ReturnType<typeof lookOf>['kind'], style: ListedSetting['style']): LearnedLook {
  if (style.kind === 'quoted') return 'text';
  switch (kind) {
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
      return kind;
  }
}

/** What a pilot calls a setting by: `calm/first-cut`. */
export function settingName({ groups, name, occurrence }: SettingKey): string {
  return [...groups, name].join('/') + (occurrence === 1 ? '' : `#${occurrence}`);
}
