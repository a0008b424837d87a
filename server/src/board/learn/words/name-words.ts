/** Letters that stand for two where a keyboard has no marks. */
const twoLetters: ReadonlyMap<string, string> = new Map([
  ['ä', 'ae'],
  ['ö', 'oe'],
  ['ü', 'ue'],
  ['ß', 'ss'],
  ['œ', 'oe'],
  ['æ', 'ae'],
]);

const longestName = 400;

/**
 * The words of a name, whichever way they are put together: `gyroLpf1Hz`, `GYRO_LPF_1`, `Kreisel-Tiefpass 1`. Small
 * letters without marks (`ä` is `ae`); numbers are words of their own, with their decimals.
 */
export function nameWords(text: string): readonly string[] {
  const parted = text
    .slice(0, longestName)
    .normalize('NFC')
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .replace(/(\p{Lu})(\p{Lu}\p{Ll})/gu, '$1 $2')
    .toLowerCase()
    .replace(/(?<![\p{L}])(?:[cdjlmnst]|qu|jusqu)['’](?=\p{L})/gu, ' ');
  const plain = parted
    .replace(/[äöüßœæ]/g, (letter) => twoLetters.get(letter) ?? letter)
    .normalize('NFD')
    .replace(/\p{M}/gu, '');
  return plain.match(/\p{L}+|\d+(?:\.\d+)?/gu) ?? [];
}

export function isNumberWord(word: string): boolean {
  return /^\d/.test(word);
}

/** Endings of plurals and cases in English, German and French, the longest first. */
const endings = ['ing', 'en', 'er', 'es', 'em', 'ed', 'e', 's', 'n', 'x'];

/** A word without its ending, so that its forms are alike: a rough cut, made of both sides of a comparison. */
export function stemOf(word: string): string {
  const ending = endings.find((one) => word.endsWith(one) && word.length - one.length >= 4);
  return ending === undefined ? word : word.slice(0, -ending.length);
}
