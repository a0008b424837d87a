import type { FoundParameter } from '../../../catalog/catalog';
import type { Counts } from '../../../catalog/model/board-profile';
import { common, liesWithin } from '../../../units/interval';
import { lookOf } from '../../listing/value-look';
import { countedAlike } from '../../meaning/counted-alike';
import { inCounts, unitFor } from '../../meaning/counting';
import { type Habit, habitOf, isRuledOut } from './evidence';
import { previewOf } from './preview';
import { type CountingScale, inPartsOf, isScaleless, reciprocalsFor, scalesFor, wholeStep } from './scales';
import { type StatedCount, statedCount } from './stated-count';
import type { Conversion, CountSureness, Ground, NumberTaken, TakenAs, WayToCount } from './taken';

/** Numbers that a board surely counts alike. */
interface NumberFamily {
  readonly members: readonly NumberTaken[];
  /** Whether all of them stand there as whole numbers. */
  readonly isWhole: boolean;
}

interface Decision {
  readonly sureness: CountSureness;
  readonly scale: CountingScale | null;
  readonly why: string;
}

/** How each number is counted. What a board surely counts alike is decided together: never one axis apart from the others. */
export function numberConversions(
  numbers: readonly NumberTaken[],
  ground: Ground,
): ReadonlyMap<TakenAs, Conversion> {
  const families = new Map<string, NumberTaken[]>();
  for (const number of numbers) {
    const { name, dimensionName, parameter } = number.found;
    const key = `${countedAlike(name, dimensionName ?? parameter.kind)} ${unitFor(parameter)}`;
    const members = families.get(key);
    if (members === undefined) families.set(key, [number]);
    else members.push(number);
  }
  const habit = habitOf(numbers, ground);
  return new Map([...families.values()].flatMap((members) => ofFamily(members, habit, ground)));
}

function ofFamily(
  members: readonly NumberTaken[],
  habit: Habit,
  ground: Ground,
): readonly (readonly [TakenAs, Conversion])[] {
  const read = members.filter(isReadable);
  const stated = inParts(
    read,
    read.map(({ taken, found }) => statedCount(taken, found, ground)),
    habit,
    ground,
  );
  const ways = new Set(stated.flatMap((one) => (one === null ? [] : [wayOf(one)])));
  const decided = decision(read, inCommon(stated), habit, ground);
  const family = { members: read, isWhole: read.every((member) => isWholeNumber(member, ground)) };
  const made = read.map((member, index) => {
    const own = stated[index] ?? null;
    if (own === null) return [member.taken, inferred(member, family, decided, ground)] as const;
    const conversion = said(member, family, own, ground);
    const why =
      ways.size > 1 ? `${conversion.why}; others of its kind are counted otherwise` : conversion.why;
    return [member.taken, { ...conversion, why }] as const;
  });
  const others = members.filter((member) => !isReadable(member));
  return [...made, ...others.map((member) => [member.taken, unreadable(member, ground)] as const)];
}

function isWholeNumber({ taken }: NumberTaken, { manner }: Ground): boolean {
  const look = lookOf(taken.setting.value, manner.decimal);
  return look.kind === 'number' && Number.isInteger(look.value);
}

/** A number, or a word of a table of steps. */
function isReadable({ number, taken }: NumberTaken): boolean {
  return !Number.isNaN(number) || taken.counted?.table !== undefined;
}

/** What those that state a unit agree on; null where none does, or two say different things. */
function inCommon(stated: readonly (StatedCount | null)[]): CountingScale | null {
  const all = stated.flatMap((one) => one ?? []);
  const [first] = all;
  if (first === undefined || first.counts.table !== undefined) return null;
  if (all.some((one) => wayOf(one) !== wayOf(first))) return null;
  const { behind: _, ...counts } = first.counts;
  return { counts, title: first.why };
}

