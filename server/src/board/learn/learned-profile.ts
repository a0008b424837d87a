import type { Catalog } from '../../catalog/catalog';
import type { BoardProfile, BoardSetting, BoardText, RowMeant } from '../../catalog/model/board-profile';
import type { Listing } from '../listing/listing';
import { flagPairs } from '../listing/value-look';
import { mannerOf } from '../profile/profile';
import { profileFaults } from '../profile/profile-faults';
import { type ConfirmedRows, confirmedRows, type Outcome } from './confirm';
import type { Ground } from './convert/taken';
import { type LearnedSetting, learnedSettings, settingName } from './learned-settings';
import { type Confirmed, nothingConfirmed } from './said';
import { saidList } from './said-list';
import { rowOfSetting } from './setting-row';

/** A board profile that a listing makes. */
export interface LearnedProfile {
  readonly profile: BoardProfile;
  /** Settings that became parameters of the catalogue, by their names; of the others nobody has said what they mean. */
  readonly mapped: readonly string[];
  /** What became of each thing that was said. */
  readonly outcomes: readonly Outcome[];
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
  const text = textOf(listing, all, confirmed, catalog);
  const told = confirmedRows(all, confirmed, { catalog, manner: mannerOf(text) });
  const keys = all.map(settingName);
  const profileWith = (rows: ConfirmedRows['rows']): BoardProfile => ({
    name,
    text,
    ...portRolesOf(confirmed),
    settings: all.map((setting, index) =>
      rowOf(setting, listing, rows.get(keys[index] ?? ''), confirmed.ports.ports.get(keys[index] ?? '')),
    ),
  });
  const { rows, outcomes } = withoutFaults(told, keys, profileWith, catalog);
  const mapped = outcomes.filter(({ is }) => is === 'taken').map(({ key }) => key);
  return { profile: profileWith(rows), mapped: [...new Set(mapped)], outcomes };
}

/** The ground on which conversions of a listing's settings are proposed. */
export function groundOf(listing: Listing, all: readonly LearnedSetting[], catalog: Catalog): Ground {
  return { catalog, manner: mannerOf(textOf(listing, all, nothingConfirmed, catalog)) };
}

/** Meanings that a profile can't have are taken back, with all that hold the same parameter; each outcome says why. */
function withoutFaults(
  told: ConfirmedRows,
  keys: readonly string[],
  profileWith: (rows: ConfirmedRows['rows']) => BoardProfile,
  catalog: Catalog,
): ConfirmedRows {
  if (told.rows.size === 0) return told;
  const board = profileWith(told.rows);
  const wrong = new Map<string, string>();
  for (const { at, message } of profileFaults(board, catalog)) {
    if (at[0] !== 'settings') continue;
    const index = Number(at[1]);
    for (const one of meansOf(told.rows.get(keys[index] ?? '') ?? {})) wrong.set(one, message);
  }
  if (wrong.size === 0) return told;
  const outcomes = told.outcomes.map((outcome): Outcome => {
    const why = wrong.get(outcome.said.means);
    return why === undefined || outcome.is === 'left' ? outcome : { ...outcome, is: 'left', why };
  });
  const rows = [...told.rows].filter(([, row]) => !meansOf(row).some((one) => wrong.has(one)));
  return { rows: new Map(rows), outcomes };
}

function meansOf({ means, role, items = [] }: RowMeant): readonly string[] {
  return [means, role, ...items.flatMap((item) => [item.means, item.role])].flatMap((one) => one ?? []);
}

function portRolesOf({ ports: { words } }: Confirmed): Pick<BoardProfile, 'portRoles'> {
  if (words.size === 0) return {};
  const roles = [...words].flatMap(([word, means]) => (means === null ? [] : [[means, word] as const]));
  const unused = [...words].find(([, means]) => means === null)?.[0];
  return { portRoles: { roles: Object.fromEntries(roles), ...(unused === undefined ? {} : { unused }) } };
}

function rowOf(
  setting: LearnedSetting,
  { forms }: Listing,
  meant: RowMeant | undefined,
  port: string | undefined,
): BoardSetting {
  return {
    ...rowOfSetting(setting, forms.decimal),
    ...meant,
    ...(port === undefined ? {} : { port }),
  };
}

function textOf(
  listing: Listing,
  all: readonly LearnedSetting[],
  confirmed: Confirmed,
  catalog: Catalog,
): BoardText {
  const quote = quoteOf(listing);
  const wholesOf = (key: string) =>
    (confirmed.settings.get(key) ?? []).flatMap(({ means, parts }) => (parts === undefined ? [means] : []));
  const list = saidList(all, wholesOf, listing.forms.decimal, catalog);
  return {
    forms: listing.forms,
    ...(quote === null ? {} : { quote }),
    flags: flagsOf(all),
    ...(list === null ? {} : { list }),
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
