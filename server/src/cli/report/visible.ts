import { hiddenCharacter } from '../../language/look-alikes';

/** Beside what a script may not hold either: what parts lines, and marks that tell where writing turns. */
const unsafe = new RegExp(`${hiddenCharacter.source}|[\\u061c\\u200e\\u200f\\u2028\\u2029]`, 'gu');

/** What others wrote, texts and names of files, made harmless for a terminal: shown, not obeyed. */
export function visible(text: string): string {
  return text.replace(unsafe, '\ufffd');
}

/**
 * Data as JSON, for programs. What a terminal would obey is written as an escape: the data are the same, and a
 * person may look at them.
 */
export function jsonText(data: unknown): string {
  const escaped = (character: string) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;
  const text = JSON.stringify(data, null, 2);
  return `${text.replace(unsafe, (character) => (character === '\n' ? character : escaped(character)))}\n`;
}
