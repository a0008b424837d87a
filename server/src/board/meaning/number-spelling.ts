import type { FoundParameter } from '../../catalog/catalog';
import { nearlyEqual } from '../../units/nearly-equal';
import { plainNumber } from '../../units/number-text';
import { toBase, unitOf } from '../../units/unit';
import type { DecimalMark } from '../listing/number-look';
import { lookOf } from '../listing/value-look';
import { writtenInLook } from '../listing/written-in-look';
import { unitNamed } from './board-units';
import { type Counting, fromBoard, inBoard } from './counting';
import { refused, type Spelled, texts } from './spelled';

/** Turns numbers of one part of a parameter into the board's spelling and back. */
export class NumberSpelling {
  constructor(
    readonly counting: Counting,
    private readonly found: FoundParameter,
    private readonly mark: DecimalMark,
  ) {}

  /** `base`: in SI; a count as it is. */
  write(base: number): Spelled {
    const { low, high, limitText, table, choices } = this.counting;
    const spare = 1e-9 * Math.abs(base);
    if (table !== null) return this.step(base, table);
    if (base < low - spare || base > high + spare) return refused(`the board takes ${limitText}`);
    if (choices?.some((choice) => nearlyEqual(choice, base)) === false)
      return refused(`the board takes ${limitText}`);
    const written = this.inSteps(inBoard(this.counting, base));
    // Whatever a profile says: nothing goes to a board that it might read as something else.
    const text = plainDigits.test(written) ? this.asBoard(written) : null;
    return text === null
      ? refused('by its profile it comes to no number that a board reads')
      : texts(text + this.counting.behind);
  }

  /** The nearest that the board takes, in SI; null where it knows words alone. */
  nearest(base: number): number | null {
    const { low, high, table, choices } = this.counting;
    if (table !== null) return null;
    const [first, ...others] = choices ?? [Math.min(high, Math.max(low, base))];
    if (first === undefined) return null;
    const distance = (one: number) => Math.abs(one - base);
    return others.reduce((best, one) => (distance(one) < distance(best) ? one : best), first);
  }

  /** As the board counts it, for a sentence: a limit is told as it is, not as the nearest step. */
  shown(base: number): string | null {
    const { table, behind } = this.counting;
    if (table !== null) {
      const spelled = this.step(base, table);
      return spelled.kind === 'texts' ? (spelled.texts[0] ?? null) : null;
    }
    const number = plainNumber(Number(inBoard(this.counting, base).toPrecision(shownDigits)));
    const text = plainDigits.test(number) ? this.asBoard(number) : null;
    return text === null ? null : text + behind;
  }

  /** In SI; null for what is no number of this board. */
  read(text: string): number | null {
    const { table } = this.counting;
    if (table !== null) return table.get(text) ?? this.sameStep(text, table);
    const look = lookOf(text, this.mark);
    if (look.kind === 'number') return this.inBase(look.value);
    if (look.kind !== 'measure') return null;
    const unit = unitNamed(look.unit, this.found.dimensionName ?? '');
    // A number that says its unit is counted in that, whatever the profile says of those that don't.
    if (unit === null || look.gap + look.unit === this.counting.behind) return this.inBase(look.number.value);
    return finite(cleaned(toBase(look.number.value, unitOf(unit))));
  }

  /** Whether two texts of the board say the same number, within half of its step. */
  isSame(one: string, other: string): boolean {
    const [first, second] = [this.read(one), this.read(other)];
    if (first === null || second === null) return false;
    const { grain } = this.counting;
    const [a, b] = [inBoard(this.counting, first), inBoard(this.counting, second)];
    const near = 1e-9 * Math.max(Math.abs(a), Math.abs(b));
    return Math.abs(a - b) <= near + (grain === null ? 0 : grain * (0.5 + 1e-9));
  }

  private inBase(number: number): number | null {
    return finite(cleaned(fromBoard(this.counting, number)));
  }

  private step(base: number, table: ReadonlyMap<string, number>): Spelled {
    for (const [word, value] of table) if (nearlyEqual(value, base)) return texts(word);
    return refused(`the board knows ${[...table.keys()].join(', ')}`);
  }

  /** `02` and `2` are the same step. */
  private sameStep(text: string, table: ReadonlyMap<string, number>): number | null {
    const look = lookOf(text, this.mark);
    if (look.kind !== 'number') return null;
    for (const [word, value] of table) {
      const known = lookOf(word, this.mark);
      if (known.kind === 'number' && known.value === look.value) return value;
    }
    return null;
  }

  /**
   * The nearest step that still makes sense: rounding must lead neither out of the board's limits nor out of what
   * the parameter can be.
   */
  private inSteps(exact: number): string {
    const { grain, low, high } = this.counting;
    if (grain === null) return plainNumber(Number(exact.toFixed(mostDecimals)));
    const range = this.found.range ?? { low, high };
    const ends = [Math.max(low, range.low), Math.min(high, range.high)].map((end) =>
      inBoard(this.counting, end),
    );
    const [least = 0, most = 0] = ends.sort((one, other) => one - other);
    const step = Math.round(exact / grain);
    const held =
      grain * Math.min(Math.floor(most / grain + 1e-9), Math.max(Math.ceil(least / grain - 1e-9), step));
    return fixed(held, decimalsOf(grain));
  }

  /** In the base and with the decimal mark of the board; null where its base can't show it. */
  private asBoard(written: string): string | null {
    const { base } = this.counting;
    if (base !== 10) return writtenInLook(written, zeros[base]);
    return this.mark === ',' ? written.replace('.', ',') : written;
  }
}

const zeros = { 2: '0b0', 8: '0o0', 16: '0x0' } as const;
/** What is written: as many digits as are read, and never what only a computer takes for a number. */
const plainDigits = /^-?\d{1,15}(\.\d{1,15})?$/;
const mostDecimals = 15;
/** More than a sentence shows of any number. */
const shownDigits = 9;

function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

function decimalsOf(grain: number): number {
  for (let decimals = 0; decimals < 12; decimals += 1) {
    const shifted = grain * 10 ** decimals;
    if (Math.abs(shifted - Math.round(shifted)) < 1e-6 * shifted) return decimals;
  }
  return 12;
}

function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? (0).toFixed(decimals) : text;
}

/** Without the dust that binary arithmetic leaves behind: fifteen digits are all that a board's text holds. */
function cleaned(value: number): number {
  return Number(value.toPrecision(15));
}
