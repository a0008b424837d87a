import { CraftView } from '../craft/view';
import { type Belief, independentWays, renewed, untold, updated } from '../physics/linear-update';
import type { Carried } from './carried';
import { type FlightReading, packStateOn, readingsOf } from './flight-readings';
import { packFlown } from './flights';
import { model } from './model';
import { priorDrive } from './prior-drive';
import { type BelievedWays, type Doubt, type Doubtful, doubtful, type Estimate, estimate } from './uncertain';

/** A reading with what was estimated for it before any flight; null: a craft that can't hover. */
export interface Judged {
  readonly reading: FlightReading;
  readonly estimate: Estimate | null;
  /** Whether it corrects what is doubtful: not where it lies beyond both spans, for then something else is wrong. */
  readonly isTaken: boolean;
}

interface Beliefs {
  /** Where in the belief a doubt stands. */
  readonly places: ReadonlyMap<string, number>;
  readonly belief: Belief;
  readonly judged: readonly Judged[];
}

/** By how much a reading of the current is off by itself, beside the scale that all of them share. Common practice. */
const currentNoise = Math.log(1.02);
/** The scale of the current sensor may be off by this factor; no number of flights averages it away. */
const currentScale = Math.log(1.1);

/** A flight with readings, with the drive that was flown. */
interface FlownReadings {
  readonly readings: readonly FlightReading[];
  readonly doubts: readonly Doubt<Carried>[];
  readonly keys: readonly string[];
  readonly doubtful: Doubtful<Carried>;
}

/**
 * What all flights together say of the doubtful inputs, whatever pack they were flown with. Each reading is taken as a
 * line in the logarithms of these, as they were thought before any flight. Beside the doubts of the drive there is the
 * scale of the current sensor, which is one for all flights, and how full the pack was, which is another on each.
 */
export const beliefsOf = model<[], Beliefs>('what flights measured', (own) => {
  const flights = own.members('flight').flatMap((name) => flownOn(own, name) ?? []);
  const keys = [...new Set(flights.flatMap((flight) => flight.keys))];
  const places = new Map(keys.map((key, index) => [key, index]));
  const [scale, state] = [keys.length, keys.length + 1];
  const judged: Judged[] = [];
  let belief = untold(keys.length + 2);
  for (const flight of flights) {
    belief = renewed(belief, state);
    for (const reading of flight.readings) {
      const one = judgedOn(flight, reading);
      judged.push(one);
      if (!one.isTaken || one.estimate === null) continue;
      const weights = Array.from({ length: keys.length + 2 }, () => 0);
      for (const [index, weight] of weightsOf(flight.doubtful, reading, one.estimate.likely).entries())
        weights[places.get(flight.keys[index] ?? '') ?? state] = weight;
      if (reading.kind === 'hover-current') weights[scale] = currentScale;
      belief = updated(belief, weights, Math.log(reading.likely / one.estimate.likely), noiseOf(reading));
    }
  }
  return { value: { places, belief, judged } };
});

/** Null where it has no readings, or its drive is not known. */
function flownOn(own: CraftView, name: string): FlownReadings | null {
  const pack = packFlown(own, name);
  if (pack === null) return null;
  const view = new CraftView(own.craft, pack);
  const prior = priorDrive(view, 'as it is');
  if (prior === null) return null;
  const { carried, doubts } = prior.value;
  const readings = readingsOf(view, name, carried);
  const state = readings.length === 0 ? null : packStateOn(view, name, carried);
  if (state === null) return null;
  return {
    readings,
    doubts,
    keys: doubts.map((doubt) => keyOf(pack, doubt)),
    doubtful: doubtful(state.carried, [...doubts, state.doubt]),
  };
}

function keyOf(pack: string | null, { of, isOfPack = false }: Doubt<Carried>): string {
  return isOfPack ? `${of}, ${pack}` : of;
}

function judgedOn(flight: FlownReadings, reading: FlightReading): Judged {
  const estimated = estimate(flight.doubtful, reading.measure);
  if (estimated === null) return { reading, estimate: null, isTaken: false };
  const { low, high, lowWords, highWords } = estimated;
  const isBelow = lowWords === undefined && reading.high < low;
  const isAbove = highWords === undefined && reading.low > high;
  return { reading, estimate: estimated, isTaken: !isBelow && !isAbove };
}

/** By how much the logarithm of what is measured moves with each doubt, from likely to the end of its span. */
function weightsOf(
  { turned }: Doubtful<Carried>,
  { measure }: FlightReading,
  likely: number,
): readonly number[] {
  return turned.map((pair) => {
    const [low, high] = pair.map((one) => {
      const value = measure(one);
      return value === null ? null : Math.log(value / likely);
    });
    if (low == null) return high ?? 0;
    return high == null ? -low : (high - low) / 2;
  });
}

/** The square of half its span, in logarithms. */
function noiseOf({ kind, low, high }: FlightReading): number {
  return kind === 'hover-current' ? currentNoise ** 2 : (Math.log(high / low) / 2) ** 2;
}

/** What flights left of the doubts of a drive with the pack in view; null where none of them measured anything. */
export function beliefAbout(
  view: CraftView,
  doubts: readonly Doubt<Carried>[],
): { readonly belief: BelievedWays | null; readonly flights: readonly string[] } {
  const all = beliefsOf(view)?.value;
  const taken = all?.judged.filter(({ isTaken }) => isTaken) ?? [];
  if (all === undefined || taken.length === 0) return { belief: null, flights: [] };
  const { mean, covariance } = all.belief;
  const at = doubts.map((doubt) => all.places.get(keyOf(view.pack, doubt)) ?? null);
  const belief = {
    mean: at.map((place) => (place === null ? 0 : (mean[place] ?? 0))),
    covariance: at.map((one, row) =>
      at.map((other, column) => {
        const isTold = one !== null && other !== null;
        return isTold ? (covariance[one]?.[other] ?? 0) : row === column ? 1 : 0;
      }),
    ),
  };
  return {
    belief: { mean: belief.mean, directions: independentWays(belief) },
    flights: [...new Set(taken.map(({ reading }) => reading.flight))],
  };
}
