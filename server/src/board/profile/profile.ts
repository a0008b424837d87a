import { titleOf } from '../../catalog/board-title';
import type { BoardProfile, BoardSetting, BoardText } from '../../catalog/model/board-profile';
import { NameTable, type ProfileRow, type RowFound } from './name-table';

export type { ProfileRow, RowFound } from './name-table';

/** How a board spells values that have a meaning, where a row says nothing else. */
export interface SpellingManner {
  readonly flags: { readonly on: string; readonly off: string };
  readonly list: { readonly between: string; readonly none: string };
  readonly decimal: '.' | ',';
  readonly quote: '' | '"' | "'";
}

/** A board that can be written for: its profile, ready for use. */
export interface Profile {
  readonly board: BoardProfile;
  readonly name: string;
  readonly title: string;
  readonly text: BoardText;
  readonly manner: SpellingManner;
  /** In the board's order. */
  readonly rows: readonly ProfileRow[];
  /** What a written name is; undefined for one that the profile does not list. */
  find(groups: readonly string[], name: string, occurrence?: number, item?: number): RowFound | undefined;
}

const profiles = new WeakMap<BoardProfile, Profile | null>();

/** The profile of a board that is free of faults; null where it does not say how the board writes its settings. */
export function profileOf(board: BoardProfile): Profile | null {
  const known = profiles.get(board);
  if (known !== undefined) return known;
  const made = makeProfile(board);
  profiles.set(board, made);
  return made;
}

/** Rows as the file has them, each with its groups as a list; of a setting with several values one for each. */
export function rowsOf({ settings }: BoardProfile): readonly ProfileRow[] {
  return settings.flatMap((setting, index): readonly ProfileRow[] => {
    const groups = groupsOf(setting);
    const { items, ...whole } = setting;
    const row = { groups, name: setting.name, index };
    if (items === undefined) return [{ ...row, setting }];
    return items.map((item, at) => ({ ...row, setting: { ...whole, ...item }, item: at + 1 }));
  });
}

function groupsOf({ group }: BoardSetting): readonly string[] {
  if (group === undefined) return [];
  return typeof group === 'string' ? [group] : group;
}

function makeProfile(board: BoardProfile): Profile | null {
  const { text } = board;
  if (text === undefined) return null;
  const rows = rowsOf(board);
  const names = new NameTable(rows, board);
  return {
    board,
    name: board.name,
    title: titleOf(board),
    text,
    manner: mannerOf(text),
    rows,
    find: (groups, name, occurrence, item) => names.find(groups, name, occurrence, item),
  };
}

/** The lines that tell the board one setting, as templates; null: as its listing shows it, or not known yet. */
export function commandForms({ command }: Pick<BoardText, 'command'>): readonly string[] | null {
  return command === undefined || command === 'same' ? null : [command].flat();
}

/** What a board writes before decimals; a point where nobody has said how it writes. */
export function decimalMarkOf(board: BoardProfile | undefined): SpellingManner['decimal'] {
  return board?.text?.forms.decimal ?? '.';
}

export function mannerOf({ flags, list, quote, forms }: BoardText): SpellingManner {
  return {
    flags: flags ?? { on: 'on', off: 'off' },
    list: list ?? { between: ',', none: '-' },
    decimal: forms.decimal,
    quote: quote ?? '',
  };
}
