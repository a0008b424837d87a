import type { LayoutColumn } from '../../catalog/model/recording-layout';
import type { TableColumn } from '../read/table-head';

/** What a column is taken for, or why it is not. */
export interface ProposedColumn {
  readonly column: TableColumn;
  /** Without a channel where it is left out. Of one with a question that keeps it from being read: the likeliest. */
  readonly means: LayoutColumn;
  /** What speaks for it, as a sentence. */
  readonly why: string;
  readonly asks: readonly ColumnQuestion[];
  /** Why it is left out though nothing is asked; null where it is read or asked about. */
  readonly leftOut: WhyLeftOut | null;
}

/** Nobody knows it, no answer needs it, it holds no numbers, or always the same one. */
export type WhyLeftOut = 'unknown' | 'not needed' | 'no numbers' | 'never changes';

/** What a pilot has to say of a column. */
export interface ColumnQuestion {
  readonly sentence: string;
  /** Whether the column can't be read before it is answered. */
  readonly keepsOut: boolean;
  /** Each with what the column then means. */
  readonly choices: readonly { readonly title: string; readonly means: LayoutColumn }[];
}

/** Whether a column is read before anybody has confirmed it. */
export function isTaken({ means, asks }: ProposedColumn): boolean {
  return means.channel !== undefined && !asks.some(({ keepsOut }) => keepsOut);
}
