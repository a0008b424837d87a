import { chanceLevel } from '../../../physics/chance';
import { prominenceAt, summitsOf, widthAt } from '../../../physics/peaks';
import { independentAverages } from '../../../physics/welch';
import type { MeasuredSpan } from '../../report';
import type { FlightRows } from '../flight-rows';
import { quantile } from '../span';
import { type Stands, standsWithout } from './bare';
import { type FoundOrder, groupsOf, type MotorTracks, type TakenOrder } from './order-groups';
import type { ShortColumn, ShortSpectra } from './shaken';
import { alongOrders, orderOf, orderStep, steadyOnes, type Track, takeOut, tracksOf } from './tracks';

/** What the motors' speeds tell of the tones about an axis. */
export interface OrdersFound {
  readonly orders: readonly FoundOrder[];
  readonly stands: Stands;
}

/** A column of so few segments tells nothing. */
const fewestSegments = 6;
/** With fewer columns nothing tells what stands from what moves. */
const fewestColumns = 4;

export function filledColumns({ columns }: ShortSpectra): readonly ShortColumn[] {
  return columns.filter(({ segments }) => segments >= fewestSegments);
}

/**
 * What stands out at each frequency however hard the motors work: the median of the columns, for a tone that moves is in
 * few of them. In a flight too short for columns what lies about each frequency stands for it, if the motors worked
 * unevenly enough. Null where they did not.
 */
export function standingOver(spectra: ShortSpectra): Float64Array | null {
  const filled = filledColumns(spectra);
  if (filled.length < fewestColumns) return isUneven(spectra) ? floorOver(spectra) : null;
  return spectra.frequencies.map((_, bin) =>
    quantile(
      filled.map(({ over }) => over[bin] ?? 0),
      0.5,
    ),
  );
}

/** Nine tenths of the loads lie apart by this share at least, and there are so many segments. Ours. */
const uneven = { share: 0.12, segments: 24 };

function isUneven({ loads }: ShortSpectra): boolean {
  const known = loads.filter((load) => load > 0);
  const [low, middle, high] = [0.05, 0.5, 0.95].map((share) => quantile(known, share)) as [
    number,
    number,
    number,
  ];
  return known.length >= uneven.segments && high - low >= uneven.share * middle;
}

/** The median of the mean of all segments over the bins about each. */
function floorOver({ over, frequencies, starts }: ShortSpectra): Float64Array {
  const bins = frequencies.length;
  const means = frequencies.map((_, bin) => {
    let [sum, count] = [0, 0];
    for (let at = 0; at < starts.length; at += 1) {
      const value = over[at * bins + bin] ?? Number.NaN;
      if (Number.isNaN(value)) continue;
      sum += value;
      count += 1;
    }
    return sum / Math.max(1, count);
  });
  return means.map((_, bin) => {
    const reach = Math.max(6, Math.round(0.25 * bin));
    return quantile(means.slice(Math.max(1, bin - reach), bin + reach + 1), 0.5);
  });
}

/** What follows the motors stands at least so many dB over what does not. */
const leastAbove = 2;
/** What comes at no whole number of turns must stand out by more to be believed. */
const oddAbove = 4;
/** A speed that is logged is right to this share. */
const speedError = 0.02;
/** More are not taken out: of four motors two tones each. */
const mostTaken = 10;
/**
 * Tones that move with logged speeds. Each segment is read along multiples of each motor's own speed, folded down as rows
 * fold it, against what stands at these frequencies anyway: what follows the motor comes together at its order, all else
 * is smeared. The loudest is taken out before the next is looked for, since seldom rows, and motors that turn nearly
 * alike, show it at other orders as well. What turns shakes in whole numbers of its turns, so these are looked for first.
 * Common practice of order tracking; the folding and the taking out are ours.
 */
