import { type Dimension, divided, isPlain, multiplied, plain, raised } from './dimension';
import { findUnitSymbol, type UnitSymbol } from './unit-table';

/** A unit as written, perhaps a product: `Hz`, `deg/s^2`, `%/(deg/s)`. */
export interface Unit {
  readonly text: string;
  readonly dimension: Dimension;
  readonly factor: number;
  readonly offset: number;
  readonly decibelsAbove: number | null;
  readonly family: string | null;
}

/** Why a text is no unit: `text` is the part at fault, `at` its place in the whole. */
export interface UnitError {
  readonly reason: 'unknown' | 'malformed' | 'whole-only';
  readonly text: string;
  readonly at: number;
}

export type UnitResult =
  | { readonly unit: Unit; readonly error?: never }
  | { readonly unit?: never; readonly error: UnitError };

/** No unit at all: a plain number. */
const noUnit: Unit = {
  text: '',
  dimension: plain,
  factor: 1,
  offset: 0,
  decibelsAbove: null,
  family: null,
};

/** The characters that a unit symbol is made of. */
const symbolPattern = /[A-Za-z\u00b5\u03bc\u2126\u03a9\u00b0%]+/y;
const known = new Map<string, UnitResult>();
const mostKnown = 500;

/** Reads a unit. The same text always gives the same answer, so answers are kept. */
export function parseUnit(text: string): UnitResult {
  const kept = known.get(text);
  if (kept !== undefined) return kept;
  const result = read(text);
  if (known.size >= mostKnown) known.clear();
  known.set(text, result);
  return result;
}

/** Like `parseUnit`, for texts that are known to be units; throws otherwise. */
export function unitOf(text: string): Unit {
  const { unit, error } = parseUnit(text);
  if (unit === undefined) throw new Error(`"${text}" is not a unit: ${error.reason} at ${error.at}`);
  return unit;
}

function read(text: string): UnitResult {
  if (text === '') return { unit: noUnit };
  const single = findUnitSymbol(text);
  if (single !== undefined) return { unit: fromSymbol(text, single) };
  const reader = new UnitReader(text);
  try {
    const { dimension, factor } = reader.product();
    reader.end();
    return { unit: { ...noUnit, text, dimension, factor } };
  } catch (caught) {
    if (caught instanceof UnitFault) return { error: caught.error };
    throw caught;
  }
}

function fromSymbol(text: string, symbol: UnitSymbol): Unit {
  return {
    text,
    dimension: symbol.dimension,
    factor: symbol.factor,
    offset: symbol.offset ?? 0,
    decibelsAbove: symbol.decibelsAbove ?? null,
    family: symbol.family ?? null,
  };
}

class UnitFault extends Error {
  constructor(readonly error: UnitError) {
    super(error.reason);
  }
}

interface UnitFactor {
  readonly dimension: Dimension;
  readonly factor: number;
}

/** product = power { ("*" | "/") power }, power = (symbol | "(" product ")") [ "^" int ] */
class UnitReader {
  private at = 0;
  constructor(private readonly text: string) {}

  product(depth = 0): UnitFactor {
    let whole = this.power(depth);
    for (let sign = this.text[this.at]; sign === '*' || sign === '/'; sign = this.text[this.at]) {
      this.at += 1;
      const next = this.power(depth);
      whole =
        sign === '*'
          ? { dimension: multiplied(whole.dimension, next.dimension), factor: whole.factor * next.factor }
          : { dimension: divided(whole.dimension, next.dimension), factor: whole.factor / next.factor };
    }
    return whole;
  }

  end(): void {
    if (this.at < this.text.length) this.fail('malformed', this.at, this.text.slice(this.at));
  }

  private power(depth: number): UnitFactor {
    const base = this.text[this.at] === '(' ? this.group(depth) : this.symbol();
    if (this.text[this.at] !== '^') return base;
    const digits = /-?\d{1,2}/y;
    digits.lastIndex = this.at + 1;
    const exponent = digits.exec(this.text)?.[0];
    if (exponent === undefined) return this.fail('malformed', this.at, this.text.slice(this.at));
    this.at = digits.lastIndex;
    return {
      dimension: raised(base.dimension, Number(exponent)),
      factor: base.factor ** Number(exponent),
    };
  }

  private group(depth: number): UnitFactor {
    if (depth > 8) return this.fail('malformed', this.at, '(');
    this.at += 1;
    const inside = this.product(depth + 1);
    if (this.text[this.at] !== ')') return this.fail('malformed', this.at, this.text.slice(this.at));
    this.at += 1;
    return inside;
  }

  private symbol(): UnitFactor {
    symbolPattern.lastIndex = this.at;
    const text = symbolPattern.exec(this.text)?.[0];
    if (text === undefined) return this.fail('malformed', this.at, this.text.slice(this.at));
    const unit = findUnitSymbol(text);
    if (unit === undefined) return this.fail('unknown', this.at, text);
    if (unit.offset !== undefined || unit.decibelsAbove !== undefined) {
      return this.fail('whole-only', this.at, text);
    }
    this.at += text.length;
    return { dimension: unit.dimension, factor: unit.factor };
  }

  private fail(reason: UnitError['reason'], at: number, text: string): never {
    throw new UnitFault({ reason, at, text });
  }
}

/** A number in a unit, in SI. */
export function toBase(value: number, unit: Unit): number {
  if (unit.decibelsAbove !== null) return 10 ** (value / 10) * unit.decibelsAbove;
  return value * unit.factor + unit.offset;
}

/** An SI value in a unit. A power of nothing has no decibels: minus infinity. */
export function fromBase(value: number, unit: Unit): number {
  if (unit.decibelsAbove !== null) return 10 * Math.log10(value / unit.decibelsAbove);
  return (value - unit.offset) / unit.factor;
}

/** Whether its values count from a zero of their own, as degC do: they can be shifted, and not multiplied. */
export function isOnScale(unit: Unit): boolean {
  return unit.offset !== 0;
}

export function isUnitless(unit: Unit): boolean {
  return unit.text === '' && isPlain(unit.dimension);
}
