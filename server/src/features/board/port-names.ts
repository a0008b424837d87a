import { scriptWordOf } from '../../board/learn/words/script-word';
import type { MeaningRow } from './meaning-row';

/** How many names are offered: of more, a person would not look through them. */
const most = 24;

const portWord = /\b(?:uart|serial|port|schnittstelle)[ _-]?(\d{1,2})\b/giu;

/** Names of ports that a board's text shows, as a script can write them: in names, and where a port is named. */
export function portNames(rows: readonly MeaningRow[]): readonly string[] {
  const names = new Set<string>();
  for (const { group, name, value, choices } of rows) {
    const found = [...`${group} ${name} ${value}`.matchAll(portWord)].map(([word]) => word);
    const namesOne = choices[0]?.means.endsWith('.port') === true && /\p{L}/u.test(value);
    for (const word of namesOne ? [...found, value] : found) {
      const plain = scriptWordOf(word);
      if (plain !== null) names.add(plain);
    }
  }
  return [...names].slice(0, most);
}
