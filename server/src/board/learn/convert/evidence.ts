import { parseQuantity } from '../../../units/quantity';
import { type DecimalMark, numberLook } from '../../listing/number-look';
import { amountIn, lookOf } from '../../listing/value-look';
import { inCounts } from '../../meaning/counting';
import type { CountingScale } from './scales';
import type { Ground, NumberTaken } from './taken';

/** What all numbers of a listing tell of how it counts. */
export interface Habit {
  /** Whether it prints decimals that say nothing, such as `980.0`: it has no need to count in parts. */
  readonly printsDecimals: boolean;
}

export function habitOf(numbers: readonly NumberTaken[], { manner }: Ground): Habit {
  const spare = numbers.filter(({ taken: { setting } }) => {
    const { count, endsInZero } = decimalsOf(setting.value, manner.decimal);
    return count > 0 && endsInZero;
  });
  return { printsDecimals: spare.length >= enough };
}

/**
 * Whether a listing speaks against a way of counting by more than the values of its family: by the ends and the default
 * that it states of one, by the top of a curve, or by printing decimals.
 */
export function isRuledOut(
  members: readonly NumberTaken[],
  scale: CountingScale,
  habit: Habit,
  { manner }: Ground,
): boolean {
  const isInParts = Math.abs(scale.counts?.scale ?? 1) > 1;
  return (
    (isInParts && countsInDecimals(members, habit, manner.decimal)) ||
    members.some(
      (member) =>
        isRuledOutByStated(member, scale, manner.decimal) ||
        (isTopOfCurve(member) && isTooLow(member, member.number, scale)),
    )
  );
}

/** A maker's limits, and the top of a curve, are no less than this share of what is usual at most. */
const leastShare = 0.1;
/** Limits are often as wide as a number may be; by more than this they do not leave what the parameter can be. */
const widest = 10;
/** A default does not leave it by more than this. */
const leeway = 1.25;

function isRuledOutByStated(member: NumberTaken, scale: CountingScale, mark: DecimalMark): boolean {
  const { setting } = member.taken;
  const { range, default: byDefault } = setting.stated ?? { range: null, default: null };
  const own = amountIn(byDefault ?? '', mark);
  const [low, high] = [range?.low, range?.high].map((end) => amountIn(end ?? '', mark));
  const areEnds = low != null && high != null && !isWidth(high);
  return (
    (own !== null && isBeyond(member, own, scale, leeway)) ||
    (areEnds &&
      (isBeyond(member, low, scale, widest) ||
        isBeyond(member, high, scale, widest) ||
        isTooLow(member, high, scale)))
  );
}

/** 255, 65535: as much as a number of so many bits can be says nothing of what it counts. */
function isWidth(high: number): boolean {
  return [high, high + 1].some((one) => one >= 128 && Number.isInteger(Math.log2(one)));
}

/** Whether a number leaves what the parameter can be, and by so many times. */
function isBeyond(member: NumberTaken, number: number, scale: CountingScale, times: number): boolean {
  const { range } = member.found;
  const value = inBase(member, number, scale);
  return range !== undefined && (value > times * range.high || value < Math.min(0, times * range.low));
}

function isTooLow(member: NumberTaken, top: number, scale: CountingScale): boolean {
  const { usual } = member.found;
  return usual !== undefined && top > 0 && inBase(member, top, scale) <= leastShare * usual.high * (1 + 1e-9);
}

function inBase({ found }: NumberTaken, number: number, { counts = {} }: CountingScale): number {
  return inCounts(counts, found.parameter, number);
}

function isTopOfCurve({ taken: { as }, found }: NumberTaken): boolean {
  const at = typeof as === 'object' && 'at' in as ? parseQuantity(as.at)?.value : undefined;
  return at !== undefined && found.across !== undefined && at >= found.across.high;
}

/** So many numbers with as many decimals are no chance. */
const enough = 3;

/** A board that prints decimals, also those that say nothing, has no need to count in parts. */
function countsInDecimals(
  members: readonly NumberTaken[],
  { printsDecimals }: Habit,
  mark: DecimalMark,
): boolean {
  const looks = members.map(({ taken: { setting } }) => decimalsOf(setting.value, mark));
  if (printsDecimals && looks.some(({ count }) => count > 0)) return true;
  const [first] = looks;
  if (first === undefined || first.count === 0 || looks.some(({ count }) => count !== first.count))
    return false;
  return looks.length >= enough || looks.some(({ endsInZero }) => endsInZero);
}

function decimalsOf(
  value: string,
  mark: DecimalMark,
): { readonly count: number; readonly endsInZero: boolean } {
  const look = lookOf(value, mark);
  const number = look.kind === 'number' ? numberLook(value, mark) : null;
  const isPlain = number !== null && number.exponent === null;
  return { count: isPlain ? number.decimals : 0, endsInZero: value.endsWith('0') };
}
