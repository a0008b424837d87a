const [plus, comma, minus, point, zero, colon, largeE, smallE] = [43, 44, 45, 46, 48, 58, 69, 101];
const powers = Float64Array.from({ length: 309 }, (_, exponent) => Number(`1e${exponent}`));
const billion = 1e9;
/** Nothing that is measured is larger: what is, is no number. */
const largest = 1e30;
/** More digits than a stamp can have. */
const mostStampDigits = 24;

/**
 * Reads numbers out of bytes, without making a text. Up to 15 digits a number is the double that is nearest to what is
 * written: a product or a quotient of two that are exact (W. D. Clinger, How to read floating point numbers
 * accurately, 1990, section 4). With more it may be off by the last few bits, of which a column of 32 bits keeps none.
 */
export class NumberReader {
  /** What was read last; NaN where nothing was. */
  value = Number.NaN;
  /** The whole number of the first stamp, from which stamps are counted. */
  origin = 0;
  private originHigh = -1;
  private originLow = 0;
  private readonly decimal: number;

  constructor(decimalComma: boolean) {
    this.decimal = decimalComma ? comma : point;
  }

  /** Reads the number that begins at `at`; gives where it ends, which is `at` where there is none. */
  number(bytes: Uint8Array, at: number, end: number): number {
    let next = at;
    const sign = next < end ? (bytes[next] as number) : 0;
    if (sign === minus || sign === plus) next += 1;
    const whole = next;
    let mantissa = 0;
    for (; next < end; next += 1) {
      const digit = (bytes[next] as number) - zero;
      if (digit < 0 || digit > 9) break;
      mantissa = mantissa * 10 + digit;
    }
    let digits = next - whole;
    let behind = 0;
    // Hours and minutes of a clock, in seconds: `13:58:21.500`.
    let sixties = 0;
    for (let group = 0; group < 2 && digits > 0; group += 1) {
      if (next + 1 >= end || bytes[next] !== colon || !isDigit(bytes[next + 1] as number)) break;
      sixties = 60 * (sixties + mantissa);
      mantissa = 0;
      for (next += 1; next < end && isDigit(bytes[next] as number); next += 1)
        mantissa = mantissa * 10 + ((bytes[next] as number) - zero);
    }
    const isClock = next > whole + digits;
    // Clocks have a point where other numbers have a comma, too.
    if (next < end && (bytes[next] === this.decimal || (isClock && bytes[next] === point))) {
      const fraction = next + 1;
      for (next = fraction; next < end; next += 1) {
        const digit = (bytes[next] as number) - zero;
        if (digit < 0 || digit > 9) break;
        mantissa = mantissa * 10 + digit;
      }
      behind = next - fraction;
      digits += behind;
    }
    this.value = Number.NaN;
    if (digits === 0) return at;
    let exponent = 0;
    if (next < end && isExponent(bytes[next] as number)) {
      const to = afterExponent(bytes, next + 1, end);
      if (to > next + 1) exponent = exponentOf(bytes, next + 1, to);
      next = to > next + 1 ? to : next;
    }
    const size = sixties + scaled(mantissa, exponent - behind);
    if (size > largest) return at;
    this.value = sign === minus ? -size : size;
    return next;
  }

  /**
   * The same for a stamp, which is counted from the whole number of the first one: nanoseconds since 1970 have more
   * digits than a double holds, and what lies between two of them has not.
   */
  stamp(bytes: Uint8Array, at: number, end: number): number {
    let behind = at;
    while (behind < end && isDigit(bytes[behind] as number)) behind += 1;
    const hasFraction = behind < end && bytes[behind] === this.decimal;
    let next = hasFraction ? behind + 1 : behind;
    while (hasFraction && next < end && isDigit(bytes[next] as number)) next += 1;
    const isPlain = behind === at || behind - at > mostStampDigits;
    const isClock = behind < end && bytes[behind] === colon;
    if (isPlain || isClock || (next < end && isExponent(bytes[next] as number)))
      return this.plainStamp(bytes, at, end);
    if (next > behind + 1) this.number(bytes, behind, next);
    const fraction = next > behind + 1 ? this.value : 0;
    const cut = Math.max(at, behind - 9);
    const high = wholeNumber(bytes, at, cut);
    const low = wholeNumber(bytes, cut, behind);
    if (this.originHigh < 0) {
      this.originHigh = high;
      this.originLow = low;
      this.origin = high * billion + low;
    }
    this.value = (high - this.originHigh) * billion + (low - this.originLow) + fraction;
    return next;
  }

  /** A stamp that is written with a sign or an exponent. */
  private plainStamp(bytes: Uint8Array, at: number, end: number): number {
    const next = this.number(bytes, at, end);
    if (this.originHigh < 0 && next > at) this.originHigh = 0;
    this.value -= this.origin;
    return next;
  }
}

/** 10^22 is the largest power of ten that a double holds exactly. */
function scaled(mantissa: number, exponent: number): number {
  if (exponent === 0 || mantissa === 0) return mantissa;
  if (exponent > 308) return Number.POSITIVE_INFINITY;
  if (exponent > 0) return mantissa * (powers[exponent] as number);
  if (exponent >= -308) return mantissa / (powers[-exponent] as number);
  return mantissa / 1e308 / (powers[Math.min(308, -exponent - 308)] as number);
}

function afterExponent(bytes: Uint8Array, at: number, end: number): number {
  let next = at;
  if (bytes[next] === minus || bytes[next] === plus) next += 1;
  const start = next;
  while (next < end && isDigit(bytes[next] as number)) next += 1;
  return next > start ? next : at;
}

function exponentOf(bytes: Uint8Array, from: number, to: number): number {
  const hasSign = bytes[from] === minus || bytes[from] === plus;
  const size = Math.min(9999, wholeNumber(bytes, hasSign ? from + 1 : from, to));
  return bytes[from] === minus ? -size : size;
}

function wholeNumber(bytes: Uint8Array, from: number, to: number): number {
  let value = 0;
  for (let at = from; at < to; at += 1) value = value * 10 + ((bytes[at] as number) - zero);
  return value;
}

function isDigit(byte: number): boolean {
  return byte >= zero && byte <= zero + 9;
}

function isExponent(byte: number): boolean {
  return byte === smallE || byte === largeE;
}