export function* ordersOf(
  rows: FlightRows,
  spectra: ShortSpectra,
  standing: Float64Array,
): Generator<void, OrdersFound> {
  const all = yield* tracksOf(rows, spectra);
  const steady = steadyOnes(all);
  const motors = yield* motorTracks(spectra, standing, { all, steady });
  const segments = Math.floor(steady.length / Math.max(1, motors.length));
  const averages = Math.max(1, independentAverages(segments, spectra.setup));
  const least = Math.max(leastAbove, 20 * Math.log10(chanceLevel(averages, 1e-5)));
  const left: ShortSpectra = { ...spectra, over: spectra.over.slice() };
  const taken: TakenOrder[] = [];
  for (const isWanted of [isWhole, () => true]) {
    const enough = isWanted === isWhole ? least : Math.max(least, oddAbove);
    while (taken.length < mostTaken) {
      let best: TakenOrder | null = null;
      for (const motion of motors) {
        const { motor, untouched } = motion;
        const ratios = taken.length === 0 ? untouched : yield* ratiosOf(left, motion);
        const one = loudestOf(ratios, enough, isWanted);
        if (one !== null && (best === null || believed(one) > believed(best))) best = { motor, ...one };
      }
      if (best === null) break;
      taken.push(best);
      yield* takeOut(
        left,
        standing,
        motors.find(({ motor }) => motor === best.motor)?.all ?? [],
        best.order.likely,
      );
    }
  }
  const kinds = [...new Set(taken.map(({ order }) => order.likely))];
  return { orders: groupsOf(taken, motors), stands: yield* standsWithout(spectra, all, kinds) };
}

function* motorTracks(
  spectra: ShortSpectra,
  standingOver: Float64Array,
  { all, steady }: Pick<MotorTracks, 'all' | 'steady'>,
): Generator<void, readonly MotorTracks[]> {
  const row = Float32Array.from(standingOver);
  const motors: MotorTracks[] = [];
  for (const motor of new Set(all.map((track) => track.motor))) {
    const isIts = (track: Track) => track.motor === motor;
    const its = { motor, all: all.filter(isIts), steady: steady.filter(isIts) };
    const standing = yield* alongOrders(spectra, its.steady, () => row);
    motors.push({ ...its, standing, untouched: yield* ratiosOf(spectra, { ...its, standing }) });
  }
  return motors;
}

/** dB by which each order of a motor stands over what stands there anyway. */
function* ratiosOf(
  spectra: ShortSpectra,
  { steady, standing }: Pick<MotorTracks, 'steady' | 'standing'>,
): Generator<void, Float64Array> {
  const seen = yield* alongOrders(spectra, steady);
  return seen.map((one, place) => (one > 0 ? 10 * Math.log10(one / (standing[place] as number)) : 0));
}

/** Of motors that turn nearly alike, the one whose tone comes at a whole number of its turns is believed more, dB. */
function believed({ order: { likely }, above }: Pick<TakenOrder, 'order' | 'above'>): number {
  return above - (100 * (likely / Math.max(1, Math.round(likely)) - 1)) ** 2;
}

function isWhole(order: number): boolean {
  return Math.abs(order / Math.round(order) - 1) <= speedError;
}

function loudestOf(
  ratios: Float64Array,
  least: number,
  isWanted: (order: number) => boolean,
): { readonly order: MeasuredSpan; readonly above: number } | null {
  const [best] = summitsOf(ratios)
    .filter(({ at }) => (ratios[at] ?? 0) >= least && isWanted(orderOf(at)))
    .filter(({ at }) => prominenceAt(ratios, at).prominence >= Math.min(least, leastAbove))
    .sort((one, other) => (ratios[other.at] ?? 0) - (ratios[one.at] ?? 0));
  return best === undefined ? null : { order: orderAt(ratios, best.at), above: ratios[best.at] ?? 0 };
}

/**
 * The centre of the summit's upper part, which many segments make; off by a tenth of its width, and by what motors that
 * turn nearly alike are taken for each other by.
 */
function orderAt(ratios: Float64Array, at: number): MeasuredSpan {
  const near = Math.round(widestOrder / orderStep);
  const width = widthAt(ratios, at, 0.5);
  const [from, to] = [Math.max(at - near, Math.ceil(width.from)), Math.min(at + near, Math.floor(width.to))];
  const likely = orderOf(centreOf(ratios, from, to));
  const share = Math.hypot(mistaken, 0.1 * orderStep * (to - from));
  return { likely, low: likely * (1 - share), high: likely * (1 + share), unit: '' };
}

/** Nine times of ten the order of simulated flights, whose motors differ by some hundredths, was no farther off. Ours. */
const mistaken = 0.018;

/** What lies farther from a summit, as a share of its order, is another's. */
const widestOrder = 0.02;

/** The centre of what stands over the lower end of a summit's upper half. */
function centreOf(values: Float64Array, from: number, to: number): number {
  const base = Math.min(values[from] ?? 0, values[to] ?? 0);
  let [sum, moment] = [0, 0];
  for (let place = from; place <= to; place += 1) {
    const weight = Math.max(0, (values[place] ?? 0) - base) + 1e-9;
    sum += weight;
    moment += weight * place;
  }
  return moment / sum;
}
