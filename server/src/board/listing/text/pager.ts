import type { Line } from './line';

/** What a pager writes where it waits for a key: a line of its own that no board meant. */
const pages: readonly RegExp[] = [
  /^\W{1,12}(?:more|mehr|weiter|suite|plus)\W{0,12}(?:\d{1,3}\W{0,6})?$/i,
  /^(?:more|mehr|weiter|suite)\W{1,12}(?:\d{1,3}\W{0,6})?$/i,
  /^\W{0,12}(?:press|hit|type|taste|weiter|appuyez|touche)\b[^=:]{0,80}(?:key|space|enter|return|more|continue|quit|taste|leertaste|touche|espace|entr\u00e9e)\b.{0,40}$/i,
  /^\W{0,6}(?:lines|zeilen|lignes) \d{1,7}\s?-\s?\d{1,7}(?:\D.{0,20})?$/i,
  /^\W{0,6}(?:space|enter|return|any key|leertaste|taste|espace)\b[^=:]{0,40}\b(?:more|continue|next|weiter|mehr|suite)\b\W{0,6}$/i,
  /^\(END\)$/,
];

const longest = 160;

export function isPageBreak(line: string): boolean {
  const text = line.length > longest ? '' : line.trim();
  return text !== '' && pages.some((page) => page.test(text));
}

/** The lines without those at which a pager waited, and without what it wiped away with blanks. */
export function withoutPages(lines: readonly Line[]): readonly Line[] {
  const returns = lines.filter(({ end }) => end === 'return').length;
  // Where many lines end so, it is how this text ends its lines.
  const isWiped = ({ text, end }: Line) =>
    end === 'return' && returns <= lines.length / shareOfReturns && text.trim() === '';
  return lines.some((line) => isWiped(line) || isPageBreak(line.text))
    ? lines.filter((line) => !isWiped(line) && !isPageBreak(line.text))
    : lines;
}

const shareOfReturns = 2;
