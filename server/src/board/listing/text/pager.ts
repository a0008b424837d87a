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
