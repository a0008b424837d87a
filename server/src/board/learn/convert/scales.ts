import type { FoundParameter } from '../../../catalog/catalog';
import type { Counts } from '../../../catalog/model/board-profile';
import { findDimensionName } from '../../../units/dimension-names';
import { toBase, unitOf } from '../../../units/unit';
import type { UnitCount } from '../../meaning/board-units';
import { unitFor } from '../../meaning/counting';
import { reciprocalOf } from '../../meaning/reciprocal';

/** A way in which a board may count a quantity. */
export interface CountingScale {
  readonly counts: Counts | undefined;
  /** `in Hz`, `in tenths of %`. */
  readonly title: string;
}

/** Gains and strengths are counted in whatever suits the board: their scale can't be told from what is usual. */
const scaleless: ReadonlySet<string> = new Set([
  'proportional-gain',
  'integral-gain',
  'derivative-gain',
  'levelling-strength',
]);

export function isScaleless({ dimensionName }: Pick<FoundParameter, 'dimensionName'>): boolean {
  return scaleless.has(dimensionName ?? '');
}

const parts: readonly (readonly [scale: number, word: string])[] = [
  [1, ''],
  [10, 'tenths of '],
  [100, 'hundredths of '],
  [1000, 'thousandths of '],
];

/**
 * The ways in which boards count what a parameter measures, the plainest first: in its own unit, in other units, in
 * parts of each. No two come to the same.
 */
export function scalesFor(found: FoundParameter): readonly CountingScale[] {
  const before = known.get(found.parameter);
  if (before !== undefined) return before;
  const made = makeScales(found);
  known.set(found.parameter, made);
  return made;
}

const known = new WeakMap<FoundParameter['parameter'], readonly CountingScale[]>();

function makeScales(found: FoundParameter): readonly CountingScale[] {
  const own = unitFor(found.parameter);
  if (own === '') return [{ counts: undefined, title: 'as it stands' }];
  const units = [own, ...unitsOf(found).filter((unit) => unit !== own)];
  const made = new Map<string, CountingScale>();
  for (const [scale, word] of parts)
    for (const unit of units) {
      const key = firstValues(unit, scale);
      if (!made.has(key)) made.set(key, scaleOf(unit, scale, word, own));
    }
  return [...made.values()];
}

function unitsOf({ dimensionName = '' }: FoundParameter): readonly string[] {
  const units = findDimensionName(dimensionName)?.units ?? [];
  return dimensionName === 'ratio' ? [...units, ''] : units;
}

/** What the board's 1 and 2 come to: the same for two ways that are one. */
function firstValues(unit: string, scale: number): string {
  return [1, 2].map((number) => toBase(number / scale, unitOf(unit)).toPrecision(9)).join(' ');
}

function scaleOf(unit: string, scale: number, word: string, own: string): CountingScale {
  const counts = countsIn({ unit, scale }, own);
  const named = unit === '' ? (word === '' ? 'shares of one' : 'one') : unit;
  return { counts: Object.keys(counts).length === 0 ? undefined : counts, title: `in ${word}${named}` };
}

/** A rate by its period, and a time by how often it comes: offered, and never taken by itself. */
export function reciprocalsFor({ dimensionName }: FoundParameter): readonly CountingScale[] {
  const by = (unit: string, title: string) => ({ counts: { unit }, title: `${title}, in ${unit}` });
  switch (reciprocalOf(dimensionName)) {
    case 'time':
      return [by('us', 'by its period'), by('ms', 'by its period')];
    case 'frequency':
      return [by('Hz', 'by how often it comes')];
    default:
      return [];
  }
}

/** A whole unit in tenths, hundredths and thousandths. */
export function inPartsOf({ counts }: CountingScale): readonly CountingScale[] {
  return parts.flatMap(([scale, word]) =>
    scale === 1 ? [] : [{ counts: { ...counts, scale }, title: word.replace(' of ', '') }],
  );
}

/** What a row says of a unit and a scale; nothing where they are the parameter's own. */
export function countsIn({ unit, scale }: UnitCount, own: string): Counts {
  return { ...(unit === own ? {} : { unit }), ...(scale === 1 ? {} : { scale }) };
}

/** The step of a board that counts whole numbers so, as a script writes it; none where it has no size of its own. */
export function wholeStep({ unit, scale = 1 }: Counts, found: FoundParameter): string | undefined {
  const named = unit ?? unitFor(found.parameter);
  const known = unitOf(named);
  if (named === '' || known.offset !== 0 || known.decibelsAbove !== null) return undefined;
  return `${Number((1 / Math.abs(scale)).toPrecision(12))} ${named}`;
}
