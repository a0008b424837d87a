/** The part of a list that a number says in its binary digits. */
export const ofBits = ['bits', 'its bits, a word each'] as const;

/** The digits of a number that are asked for at once, from 0 for the lowest. */
export const digits = Array.from({ length: 8 }, (_, digit) => `bit ${digit}`);

/** By word, the digit that says it: `bit 3` is 3. */
export function digitsIn(spelled: Readonly<Record<string, string>>): Readonly<Record<string, number>> {
  return Object.fromEntries(
    Object.entries(spelled).flatMap(([word, own]) => {
      const digit = /(\d{1,2})$/.exec(own)?.[1];
      return digit === undefined ? [] : [[word, Number(digit)]];
    }),
  );
}
