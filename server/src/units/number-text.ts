/**
 * Writes a number as a script would: a decimal point, no exponent, no digits that are only the trace of
 * binary arithmetic (12 significant digits are kept: more than any value of a craft has).
 */
export function plainNumber(value: number, significant = 12): string {
  if (!Number.isFinite(value)) return String(value);
  if (Number.isInteger(value)) return String(BigInt(value));
  const rounded = Number(value.toPrecision(significant));
  const text = String(rounded);
  return text.includes('e') ? withoutExponent(rounded, significant) : text;
}

/** Writes a figure with few digits, for people: 3 significant ones unless told otherwise. */
export function shortNumber(value: number, significant = 3): string {
  if (Number.isInteger(value) && Math.abs(value) < 1e6) return plainNumber(value);
  const whole = Math.abs(value) >= 10 ** significant;
  return whole ? String(Math.round(value)) : plainNumber(value, significant);
}

/** Text that a person typed: a bare number is meant in the unit, all else stays as it is. */
export function withUnit(text: string, unit: string): string {
  return unit !== '' && /^[+-]?[\d.]+$/.test(text) ? `${text} ${unit}` : text;
}

/** A number before a unit with more than three digits behind the point. */
const tail = /(?<![\w.])\d+\.\d{4,}(?= [A-Za-z%])/g;

/**
 * Cuts the long tails that conversions leave: with six digits, `199.526231497 mW` is written as 199.526 mW. For
 * people only.
 */
export function withoutTails(text: string, digits = fewestOfTail): string {
  return text.replace(tail, (number) =>
    number.replace('.', '').replace(/^0+/, '').length <= digits
      ? number
      : plainNumber(Number(number), digits),
  );
}

export const fewestOfTail = 6;

function withoutExponent(value: number, significant: number): string {
  const magnitude = Math.floor(Math.log10(Math.abs(value)));
  const digits = Math.min(100, Math.max(0, significant - 1 - magnitude));
  const fixed = value.toFixed(digits);
  return fixed.includes('.') ? fixed.replace(/\.?0+$/, '') : fixed;
}
