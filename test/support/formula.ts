import { parseUnit } from '../../server/src/units/unit';

/** Symbols that a formula may have and a script may not; in SI. A turn counts as one, not as 2 π. */
const ownUnits: ReadonlyMap<string, number> = new Map([
  ['bits', 1],
  ['bytes', 1],
  ['cells', 1],
  ['dBi', 1],
  ['kbit/s', 1e3],
  ['J/(kg*K)', 1],
]);

/** How much one of a unit is in SI, with turns for angles where it counts those; undefined where it is none. */
export function unitSize(symbol: string): number | undefined {
  const own = ownUnits.get(symbol);
  if (own !== undefined) return own;
  const { unit } = parseUnit(symbol);
  if (unit === undefined) return undefined;
  return symbol.includes('rpm') ? unit.factor / (2 * Math.PI) : unit.factor;
}

/**
 * What a formula with its numbers put in comes to, in SI: `(4 × 6.21 V × 5.06 A + 5 W) / 22.07 V`. Plain and slow:
 * a second way of reckoning, for tests. Throws at what it can't read.
 */
export function formulaValue(text: string): number {
  const reader = new FormulaReader(text);
  const value = reader.sum();
  reader.end();
  return value;
}

class FormulaReader {
  private at = 0;

  constructor(private readonly text: string) {}

  sum(): number {
    let value = this.product();
    for (;;) {
      if (this.takes('+')) value += this.product();
      else if (this.takes('-')) value -= this.product();
      else return value;
    }
  }

  end(): void {
    this.skipSpace();
    if (this.at < this.text.length) throw new Error(`no formula from here: ${this.text.slice(this.at)}`);
  }

  private product(): number {
    let value = this.power();
    for (;;) {
      if (this.takes('×')) value *= this.power();
      else if (this.takes('/')) value /= this.power();
      else return value;
    }
  }

  private power(): number {
    const base = this.atom();
    return this.takes('^') ? base ** this.power() : base;
  }

  private atom(): number {
    if (this.takes('-')) return -this.atom();
    if (this.takes('π')) return Math.PI;
    if (this.takes('sqrt(')) return Math.sqrt(this.inside(')'));
    if (this.takes('lg(')) return Math.log10(this.inside(')'));
    if (this.takes('(')) return this.inside(')');
    if (this.takes('|')) return Math.abs(this.inside('|'));
    return this.quantity();
  }

  private inside(closing: string): number {
    const value = this.sum();
    if (!this.takes(closing)) throw new Error(`no ${closing} in ${this.text}`);
    return value;
  }

  private quantity(): number {
    this.skipSpace();
    const number = /^\d+(\.\d+)?/.exec(this.text.slice(this.at))?.[0];
    if (number === undefined) throw new Error(`no number: ${this.text.slice(this.at)}`);
    this.at += number.length;
    return Number(number) * this.unit();
  }

  /** The longest that is a unit of what follows a space; 1 where nothing is. */
  private unit(): number {
    const rest = /^ (\S+)/.exec(this.text.slice(this.at))?.[1] ?? '';
    for (let length = rest.length; length > 0; length -= 1) {
      const size = unitSize(rest.slice(0, length));
      if (size === undefined) continue;
      this.at += 1 + length;
      return size;
    }
    return 1;
  }

  private takes(sign: string): boolean {
    this.skipSpace();
    if (!this.text.startsWith(sign, this.at)) return false;
    this.at += sign.length;
    return true;
  }

  private skipSpace(): void {
    while (this.text[this.at] === ' ') this.at += 1;
  }
}
