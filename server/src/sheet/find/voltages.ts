import type { Finding } from '../../checks/report/finding';
import type { Craft } from '../../craft/craft';
import { CraftView } from '../../craft/view';
import { figureOf } from '../../figures';
import { shortNumber } from '../../units/number-text';
import { exactText } from '../../units/quantity';
import { type MovableLine, placesOf, write } from './movable';
import { raisedBy } from './raised';
import type { Wish } from './wish';

/** Something that says when it is time to land, and how far it comes down at a time, in SI. */
interface Limit {
  readonly land: string;
  /** What comes down with it. */
  readonly warn: string | null;
  readonly step: number;
  readonly unit: string;
}

/** Steps that a pilot can still tell on the overlay. */
const limits: readonly Limit[] = [
  { land: 'power.land-cell', warn: 'power.warn-cell', step: 0.05, unit: 'V' },
  { land: 'power.charge-reserve', warn: null, step: 0.01, unit: '%' },
];

const minutesFigure = 'minutes-to-landing';

export interface Voltages {
  readonly lines: readonly MovableLine[];
  /** What keeps the minutes from being had, a sentence each. */
  readonly inTheWay: readonly string[];
}

/**
 * How far what says when to land has to come down for the minutes that are asked for, the warning with it: no further,
 * and never so far that it is unusual or that a check speaks up. `trial` is left as these lines make it.
 */
export function* voltagesFor(
  trial: Craft,
  wish: Wish,
  before: readonly Finding[],
  check: (craft: Craft) => readonly Finding[],
): Generator<void, Voltages> {
  const { minutes } = wish.holds;
  const lines: MovableLine[] = [];
  if (minutes === null) return { lines, inTheWay: [] };
  const isFine = () => raisedBy(before, check(trial)).length === 0;
  if (wish.moves.includes('voltages'))
    for (const limit of limits)
      for (const place of placesOf(trial, wish, limit.land))
        lines.push(...(yield* lowered(trial, { limit, place, minutes, isFine })));
  return { lines, inTheWay: wish.packs.flatMap((pack) => shortText(trial, pack, minutes, wish) ?? []) };
}

interface Lowering {
  readonly limit: Limit;
  readonly place: ReturnType<typeof placesOf>[number];
  readonly minutes: number;
  readonly isFine: () => boolean;
}

/** Step by step; none where that doesn't bring the minutes up. */
function* lowered(
  trial: Craft,
  { limit, place: { packs, line }, minutes, isFine }: Lowering,
): Generator<void, readonly MovableLine[]> {
  const { land, warn, step, unit } = limit;
  const view = new CraftView(trial, packs[0] ?? null);
  const start = view.quantity(land);
  if (start === null) return [];
  const apart = warn === null || !view.isSet(warn) ? 0 : (view.quantity(warn) ?? start) - start;
  const linesAt = (value: number): readonly MovableLine[] => [
    line(land, exactText(tidy(value), unit)),
    ...(warn === null || apart <= 0 ? [] : [line(warn, exactText(tidy(value + apart), unit))]),
  ];
  let kept = start;
  const low = trial.catalog.parameter(land)?.usual?.low ?? 0;
  while (isShort(trial, packs, minutes) && kept - step >= low - step / 100) {
    const last = leastMinutes(trial, packs);
    write(trial, linesAt(kept - step));
    yield;
    if (leastMinutes(trial, packs) <= last || !isFine()) {
      write(trial, linesAt(kept));
      break;
    }
    kept -= step;
  }
  return kept === start ? [] : linesAt(kept);
}

/** Without the trace of binary arithmetic. */
function tidy(value: number): number {
  return Number(value.toFixed(4));
}

function isShort(craft: Craft, packs: readonly (string | null)[], minutes: number): boolean {
  return leastMinutes(craft, packs) < minutes;
}

function leastMinutes(craft: Craft, packs: readonly (string | null)[]): number {
  return Math.min(...packs.map((pack) => minutesWith(craft, pack) ?? Number.POSITIVE_INFINITY));
}

function minutesWith(craft: Craft, pack: string | null): number | null {
  return figureOf(new CraftView(craft, pack), minutesFigure)?.likely ?? null;
}

function shortText(craft: Craft, pack: string | null, asked: number, wish: Wish): string | null {
  const minutes = minutesWith(craft, pack);
  if (minutes === null || minutes >= asked) return null;
  const has = `${shortNumber(minutes)} min of hovering${pack === null ? '' : ` with pack ${pack}`}, ${shortNumber(asked)} min asked`;
  return wish.moves.includes('voltages')
    ? `${has}: landing still later would be unusual, or a check speaks up.`
    : `${has}: filters and gains don’t change that; let the voltages move, or take a larger pack.`;
}
