import type { Catalog } from '../../catalog/catalog';
import type { BoardProfile, BoardSetting } from '../../catalog/model/board-profile';
import type { Listing } from '../listing/listing';
import { flagPairs } from '../listing/value-look';
import { type Confirmed, confirmedMeanings, type Meant } from './confirm';
import { keptStatement } from './kept-statement';
import { type LearnedSetting, learnedSettings, settingName } from './learned-settings';

/** A board profile that a listing makes. */
export interface LearnedProfile {
  readonly profile: BoardProfile;
  /** Settings that became parameters of the catalogue, by their names; of the others nobody has said what they mean. */
  readonly mapped: readonly string[];
}

/**
 * A profile from a listing: how it is written, and every setting with what the listing states of it, and with its
 * meaning where that was confirmed. It holds none of the captured values. No listing tells the hardware, so none is
 * told. Null for a listing in which no setting was found.
 */
export function learnedProfile(
  listing: Listing,
  name: string,
  confirmed: Confirmed,
  catalog: Catalog,
): LearnedProfile | null {
  const all = learnedSettings(listing);
  if (all.length === 0) return null;
  const meanings = confirmedMeanings(all, confirmed, catalog);
  const settings = all.map((setting) => rowOf(setting, listing, meanings.get(settingName(setting))));
  const quote = quoteOf(listing);
  const text = {
    forms: listing.forms,
    ...(quote === null ? {} : { quote }),
    flags: flagsOf(all),
  };
  return { profile: { name, text, settings }, mapped: [...meanings.keys()] };
}

function rowOf(setting: LearnedSetting, { forms }: Listing, meant: Meant | undefined): BoardSetting {
  const { groups, name, occurrence } = setting;
  const { range, words, default: byDefault, unit, remark } = keptStatement(setting, forms.decimal);
  const [group, ...inner] = groups;
  return {
    ...(group === undefined ? {} : { group: inner.length === 0 ? group : [...groups] }),
    name,
    ...(occurrence === 1 ? {} : { occurrence }),
    ...(range === null ? {} : { range: [range.low, range.high] as const }),
    ...(words === null ? {} : { words: [...words] }),
    ...(byDefault === null ? {} : { default: byDefault }),
    ...(unit === null ? {} : { unit }),
    ...(remark === null ? {} : { remark }),
    ...meant,
  };
}

/** What stands around most of the texts that stand in something. */
function quoteOf({ settings }: Listing): '"' | "'" | null {
  const marks = settings.flatMap(({ style }) => (style.kind === 'quoted' ? [style.mark] : []));
  const single = marks.filter((mark) => mark === "'").length;
  if (marks.length === 0) return null;
  return 2 * single > marks.length ? "'" : '"';
}

/** The spellings of on and off that the listing uses. */
function flagsOf(settings: readonly LearnedSetting[]): { readonly on: string; readonly off: string } {
  const said = new Set(settings.filter(({ look }) => look === 'flag').map(({ value }) => value));
  const [on, off] = flagPairs.find(([one, other]) => said.has(one) || said.has(other)) ?? ['on', 'off'];
  return { on, off };
}