/**
 * A unit by which values are nothing that can be is named for what they are parts of: `volts = 390` are hundredths. As
 * stated where that is no need, or where more than one part gives usual values.
 */
function inParts(
  members: readonly NumberTaken[],
  stated: readonly (StatedCount | null)[],
  habit: Habit,
  ground: Ground,
): readonly (StatedCount | null)[] {
  const shared = inCommon(stated);
  const isSaid = members.some(({ taken }) => taken.counted !== undefined || taken.setting.look !== 'number');
  if (shared === null || isSaid || stated.includes(null) || (shared.counts?.scale ?? 1) !== 1) return stated;
  if (fits(members, shared, inRange)) return stated;
  const parts = inPartsOf(shared).filter(
    (scale) => fits(members, scale, nearlyUsual) && !isRuledOut(members, scale, habit, ground),
  );
  const [only, another] = parts;
  if (only === undefined || another !== undefined || !fits(members, only, usual)) return stated;
  return stated.map((one) =>
    one === null
      ? null
      : { counts: only.counts ?? {}, why: `${one.why}, and only ${only.title} of it are usual` },
  );
}

/** The same for two that count alike. */
function wayOf({ counts: { unit, scale, offset, table } }: StatedCount): string {
  return JSON.stringify([unit, scale, offset, table]);
}

function decision(
  members: readonly NumberTaken[],
  shared: CountingScale | null,
  habit: Habit,
  ground: Ground,
): Decision {
  const [first] = members;
  if (first === undefined) return { sureness: 'ask', scale: null, why: 'nothing says how it is counted' };
  if (shared !== null) return { sureness: 'likely', scale: shared, why: 'others of its kind are counted so' };
  const { found } = first;
  if (found.dimensionName === undefined)
    return {
      sureness: 'likely',
      scale: { counts: undefined, title: 'as it stands' },
      why: 'it is a number without a unit',
    };
  if (isScaleless(found))
    return { sureness: 'ask', scale: null, why: 'boards count gains each in its own way' };
  const plausible = scalesFor(found).filter(
    (scale) => fits(members, scale, nearlyUsual) && !isRuledOut(members, scale, habit, ground),
  );
  const [only, another] = plausible;
  const isSure = another === undefined && only !== undefined && fits(members, only, usual);
  if (!isSure || members.every(({ number }) => number === 0))
    return { sureness: 'ask', scale: null, why: 'more than one way of counting gives usual values' };
  return { sureness: 'likely', scale: only, why: `only ${only.title} gives usual values` };
}

type Within = (number: number, found: FoundParameter) => boolean;

function fits(members: readonly NumberTaken[], { counts = {} }: CountingScale, within: Within): boolean {
  return members.every(({ found, number }) => {
    // Nothing is nothing in whichever unit.
    if (number === 0) return true;
    return within(inCounts(counts, found.parameter, number), found);
  });
}

function usual(number: number, { usual: ends }: FoundParameter): boolean {
  return ends !== undefined && liesWithin(ends, number);
}

/** Pilots leave what is usual now and then, but not by this much. */
const leaveway = 1.25;

function nearlyUsual(number: number, { usual: ends, range }: FoundParameter): boolean {
  if (ends === undefined || range === undefined) return false;
  const near = { low: wider(ends.low, ends.low > 0), high: wider(ends.high, ends.high < 0) };
  return liesWithin(common(near, range), number);
}

function wider(end: number, isTowardsNothing: boolean): number {
  return isTowardsNothing ? end / leaveway : end * leaveway;
}

function said(member: NumberTaken, family: NumberFamily, own: StatedCount, ground: Ground): Conversion {
  const { taken, found } = member;
  const counts = withStep(own.counts, member, family, ground);
  const preview = previewOf(taken, { counts }, ground);
  const fitsIn = preview.lies === 'usual' || preview.lies === 'possible' || preview.lies === null;
  return {
    sureness: fitsIn && preview.quantity !== null ? 'stated' : 'ask',
    meant: fitsIn && preview.quantity !== null ? meantBy(counts) : null,
    why: fitsIn ? own.why : `${own.why}, and it would lie outside what ${found.name} can be`,
    preview,
    candidates: [
      { meant: meantBy(counts), title: titleOf(taken, own), preview },
      ...candidatesFor(member, family, ground),
    ],
    takesRole: true,
  };
}

