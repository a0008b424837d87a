import { numberLook } from '../number-look';

const longestName = 120;

/** What stands before a name that is on, and before one that is off. */
export interface PresenceMarks {
  readonly affirmation: string;
  readonly negation: string;
}

/** Whether a text can be a name that stands alone: one word. */
export function isPresenceName(name: string): boolean {
  return (
    name.length <= longestName && /^[\p{L}\p{N}@_](?:[\p{L}\p{N}@_./:-]*[\p{L}\p{N}@_./-])?$/u.test(name)
  );
}

/** Whether these are boxes that are ticked or not, as no name has before it: `[x] `, `( ) `. */
export function isBox({ affirmation, negation }: PresenceMarks): boolean {
  return /^(?:[[(].[\])]|[\u2610-\u2612\u2713-\u2718\u25cb\u25cf])\s?$/u.test(affirmation) && negation !== '';
}

const mostWords = 10;

/** Whether a text can be the name behind such a mark: a ticked one may have several words, but nothing like a value. */
export function isNameBehind(name: string, marks: PresenceMarks): boolean {
  if (isPresenceName(name)) return true;
  const words = name.split(' ');
  return (
    isBox(marks) &&
    name.length <= longestName &&
    words.length <= mostWords &&
    !/[=:()[\]{}|]|\s{2}|\t/.test(name) &&
    words.every((word) => numberLook(word, '.') === null)
  );
}
