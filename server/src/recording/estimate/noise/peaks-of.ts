import type { CraftView } from '../../../craft/view';
import { chainsOf } from '../../../figures/filter-chain';
import { kindOf, stagesOf } from '../../../figures/filter-stages';
import { turnsAt } from '../../../figures/turning';
import { magnitude } from '../../../physics/complex';
import { chainResponse } from '../../../physics/filter';
import { alias, aliasSpan, halfRate } from '../../../physics/sampling';
import type { Peak } from '../../report';
import { quantile } from '../span';
import type { StandingTone } from './bare';
import type { Load } from './load';
import type { FoundOrder } from './order-groups';
import { filledColumns, type OrdersFound } from './orders';
import type { ShortSpectra } from './shaken';
import type { Tone } from './standing';

/** All that is known of the tones about one axis. */
export interface FoundTones {
  readonly view: CraftView | null;
  readonly rate: number;
  readonly load: Load | null;
  readonly tones: readonly Tone[];
  /** Null without a column that says how hard the motors work. */
  readonly spectra: ShortSpectra | null;
  /** Null where the motors worked too evenly. */
  readonly standing: Float64Array | null;
  /** Null where no speed was logged, or it hardly changed. */
  readonly orders: OrdersFound | null;
}

/** The tones about an axis, the loudest first, and how many that come and go are left out. */
export function peaksOf(found: FoundTones): { readonly peaks: readonly Peak[]; readonly untold: number } {
  const orders = (found.orders?.orders ?? []).filter(
    ({ order, turns, above }) => order.likely * turns <= halfRate(found.rate) || above >= leastFolded,
  );
  const moving = orders.map((order) => movingPeak(found, order));
  const still = found.tones
    .filter(
      (tone) =>
        standsAt(found, tone) || !orders.some((order) => comesPast(found.rate, order, tone.frequency.likely)),
    )
    .map((tone) => stillPeak(found, tone));
  const loudestFirst = [...moving, ...still].sort(
    (one, other) => other.aboveFloor.likely - one.aboveFloor.likely,
  );
  const passing = loudestFirst.filter(({ source }) => source === comesAndGoes).slice(mostPassing);
  const peaks = loudestFirst.filter((one) => !passing.includes(one)).slice(0, mostPeaks);
  return { peaks, untold: passing.length };
}

/** A tone that is folded must stand out by so many dB to be believed: much else comes past where it would be. Ours. */
const leastFolded = 5;

/** What a tone is that is there however hard the motors work. */
const stands = 'standing';

/** What a tone is that goes up and down with the motors. */
export const movesWithMotors = 'moves with the motors';

/** More peaks of an axis tell nobody anything. */
const mostPeaks = 12;

/** Nor do more that come and go: without the motors’ speeds all of their tones look so. */
const mostPassing = 3;

/** What a tone is that is sometimes there, nobody knows why. */
const comesAndGoes = 'comes and goes: it neither stands at all throttle nor follows the motors';

/** dB by which a motor that shakes stands out among its likes. Ours. */
const muchLouder = 6;

function movingPeak(found: FoundTones, { order, above, turns, loudest, louder }: FoundOrder): Peak {
  const likely = order.likely * turns;
  const seen = alias(likely, found.rate);
  const isFolded = likely > halfRate(found.rate);
  const isAlone = louder === null || louder >= muchLouder;
  return {
    frequency: { likely, low: order.low * turns, high: order.high * turns, unit: 'Hz' },
    aboveFloor: { likely: above, low: above - 1.5, high: above + 1.5, unit: 'dB' },
    order,
    source: [
      movesWithMotors,
      ...(isAlone ? [`most with motor ${loudest}`] : []),
      ...(isFolded
        ? [`too fast for ${Math.round(found.rate)} rows a second, it shows at ${Math.round(seen)} Hz`]
        : []),
    ].join('; '),
    mayBeFolded: isFolded,
    ...(isAlone ? { motor: loudest } : {}),
    left: leftOf(found.view, likely, turns),
  };
}

/** Whether a tone that moves comes past a frequency, and so is what the mean spectrum shows there. */
function comesPast(rate: number, { order, slowest, fastest }: FoundOrder, frequency: number): boolean {
  const { low, high } = aliasSpan(order.likely * slowest, order.likely * fastest, rate);
  const off = Math.max(0.03 * order.likely * fastest, 6);
  return frequency > low - off && frequency < high + off;
}

function stillPeak(found: FoundTones, tone: Tone): Peak {
  const { frequency, above } = tone;
  const { source, isKnown } = sourceOf(found, tone);
  return {
    frequency,
    aboveFloor: above,
    order: null,
    source,
    mayBeFolded: isKnown ? standsHigher(found, frequency.likely) : mayFold(found),
    left: leftOf(found.view, frequency.likely, source === stands ? stands : null),
  };
}

const unchanged = 'nobody can say: the motors worked too evenly to tell what moves with them';

const alwaysNear = 'nobody can say: a tone of the motors was near it whatever they did';