function titleOf({ counted }: TakenAs, { why }: StatedCount): string {
  const said = why.replace(/^the listing says (?:that it is )?/, '');
  return counted === undefined ? `as the listing says: ${said}` : 'as you say';
}

/** What is no number can't be counted. */
function unreadable({ taken }: NumberTaken, ground: Ground): Conversion {
  const why =
    taken.setting.look === 'list' && taken.item === undefined
      ? 'several values stand in it, and nobody has said which one it is'
      : `“${taken.setting.value}” is no number`;
  const preview = previewOf(taken, {}, ground);
  return { sureness: 'ask', meant: null, why, preview, candidates: [], takesRole: false };
}

function inferred(
  member: NumberTaken,
  family: NumberFamily,
  { sureness, scale, why }: Decision,
  ground: Ground,
): Conversion {
  const counts = scale === null ? undefined : withStep(scale.counts ?? {}, member, family, ground);
  const preview = previewOf(member.taken, { counts }, ground);
  const isRead = preview.quantity !== null && preview.lies !== 'outside';
  const isSure = scale !== null && isRead;
  return {
    sureness: isSure ? sureness : 'ask',
    meant: isSure ? meantBy(counts) : null,
    why: isSure || scale === null ? why : 'it would lie outside what its parameter can be',
    preview:
      scale === null
        ? { ...preview, quantity: null, reason: 'nobody has said how it is counted', lies: null }
        : preview,
    candidates: candidatesFor(member, family, ground),
    takesRole: true,
  };
}

function meantBy(counts: Counts | undefined): WayToCount['meant'] {
  return counts === undefined || Object.keys(counts).length === 0 ? {} : { counts };
}

const mostCandidates = 6;

/** Ways of counting that a family can have, those first that give usual values for all of it. */
function candidatesFor(member: NumberTaken, family: NumberFamily, ground: Ground): readonly WayToCount[] {
  const { members } = family;
  const scales = scalesFor(member.found);
  const good = scales.filter((scale) => fits(members, scale, usual));
  const byPeriod = reciprocalsFor(member.found).filter((scale) => fits(members, scale, usual));
  const possible = scales.filter((scale) => fits(members, scale, inRange));
  const [plainest] = scales;
  const all = new Set([...good, ...byPeriod, ...possible, ...(plainest === undefined ? [] : [plainest])]);
  return [...all].slice(0, mostCandidates).map((scale) => {
    const meant = meantBy(withStep(scale.counts ?? {}, member, family, ground));
    return { meant, title: scale.title, preview: previewOf(member.taken, meant, ground) };
  });
}

function inRange(number: number, { range }: FoundParameter): boolean {
  return range !== undefined && liesWithin(range, number);
}

/** Where a board counts in parts to have whole numbers, or shows its numbers in another base, it keeps only whole ones. */
function withStep(
  counts: Counts,
  { taken, found }: NumberTaken,
  { isWhole }: NumberFamily,
  { manner }: Ground,
): Counts | undefined {
  if (counts.table !== undefined) return counts;
  const own = lookOf(taken.setting.value, manner.decimal);
  const based = own.kind === 'number' && own.base !== 10 ? { base: own.base } : {};
  const isCounted = Math.abs(counts.scale ?? 1) > 1 && isWhole;
  const step = isCounted || (own.kind === 'number' && own.base !== 10) ? wholeStep(counts, found) : undefined;
  const made: Counts = { ...counts, ...(step === undefined ? {} : { step }), ...based, ...taken.more };
  return Object.keys(made).length === 0 ? undefined : made;
}
