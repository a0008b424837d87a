import { wordDistance, wordOf } from '../../../catalog/word-distance';

/**
 * How far a text may be trusted to be a shortened or misspelt form of a word: 0 to 1. Both are small letters.
 * Beginnings (`thro`), dropped vowels (`thrtl`), letters in their order (`chnl`), slips of the finger.
 */
export function shortenedTrust(text: string, word: string): number {
  if (text.charCodeAt(0) !== word.charCodeAt(0) || text.length > word.length + 1) return 0;
  if (word.startsWith(text)) return text.length >= 4 ? 0.85 : text.length === 3 ? 0.75 : 0.4;
  if (text.length < 3) return text.length === 2 && isEnds(text, word) ? 0.35 : 0;
  const bones = withoutVowels(word);
  const own = withoutVowels(text);
  if (own === bones && own.length >= 3) return 0.85;
  if (text.length >= 5 && wordDistance(wordOf(text), wordOf(word)) <= 1) return 0.8;
  if (own === text && bones.startsWith(text)) return 0.7;
  return isInOrder(text, word) && text.length >= 0.34 * word.length ? 0.5 : 0;
}

function isEnds(text: string, word: string): boolean {
  return word.length >= 4 && withoutVowels(word).charAt(1) === text.charAt(1);
}

/** The first letter stays, whatever it is. */
function withoutVowels(word: string): string {
  return word.charAt(0) + word.slice(1).replace(/[aeiouy]/g, '');
}

function isInOrder(text: string, word: string): boolean {
  let at = 0;
  for (const letter of word) if (letter === text[at]) at++;
  return at === text.length;
}
