/** How a number is written. */
export interface NumberLook {
  readonly kind: 'number';
  readonly base: 2 | 8 | 10 | 16;
  /** NaN where it has more digits than a number holds exactly. */
  readonly value: number;
  readonly sign: string;
  /** `0x`, as it is written; empty for base 10. */
  readonly prefix: string;
  /** Digits before the decimals, without signs and separators: `007` has 3. */
  readonly digits: number;
  readonly hasLeadingZeros: boolean;
  readonly isUpperCase: boolean;
  /** What stands between thousands; empty for nothing. */
  readonly thousands: string;
  /** What stands before the decimals, and how many there are. */
  readonly point: string;
  readonly decimals: number;
  /** `e+05`: its letter, sign and number of digits; null without one. */
  readonly exponent: { readonly letter: string; readonly sign: string; readonly digits: number } | null;
}

export type DecimalMark = '.' | ',';

const based = /^([+\u2212-]?)(0[xXbBoO])([0-9A-Fa-f]+)$/;

/** More digits than these are told apart as text: a number would round them. */
const exactDigits = 15;
const longest = 80;

/** Reads a number; null for what is none. `1,000` is a thousand where decimals follow a point, and one where they follow a comma. */
export function numberLook(text: string, mark: DecimalMark = '.'): NumberLook | null {
  if (text === '' || text.length > longest) return null;
  return basedLook(text) ?? decimalLook(text, mark);
}

const bases = { x: 16, b: 2, o: 8 } as const;

function basedLook(text: string): NumberLook | null {
  const found = based.exec(text);
  if (found === null) return null;
  const [, sign = '', prefix = '', digits = ''] = found;
  const letter = prefix[1]?.toLowerCase();
  const base = letter === 'x' || letter === 'b' || letter === 'o' ? bases[letter] : 16;
  if ([...digits].some((digit) => Number.parseInt(digit, 36) >= base)) return null;
  const size = Number(`0${letter}${digits}`);
  return {
    kind: 'number',
    base,
    value: Number.isSafeInteger(size) ? (isMinus(sign) ? -size : size) : Number.NaN,
    sign,
    prefix,
    digits: digits.length,
    hasLeadingZeros: digits.length > 1 && digits.startsWith('0'),
    isUpperCase: /[A-F]/.test(digits),
    ...plainParts,
  };
}

const plainParts = { thousands: '', point: '.', decimals: 0, exponent: null } as const;

function decimalLook(text: string, mark: DecimalMark): NumberLook | null {
  const [, sign = '', mantissa = '', letter, exponentSign = '', exponentDigits = ''] = parts.exec(text) ?? [];
  const grouped = groupedBy(mantissa, letter !== undefined, mark);
  if (grouped === null) return null;
  const { digits, thousands, decimals } = grouped;
  const size = Number(`${digits}.${decimals}e${exponentSign}${exponentDigits || 0}`);
  const isExact = digits.replace(/^0+/, '').length + decimals.length <= exactDigits && Number.isFinite(size);
  return {
    kind: 'number',
    base: 10,
    value: isExact ? (isMinus(sign) ? -size : size) : Number.NaN,
    sign,
    prefix: '',
    digits: digits.length,
    hasLeadingZeros: digits.length > 1 && digits.startsWith('0'),
    isUpperCase: false,
    thousands,
    point: mark,
    decimals: decimals.length,
    exponent: letter === undefined ? null : { letter, sign: exponentSign, digits: exponentDigits.length },
  };
}

/** Sign, digits with their marks, exponent. */
const parts = /^([+\u2212-]?)([\d.,'\u2019_ \u00a0\u202f]+)(?:([eE])([+-]?)(\d+))?$/;

interface Grouped {
  readonly digits: string;
  readonly thousands: string;
  readonly decimals: string;
}

/** Tells thousands from decimals; null where the marks make no number: `1,5` in a listing of points is a pair. */
function groupedBy(mantissa: string, hasExponent: boolean, mark: DecimalMark): Grouped | null {
  const at = mantissa.lastIndexOf(mark);
  const whole = at < 0 ? mantissa : mantissa.slice(0, at);
  const decimals = at < 0 ? '' : mantissa.slice(at + 1);
  const thousands = /[^\d]/.exec(whole)?.[0] ?? '';
  const groups = thousands === '' ? [whole] : whole.split(thousands);
  const digits = groups.join('');
  if (!/^\d*$/.test(digits + decimals) || digits + decimals === '') return null;
  if (thousands === '') return { digits, thousands, decimals };
  const [first = '', ...others] = groups;
  const isGrouped = /^[1-9]\d{0,2}$/.test(first) && others.every((group) => group.length === 3);
  return isGrouped && thousands !== mark && !hasExponent ? { digits, thousands, decimals } : null;
}

function isMinus(sign: string): boolean {
  return sign === '-' || sign === '\u2212';
}
