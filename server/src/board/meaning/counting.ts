import type { BoardSetting, Counts } from '../../catalog/model/board-profile';
import type { Parameter } from '../../catalog/model/parameter';
import { anything } from '../../units/interval';
import { parseQuantity } from '../../units/quantity';
import { fromBase, toBase, type Unit, unitOf } from '../../units/unit';
import { type DecimalMark, numberLook } from '../listing/number-look';
import { isReciprocal } from './reciprocal';

/** How a board counts a number. */
export interface Counting {
  readonly unit: string;
  readonly scale: number;
  readonly offset: number;
  /** Whether it shows one over the value: a rate by its period. */
  readonly isReciprocal: boolean;
  readonly base: 2 | 8 | 10 | 16;
  /** What stands behind the number. */
  readonly behind: string;
  /** In SI, by the board's words or numbers; null: it writes the number itself. */
  readonly table: ReadonlyMap<string, number> | null;
  /** In the board's own numbers; null: as finely as the text says. */
  readonly grain: number | null;
  readonly low: number;
  readonly high: number;
  readonly limitText: string;
  /** In SI, those that the board's listing names one by one; null: any within its limits. */
  readonly choices: readonly number[] | null;
}

/** What a row of a profile says about the numbers of its parameter. The row is free of faults. */
export function countingOf(counts: Counts | undefined, parameter: Parameter): Counting {
  const { unit = unitFor(parameter), scale = 1, offset = 0, step, limits } = counts ?? {};
  const { behind = '', table } = counts ?? {};
  const base: Counting['base'] = counts?.base ?? 10;
  const grain = step === undefined ? null : stepIn(step, unitOf(unit)) * Math.abs(scale);
  const steps =
    table === undefined
      ? null
      : new Map(
          Object.entries(table).map(([word, text]) => [word, parseQuantity(text)?.value ?? Number.NaN]),
        );
  const counting = {
    unit,
    scale,
    offset,
    isReciprocal: isReciprocal(unit, parameter),
    base,
    behind,
    table: steps,
    grain,
    choices: null,
  };
  if (limits === undefined) return { ...counting, ...anything, limitText: '' };
  const [low = anything.low, high = anything.high] = limits.map(
    (text) => parseQuantity(text)?.value ?? Number.NaN,
  );
  return { ...counting, low, high, limitText: limits.join(' to ') };
}

/** What a board says that it takes holds where the row says nothing else. */
export function withinStated(counting: Counting, range: BoardSetting['range'], mark: DecimalMark): Counting {
  if (range === undefined || counting.table !== null || counting.limitText !== '') return counting;
  const [first, second] = range.map((end) => numberLook(end, mark)?.value ?? Number.NaN);
  const ends = [first ?? Number.NaN, second ?? Number.NaN].map((end) => fromBoard(counting, end));
  if (ends.some(Number.isNaN)) return counting;
  // Beside a rate, a period without its unit would be read as one.
  const behind = counting.isReciprocal ? ` ${counting.unit}` : '';
  return {
    ...counting,
    low: Math.min(...ends),
    high: Math.max(...ends),
    limitText: `${range.join(' to ')}${behind}`,
  };
}

/** What a listing names one by one, where it names numbers, is all that the board takes. */
export function withinNamed(counting: Counting, words: BoardSetting['words'], mark: DecimalMark): Counting {
  const looks = (words ?? []).map((word) => numberLook(word, mark)?.value);
  const numbers = looks.filter((value) => value !== undefined);
  if (counting.table !== null || counting.limitText !== '' || numbers.length < 2) return counting;
  const choices = numbers.map((value) => fromBoard(counting, value));
  return { ...counting, choices, limitText: (words ?? []).join(', ') };
}

type Counted = Pick<Counting, 'unit' | 'scale' | 'offset' | 'isReciprocal'>;

/** An SI value in the board's own numbers. */
export function inBoard({ unit, scale, offset, isReciprocal }: Counted, base: number) {
  return fromBase(isReciprocal ? 1 / base : base, unitOf(unit)) * scale + offset;
}

/** One of the board's own numbers in SI. */
export function fromBoard({ unit, scale, offset, isReciprocal }: Counted, number: number): number {
  const counted = toBase((number - offset) / scale, unitOf(unit));
  return isReciprocal ? 1 / counted : counted;
}

/** The same of a number that a row counts so, without an offset. */
export function inCounts({ unit, scale = 1 }: Counts, parameter: Parameter, number: number): number {
  const named = unit ?? unitFor(parameter);
  return fromBoard({ unit: named, scale, offset: 0, isReciprocal: isReciprocal(named, parameter) }, number);
}

/** A step in a unit: of temperatures only the difference counts, of decibels the decibels. */
function stepIn(text: string, unit: Unit): number {
  const step = parseQuantity(text);
  if (step === undefined) return Number.NaN;
  if (unit.decibelsAbove !== null) return fromBase(step.value, unit);
  return (step.value - step.unit.offset) / unit.factor;
}

const numeric: ReadonlySet<string> = new Set(['quantity', 'count', 'range', 'curve', 'place']);

/** Whether the parts of a parameter are numbers, or come to some. */
export function holdsNumbers({ kind }: Parameter): boolean {
  return numeric.has(kind);
}

/** The unit that a parameter's numbers are offered in; none for counts. */
export function unitFor(parameter: Parameter): string {
  switch (parameter.kind) {
    case 'quantity':
    case 'range':
      return parameter.unit;
    case 'curve':
      return parameter.up.unit;
    default:
      return '';
  }
}
