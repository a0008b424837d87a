import type { Catalog } from '../../../catalog/catalog';
import type { BoardProfile, BoardSetting, PortRoles, RowMeant } from '../../../catalog/model/board-profile';
import { meaningFaults } from '../../meaning/meaning-faults';
import { portFaults } from '../../meaning/port-roles';
import { openMember } from '../../profile/members';
import { decimalMarkOf, type Profile, profileOf, rowsOf } from '../../profile/profile';
import { type LearnedSetting, settingName } from '../learned-settings';
import { saidList } from '../said-list';
import { rowOfSetting } from '../setting-row';

/** What becomes of a profile of which more is said. */
export interface WithMeanings {
  readonly board: BoardProfile;
  /** By the settings' keys, why something could not be said of them, as the end of a sentence. */
  readonly refused: ReadonlyMap<string, string>;
}

/** What is said of settings, by their keys, and of the words that say what ports are for. */
export interface SaidOfRows {
  readonly rows: ReadonlyMap<string, RowMeant>;
  /** Takes the place of what the profile has; undefined: nothing is said. */
  readonly portRoles?: PortRoles;
}

/**
 * A profile in which these settings mean what is said of them, by their keys; an empty meaning takes back what was
 * said. All else stays as it stands. What a profile can't have is left out, and told.
 */
export function withMeanings(
  before: BoardProfile,
  settings: readonly LearnedSetting[],
  { rows: said, portRoles }: SaidOfRows,
  catalog: Catalog,
): WithMeanings {
  const board = withPortRoles(withList(before, settings, said, catalog), portRoles);
  const profile = profileOf(board);
  const rows = [...board.settings];
  const places = new Map<number, string>();
  const refused = new Map<string, string>();
  for (const setting of settings) {
    const key = settingName(setting);
    const meant = said.get(key);
    if (meant === undefined) continue;
    const place = placeOf(setting, profile);
    if (place !== null && isShared(rows[place])) {
      refused.set(key, 'its row in the profile says it of all members together');
      continue;
    }
    places.set(place ?? rows.length, key);
    if (place === null) rows.push({ ...rowOfSetting(setting, decimalMarkOf(board)), ...meant });
    else rows[place] = { ...withoutMeaning(rows[place]), ...meant };
  }
  const { byPlace, areWordsWrong } = faultsOf({ ...board, settings: rows }, places, catalog);
  for (const [place, why] of byPlace) {
    refused.set(places.get(place) ?? '', why);
    rows[place] = before.settings[place] ?? withoutMeaning(rows[place]);
  }
  const words = areWordsWrong ? withPortRoles(board, before.portRoles ?? { roles: {} }) : board;
  return { board: { ...words, settings: rows }, refused };
}

function placeOf({ groups, name, occurrence }: LearnedSetting, profile: Profile | null): number | null {
  return profile?.find(groups, name, occurrence)?.row.index ?? null;
}

/** Whether a row is for all members of a collection. */
function isShared(row: BoardSetting | undefined): boolean {
  return row !== undefined && [row.group ?? [], row.name].flat().some((text) => text.includes(openMember));
}

/** What a row says besides what it means. */
function withoutMeaning(row: BoardSetting | undefined): BoardSetting {
  if (row === undefined) return { name: '' };
  const {
    means: _,
    as: __,
    counts: ___,
    spelled: ____,
    role: _____,
    items: ______,
    between: _______,
    packed: ________,
    port: _________,
    ...rest
  } = row;
  return rest;
}

/** Faults of the rows that were said, by their place; what they share with others counts as theirs. */
function faultsOf(
  board: BoardProfile,
  places: ReadonlyMap<number, string>,
  catalog: Catalog,
): { readonly byPlace: ReadonlyMap<number, string>; readonly areWordsWrong: boolean } {
  const found = new Map<number, string>();
  const faults = [...meaningFaults(rowsOf(board), board, catalog), ...portFaults(board, catalog)];
  for (const { at, message } of faults) {
    // Words that mean nothing can be told at the settings that hold one.
    if (at[0] === 'portRoles')
      for (const other of places.keys())
        if (board.settings[other]?.port !== undefined) found.set(other, message);
    if (at[0] !== 'settings') continue;
    const place = Number(at[1]);
    const named = new Set(meaningsOf(board.settings[place]));
    for (const other of places.keys())
      if (other === place || meaningsOf(board.settings[other]).some((one) => named.has(one)))
        found.set(other, message);
  }
  return { byPlace: found, areWordsWrong: faults.some(({ at }) => at[0] === 'portRoles') };
}

function meaningsOf(row: BoardSetting | undefined): readonly string[] {
  return [row, ...(row?.items ?? [])].flatMap((one) => one?.means ?? []);
}

/** Words of which none is left are said no more. */
function withPortRoles(board: BoardProfile, portRoles: PortRoles | undefined): BoardProfile {
  if (portRoles === undefined) return board;
  const { portRoles: _, ...rest } = board;
  const isEmpty = Object.keys(portRoles.roles).length === 0 && portRoles.unused === undefined;
  return isEmpty ? rest : { ...rest, portRoles };
}

/** The profile with what stands between the words of a list, once one setting is said to be one. */
export function withList(
  board: BoardProfile,
  settings: readonly LearnedSetting[],
  said: ReadonlyMap<string, RowMeant>,
  catalog: Catalog,
): BoardProfile {
  const { text } = board;
  if (text === undefined || text.list !== undefined) return board;
  const wholesOf = (key: string) => {
    const { means, as } = said.get(key) ?? {};
    return means === undefined || as !== undefined ? [] : [means];
  };
  const list = saidList(settings, wholesOf, text.forms.decimal, catalog);
  return list === null ? board : { ...board, text: { ...text, list } };
}
