import { type DecimalMark, numberLook } from './number-look';
import { rangeIn, wordsIn } from './range-and-words';
import { textWithoutQuotes } from './text/characters';
import { isKnownUnit } from './unit-words';
import { keyBefore } from './value-keys';

/** What a remark beside a value says of it. */
export interface Remark {
  readonly range: { readonly low: string; readonly high: string } | null;
  readonly words: readonly string[] | null;
  readonly default: string | null;
  readonly unit: string | null;
  /** Whether nothing else stands there. */
  readonly isAll: boolean;
}

const longestRemark = 1000;

/** Reads what a remark says of range, allowed words, default and unit, in the words that boards say it with. */
export function readRemark(remark: string, mark: DecimalMark): Remark {
  const reader = new RemarkReader(mark);
  const text = remark.trim();
  if (text === '' || text.length > longestRemark) return reader.result(false);
  if (reader.take(text)) return reader.result(true);
  const clauses = text.split(/[;,]\s|\s\/\s|\s\|\s/).map((clause) => clause.trim());
  const taken = clauses.map((clause) => clause !== '' && reader.take(clause));
  // A remark of which one part says nothing known is told whole, with what was found in it.
  return reader.result(taken.every((one) => one));
}

class RemarkReader {
  private low: string | null = null;
  private high: string | null = null;
  private words: readonly string[] | null = null;
  private default: string | null = null;
  private unit: string | null = null;

  constructor(private readonly mark: DecimalMark) {}

  result(isAll: boolean): Remark {
    const { low, high } = this;
    const range = low !== null && high !== null ? { low, high } : null;
    return { range, words: this.words, default: this.default, unit: this.unit, isAll };
  }

  /** Whether a clause was understood; it is then kept, and nothing of it otherwise. */
  take(clause: string): boolean {
    const before = { ...this };
    const isTaken = this.takeAny(clause);
    if (!isTaken) Object.assign(this, before);
    return isTaken;
  }

  private takeAny(clause: string): boolean {
    return (
      this.takeRange(clause) || this.takeUnit(clause) || this.takeKeyed(clause) || this.takeWords(clause)
    );
  }

  private takeRange(clause: string): boolean {
    const range = rangeIn(clause, this.mark);
    if (range === null || this.low !== null || this.high !== null) return false;
    this.low = range.low;
    this.high = range.high;
    this.unit ??= range.unit;
    return true;
  }

  private takeUnit(clause: string): boolean {
    if (this.unit !== null || !isKnownUnit(clause)) return false;
    this.unit = clause;
    return true;
  }

  /** `default: 5`, `min 0`, `one of: a, b`; several may follow each other: `min 0 max 10`. */
  private takeKeyed(clause: string): boolean {
    const found = keyBefore(clause);
    if (found === null) return false;
    const { key, rest } = found;
    if (key === 'words') return this.takeWords(rest);
    if (key === 'range') return this.takeRange(rest) || this.takeEnds(rest);
    if (key === 'unit') return this.takeUnit(rest);
    const [value = '', ...more] = rest.split(' ').filter((word) => word !== '');
    if (more.length > 0 && !this.takeRest(more)) return false;
    return this.keep(key, textWithoutQuotes(value.endsWith(',') ? value.slice(0, -1) : value));
  }

  /** What follows the value of a key: its unit, or another key. */
  private takeRest(more: readonly string[]): boolean {
    const text = more.join(' ');
    return this.takeUnit(text) || this.takeKeyed(text);
  }

  private takeEnds(rest: string): boolean {
    const joint = [' and ', ' und ', ' et ', ', '].find((one) => rest.includes(one));
    return joint !== undefined && this.takeRange(rest.replace(joint, ' .. '));
  }

  private keep(key: 'low' | 'high' | 'default', value: string): boolean {
    if (this[key] !== null || value === '') return false;
    if (key !== 'default' && numberLook(value, this.mark) === null) return false;
    this[key] = value;
    return true;
  }

  private takeWords(clause: string): boolean {
    const words = wordsIn(clause);
    if (this.words !== null || words === null) return false;
    this.words = words;
    return true;
  }
}
