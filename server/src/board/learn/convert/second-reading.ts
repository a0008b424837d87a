import type { FoundParameter } from '../../../catalog/catalog';
import type { Counts } from '../../../catalog/model/board-profile';
import { toBase, unitOf } from '../../../units/unit';
import type { DecimalMark } from '../../listing/number-look';
import { lookOf } from '../../listing/value-look';
import { unitNamed } from '../../meaning/board-units';
import { inCounts } from '../../meaning/counting';
import { scalesFor } from './scales';

/** A second reading of a value, and how the value counts if it is one. */
export interface SecondReading {
  /** As it stands there: `1.5 kHz`. */
  readonly text: string;
  readonly counts: Counts;
}

/**
 * How a number counts beside which a listing says what it comes to: `1500 (1.5 kHz)`, `550 (= 5.5 %)`. Null where no
 * amount stands there, or where none of the ways or more than one of them gives it.
 */
export function secondReading(
  number: number,
  remark: string,
  found: FoundParameter,
  mark: DecimalMark,
): SecondReading | null {
  // Nothing is as much in any unit.
  if (number === 0 || Number.isNaN(number)) return null;
  for (const clause of remark.split(/[;()[\]]|,\s/)) {
    const text = clause
      .trim()
      .replace(/^(?:=|~|\u2248|that is|i\.e\.|d\. ?h\.|also)/i, '')
      .trim();
    const amount = amountIn(text, found.dimensionName ?? '', mark);
    if (amount === null) continue;
    const fitting = scalesFor(found).filter(({ counts = {} }) => {
      const value = inCounts(counts, found.parameter, number);
      return amount.low <= value && value <= amount.high;
    });
    const [only, another] = fitting;
    if (only !== undefined && another === undefined) return { text, counts: only.counts ?? {} };
  }
  return null;
}

/** All that a printed amount may stand for, in SI: half of its last place to each side. */
function amountIn(
  text: string,
  dimension: string,
  mark: DecimalMark,
): { readonly low: number; readonly high: number } | null {
  const look = lookOf(text, mark);
  const unit = look.kind === 'measure' ? unitNamed(look.unit, dimension) : null;
  if (look.kind !== 'measure' || unit === null || look.number.exponent !== null) return null;
  const half = 0.5 * 10 ** -look.number.decimals * (1 + 1e-9);
  const ends = [look.number.value - half, look.number.value + half].map((end) => toBase(end, unitOf(unit)));
  return { low: Math.min(...ends), high: Math.max(...ends) };
}
