import { isBlank } from '../text/characters';

const tabWidth = 8;

/** How far a line is indented, in columns of a terminal. */
export function indentOf(text: string): number {
  let column = 0;
  for (const character of text) {
    if (!isBlank(character)) break;
    column = character === '\t' ? column + tabWidth - (column % tabWidth) : column + 1;
  }
  return column;
}
