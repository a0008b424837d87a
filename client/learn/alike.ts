import type { MeaningChoice, MeaningRow, PartHeld, SayingOfRow } from '../../server/src/lsp/learn-protocol';
import type { Board, SaidOfSetting } from './board';
import { ask } from './extension-side';
import { numberedAlike } from './numbered';

/** What a person says of how a setting holds a parameter. */
export interface Saying {
  readonly means: string;
  readonly isRole?: boolean;
  readonly item?: number;
  readonly parts?: readonly PartHeld[];
  readonly bit?: number;
  readonly bits?: Readonly<Record<string, number>>;
  readonly counted?: object;
  readonly spelled?: object;
}

/** How a setting was said to count: in a way of the list, in one of its own, or in none that is known. */
export type Alike =
  | { readonly title: string }
  | { readonly counted: object }
  | { readonly isRole: true }
  /** It is an entry of a list: those that differ in their number are the others. */
  | { readonly means: string; readonly entry: number; readonly spelled: object };

/** Null: nothing was said of how it counts. */
export function alikeIn({ means, isRole, counted, parts, spelled = {} }: Saying): Alike | null {
  if (isRole === true) return { isRole };
  const [part] = parts ?? [];
  if (typeof part === 'object' && 'entry' in part) return { means, entry: part.entry, spelled };
  return counted === undefined ? null : { counted };
}

/** The other settings of the family, said or not: none of them is to stand apart. */
export function othersAlike(
  board: Board,
  row: MeaningRow,
  { family }: MeaningChoice,
  alike: Alike,
): readonly MeaningRow[] {
  if ('entry' in alike) return numberedAlike(board.rows(), row).map((other) => other.row);
  const { key } = row;
  return board.rows().filter((row) => row.key !== key && familyOf(board, row) === family && !row.isShared);
}

function familyOf(board: Board, row: MeaningRow): string | null {
  return row.said?.family ?? (row.sureness === 'possible' ? null : (board.offer(row)?.family ?? null));
}

/** What the rows of these settings say if they count so. */
export async function saidAlike(
  board: Board,
  own: MeaningRow,
  rows: readonly MeaningRow[],
  alike: Alike,
): Promise<readonly SaidOfSetting[]> {
  if ('entry' in alike) return saidOfEntries(board, own, alike);
  const meant = rows.flatMap((row) => {
    const offer = board.offer(row);
    const means = row.said?.means ?? offer?.means;
    const as = (row.said?.row ?? offer?.row ?? offer?.ways[0]?.row)?.as;
    return means === undefined ? [] : [{ row, means, as }];
  });
  if ('isRole' in alike) return meant.map(({ row, means }) => ({ key: row.key, row: { role: means } }));
  if ('title' in alike)
    return meant.flatMap(({ row: { key, choices }, means }) => {
      const way = choices
        .find((choice) => choice.means === means)
        ?.ways.find(({ title }) => title === alike.title);
      return way === undefined ? [] : [{ key, row: way.row }];
    });
  const sayings = meant.map(({ row: { key }, means, as }) => {
    const saying: Saying = { means, counted: alike.counted, ...(as === undefined ? {} : { parts: [as] }) };
    return { key, saying: JSON.stringify(saying) };
  });
  return answered(sayings);
}

async function answered(sayings: readonly SayingOfRow[]): Promise<readonly SaidOfSetting[]> {
  const answers = await ask('choices', { sayings });
  return answers.flatMap(({ key, choice }) => (choice?.row == null ? [] : [{ key, row: choice.row }]));
}

/** The other entries of the list, each by how far its number is from the own one's. */
function saidOfEntries(
  board: Board,
  own: MeaningRow,
  { means, entry, spelled }: Extract<Alike, { entry: number }>,
): Promise<readonly SaidOfSetting[]> {
  const sayings = numberedAlike(board.rows(), own).flatMap(({ row: { key }, off }) => {
    const saying: Saying = { means, parts: [{ entry: entry + off }], spelled };
    return entry + off < 1 ? [] : [{ key, saying: JSON.stringify(saying) }];
  });
  return answered(sayings);
}
