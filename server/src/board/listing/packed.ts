import type { DecimalMark } from './number-look';
import { lookOf } from './value-look';
import { writtenInLook } from './written-in-look';

/** A number holds so many digits exactly. */
const mostDigits = 53;

/**
 * The binary digits of a number that each say on or off, the lowest first, at least so many; null for what is no whole
 * number.
 */
export function digitsIn(token: string, least: number, mark: DecimalMark): readonly string[] | null {
  const number = wholeIn(token, mark);
  if (number === null) return null;
  const count = Math.max(least, number.toString(2).length);
  return Array.from({ length: count }, (_, place) => String(Math.floor(number / 2 ** place) % 2));
}

/** The number with other digits at some places, from 0, in the look that it has; null for what is no whole number. */
export function withDigits(
  token: string,
  digits: ReadonlyMap<number, string>,
  mark: DecimalMark,
): string | null {
  const number = wholeIn(token, mark);
  if (number === null) return null;
  const changed = [...digits].reduce((sum, [place, digit]) => {
    const before = Math.floor(number / 2 ** place) % 2;
    return sum + (Number(digit) - before) * 2 ** place;
  }, number);
  return writtenInLook(String(changed), token, mark);
}

function wholeIn(token: string, mark: DecimalMark): number | null {
  const look = lookOf(token, mark);
  const number = look.kind === 'number' ? look.value : Number.NaN;
  return Number.isInteger(number) && number >= 0 && number < 2 ** mostDigits ? number : null;
}
