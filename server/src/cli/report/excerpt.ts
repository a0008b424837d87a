import stringWidth from 'string-width';
import type { Span } from '../../language/ast';
import { visible } from './visible';

/** Most columns of a line that are shown, where nothing narrower is asked for. */
const widest = 160;

/** A line as a terminal shows it, and where the mark under it goes, in columns of the terminal. */
export interface Excerpt {
  readonly line: string;
  readonly indent: number;
  readonly length: number;
}

/**
 * The line round a place; one that takes more columns is cut. An ideograph or an emoji takes two columns, a
 * combining mark none: both the cut and the mark are counted as the terminal counts.
 */
export function excerptOf(text: string, { start, end }: Span, columns = widest): Excerpt {
  const before = text.slice(0, start);
  // Where the mark would stand beyond the cut, a quarter of the room shows what stands in front of it.
  const isFar = start > mostUnits(columns) || stringWidth(shown(before)) >= columns;
  const lead = isFar ? ending(before, Math.floor(columns / 4)) : before;
  const line = beginning(text.slice(start - lead.length), columns);
  const last = Math.max(0, Math.min(end - start, line.length - lead.length));
  const marked = line.slice(lead.length, lead.length + last);
  return {
    line: shown(line),
    indent: stringWidth(shown(lead)),
    length: Math.max(1, stringWidth(shown(marked))),
  };
}

/** As much of the beginning of a text as goes into so many columns. */
function beginning(text: string, columns: number): string {
  const near = text.slice(0, mostUnits(columns));
  return isPlain(near) ? near.slice(0, columns) : fitting(characters(near), columns).join('');
}

/** As much of its end. */
function ending(text: string, columns: number): string {
  const near = text.slice(-mostUnits(columns));
  if (isPlain(near)) return near.slice(-columns);
  return fitting(characters(near).reverse(), columns).reverse().join('');
}

/** Most lines: a column for each unit, without a look at each. */
function isPlain(text: string): boolean {
  return /^[\x20-\x7e]*$/.test(text);
}

/** What a person sees as one character may be many UTF-16 units, but only so many are looked at. */
function mostUnits(columns: number): number {
  return 8 * columns;
}

function fitting(all: string[], columns: number): string[] {
  let taken = 0;
  const over = all.findIndex((character) => {
    taken += stringWidth(shown(character));
    return taken > columns;
  });
  return over < 0 ? all : all.slice(0, over);
}

const segmenter = new Intl.Segmenter('en', { granularity: 'grapheme' });

function characters(text: string): string[] {
  return [...segmenter.segment(text)].map(({ segment }) => segment);
}

/** A tab would take more columns in one terminal than in another. */
function shown(text: string): string {
  return visible(text).replaceAll('\t', ' ');
}
