import type { MeaningRow } from './meanings';

/** How many names are offered: of more, a person would not look through them. */
const most = 24;

const portWord = /\b(?:uart|serial|port|schnittstelle)[ _-]?(\d{1,2})\b/giu;

/** Names of ports that a board's text shows, as a script can write them: in names, and where a port is named. */
export function portNames(rows: readonly MeaningRow[]): readonly string[] {
  const names = new Set<string>();
  for (const { group, name, value, choices } of rows) {
    for (const [word] of `${group} ${name} ${value}`.matchAll(portWord)) names.add(plain(word));
    if (choices[0]?.means.endsWith('.port') === true && /\p{L}/u.test(value)) names.add(plain(value));
  }
  return [...names].filter((name) => /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/.test(name)).slice(0, most);
}

function plain(word: string): string {
  return word
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
}
