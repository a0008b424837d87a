import type { MeaningChoice, MeaningRow } from '../../server/src/lsp/board-protocol';
import type { Board } from './board';
import { ask } from './extension-side';

/** What a person says of how a setting holds a parameter. */
export interface Saying {
  readonly means: string;
  readonly isRole?: boolean;
  readonly item?: number;
  readonly parts?: readonly unknown[];
  readonly counted?: object;
  readonly spelled?: object;
}

/** How a setting was said to count: in a way of the list, in one of its own, or in none that is known. */
export type Alike = { readonly title: string } | { readonly counted: object } | { readonly isRole: true };

/** Null: nothing was said of how it counts. */
export function alikeIn({ isRole, counted }: Saying): Alike | null {
  if (isRole === true) return { isRole };
  return counted === undefined ? null : { counted };
}

/** The other settings of the family, said or not: none of them is to stand apart. */
export function othersAlike(
  board: Board,
  { key }: MeaningRow,
  { family }: MeaningChoice,
): readonly MeaningRow[] {
  return board.rows().filter((row) => row.key !== key && familyOf(board, row) === family && !row.isShared);
}

function familyOf(board: Board, row: MeaningRow): string | null {
  return row.said?.family ?? (row.sureness === 'possible' ? null : (board.offer(row)?.family ?? null));
}

/** What the rows of these settings say if they count so. */
export async function saidAlike(
  board: Board,
  rows: readonly MeaningRow[],
  alike: Alike,
): Promise<readonly { readonly key: string; readonly row: object }[]> {
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
  const answers = await ask('choices', { sayings });
  return answers.flatMap(({ key, choice }) => (choice?.row == null ? [] : [{ key, row: choice.row }]));
}
