import stringWidth from 'string-width';
import type { Span } from '../language/ast';
import { visible } from './terminal';

/** Most UTF-16 units of a line that are shown. */
const widest = 160;

/** A line as a terminal shows it, and where the mark under it goes, in columns of the terminal. */
export interface Excerpt {
  readonly line: string;
  readonly indent: number;
  readonly length: number;
}

/**
 * The line round a place; a very long line is cut. An ideograph or an emoji takes two columns, a combining
 * mark none: the mark is counted as the terminal counts.
 */
export function excerptOf(text: string, { start, end }: Span): Excerpt {
  const from = start > widest ? start - widest / 4 : 0;
  const to = from + widest;
  return {
    line: shown(text.slice(from, to)),
    indent: stringWidth(shown(text.slice(from, start))),
    length: Math.max(1, stringWidth(shown(text.slice(start, Math.min(end, to))))),
  };
}

/** A tab would take more columns in one terminal than in another. */
function shown(text: string): string {
  return visible(text).replaceAll('\t', ' ');
}
