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

/**
 * A number that was measured, to a tenth of the width of its span (GUM, JCGM 100:2008, section 7.2.6: no more digits than
 * the uncertainty lets stand); at most four digits tell anything, and three where there is no span.
 */
export function measuredNumber(
  value: number,
  { low, high }: { readonly low: number; readonly high: number },
): string {
  const width = high - low;
  if (!(width > 0)) return unsignedZero(shortNumber(Number(value.toPrecision(3))));
  const step =
    10 ** Math.max(Math.floor(Math.log10(width)) - 1, Math.floor(Math.log10(Math.abs(value) || width)) - 3);
  const places = Math.max(0, -Math.round(Math.log10(step)));
  return unsignedZero((Math.round(value / step) * step).toFixed(Math.min(6, places)));
}

/** What is rounded to nothing has no sign. */
function unsignedZero(text: string): string {
  return Number(text) === 0 ? text.replace('-', '') : text;
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