function sourceOf(found: FoundTones, tone: Tone): { readonly source: string; readonly isKnown: boolean } {
  if (found.load === null)
    return { source: 'nobody can say: no motor speed and no throttle was logged', isKnown: false };
  if (found.standing === null) return { source: unchanged, isKnown: false };
  if (found.orders?.stands(standingTone(tone)) === null) return { source: alwaysNear, isKnown: false };
  if (standsAt(found, tone))
    return wouldHaveMoved(found, tone.frequency.likely)
      ? { source: stands, isKnown: true }
      : { source: unchanged, isKnown: false };
  if (movesAlong(found, tone.frequency.likely)) return { source: movesWithMotors, isKnown: true };
  return { source: comesAndGoes, isKnown: false };
}

/** What stands at a frequency however hard the motors work, stands so many dB over what lies about it. */
const leastStanding = 2;

function standsAt({ spectra, standing, orders }: FoundTones, tone: Tone): boolean {
  // Speeds tell when no tone that moves was near; without them it must stand at most loads.
  if (orders !== null) return orders.stands(standingTone(tone)) === true;
  const frequency = tone.frequency.likely;
  if (spectra === null || standing === null) return false;
  const bin = Math.round((frequency * spectra.setup.segment) / spectra.setup.rate);
  const filled = filledColumns(spectra);
  const reach = Math.max(6, Math.round(0.25 * bin));
  const missing = filled.filter(({ over }) => {
    const top = Math.max(...over.slice(bin - 1, bin + 2));
    const floor = quantile(over.slice(Math.max(1, bin - reach), bin + reach + 1), 0.5);
    return 10 * Math.log10(top / floor) < leastStanding;
  });
  return missing.length <= fewMissing * filled.length;
}

/** By so many bins a tone of the motors would have moved, at the least, to be told from one that stands. Ours. */
const leastMoved = 3;

/** Whether what the motors did would have moved a tone of theirs: their speed goes at least by the root of what they are told. */
function wouldHaveMoved({ spectra, orders }: FoundTones, frequency: number): boolean {
  if (orders !== null || spectra === null) return true;
  const known = spectra.loads.filter((load) => load > 0);
  const [low, high] = [quantile(known, 0.05), quantile(known, 0.95)];
  const moved = frequency * (Math.sqrt(high / low) - 1);
  return moved * spectra.setup.segment >= leastMoved * spectra.setup.rate;
}

function standingTone({ frequency, above, width }: Tone): StandingTone {
  return { frequency: frequency.likely, above: above.likely, width };
}

/** In so many of the columns chance may hide it. Ours. */
const fewMissing = 0.15;

/**
 * Whether the loudest of what does not stand goes up with the load, column by column, or down where it is folded, and
 * comes past a frequency.
 */
function movesAlong({ spectra, standing, load }: FoundTones, frequency: number): boolean {
  // With speeds it would have been found as an order.
  if (spectra === null || standing === null || load?.against === 'motor speed') return false;
  const loudest = filledColumns(spectra).flatMap(({ over }) => {
    const ratios = [...over].map((one, bin) =>
      (spectra.frequencies[bin] ?? 0) < 40 ? 0 : one / (standing[bin] ?? 1),
    );
    const top = Math.max(...ratios);
    return 10 * Math.log10(top) >= 3 ? [spectra.frequencies[ratios.indexOf(top)] ?? 0] : [];
  });
  if (loudest.length < 4) return false;
  const rises = pairs(loudest).filter(([one, other]) => other > one).length;
  const falls = pairs(loudest).filter(([one, other]) => other < one).length;
  const all = pairs(loudest).length;
  const [low, high] = [Math.min(...loudest), Math.max(...loudest)];
  const step = spectra.setup.rate / spectra.setup.segment;
  return Math.max(rises, falls) >= 0.8 * all && frequency >= low - step && frequency <= high + step;
}

function pairs(values: readonly number[]): readonly (readonly [number, number])[] {
  return values.flatMap((one, at) => values.slice(at + 1).map((other) => [one, other] as const));
}

/** Frames ring, and motors hum, up to about here, Hz; common practice. */
const highestTone = 1000;

/** Frames of small craft ring up to about here, Hz; common practice. */
const highestRing = 250;

/** What stands still stands still where it is folded to as well (the sampling theorem). */
function standsHigher({ rate }: FoundTones, frequency: number): boolean {
  return rate - frequency <= highestRing;
}

function mayFold({ rate, view }: FoundTones): boolean {
  const turns = view === null ? null : turnsAt(view, 'full');
  const blades = view?.quantity('prop.blades') ?? null;
  const highest = turns === null || blades === null ? highestTone : turns.likely * blades;
  return halfRate(rate) < highest;
}

/**
 * dB that the script's filters leave of a tone, with those that follow the motors where they then are: at so many turns,
 * else in the hover. They come past a tone that stands and go on; what searches the noise finds it.
 */
function leftOf(
  view: CraftView | null,
  frequency: number,
  turns: number | typeof stands | null,
): number | null {
  const chains = view === null ? null : chainsOf(view);
  if (view === null || chains === null) return null;
  const { gyro, hover } = chains.value;
  const isPassed = turns === stands && !searches(view);
  const filters = gyro.all(isPassed ? null : typeof turns === 'number' ? turns : hover);
  if (filters.length === 0) return null;
  if (filters.some(({ rate }) => frequency >= halfRate(rate))) return null;
  return Math.max(-80, 20 * Math.log10(magnitude(chainResponse({ filters }, frequency))));
}

function searches(view: CraftView): boolean {
  return stagesOf(view, 'gyro').some((stage) => kindOf(view, stage) === 'follow-noise');
}
