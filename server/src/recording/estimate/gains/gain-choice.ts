import type { DigitalFilter } from '../../../physics/filter';
import type { MeasuredAnswer } from '../../report';
import { withheld } from '../span';
import { type FitSetup, fitGains, type GainFit } from './gain-fit';
import { type GainSpectra, gainSignal } from './gain-signals';
import type { KnownPath, Term } from './gain-terms';
import { type PairSums, pairAt } from './pair-sums';

/** What the script says of the way from gyro to command; null: it does not say it. */
export interface PathSaid {
  readonly gyroFilters: readonly DigitalFilter[] | null;
  readonly derivativeFilters: readonly DigitalFilter[] | null;
  /** The lowest of their cutoffs, Hz; null where there is none. */
  readonly derivativeCutoff: number | null;
  readonly feedforwardFilters: readonly DigitalFilter[];
  /** Hz; 0: not said. */
  readonly controlRate: number;
  readonly ofError: boolean;
  /** What the script says of it, shares a rad/s²; 0: nothing. */
  readonly feedforward: number;
}

/** Below this the mean of a segment is all there is; up to the second flying shows, and the derivative up to the third, Hz. */
const band = { from: 1, slow: 12, quick: 30 };
/** The highest share of the rate of rows at which their slopes still tell. */
const ofRate = 0.2;
/** Rows so many times the derivative’s cutoff tell it: the design of this estimate. */
const timesCutoff = 4;

/** Less of the command’s movement that follows is a poor fit; of what goes with the sticks nearly all must follow. */
const leastShare = { ofAll: 0.9, ofWanted: 0.985 };
/** Outputs are written down up to so much earlier or later than the gyro beside them: so long, and a row, s. */
const skewed = { before: 0.000_5, behind: 0.001, step: 0.000_25, most: 16 };
/** With rows that come more often, a wanted rate may be one row late; more seldom, faster noise is folded down, Hz. */
const seldom = 200;

export function comesSeldom({ rate }: GainSpectra): boolean {
  return rate < seldom;
}

function skewsOf({ rate }: GainSpectra): readonly number[] {
  const row = rate >= seldom ? 1 / rate : 0.001;
  const whole = skewed.before + skewed.behind + row;
  const step = Math.max(skewed.step, whole / skewed.most);
  return Array.from({ length: Math.floor(whole / step) + 1 }, (_, at) => at * step - skewed.before);
}

const base: readonly Term[] = ['proportional', 'integral', 'derivative'];

/** Of what is left without it, a term must take so much to be taken for there. */
const takes = { feedforward: 0.4, bent: 0.4 };
/** A proportional term may bend by so much at the usual error. */
const mostBent = 0.15;

/** The fit that is taken, and how it was made. */
export interface ChosenFit {
  readonly fit: GainFit;
  readonly setup: FitSetup;
}

/** The fit of all that moves the command, else of what goes with the sticks; or why there is none. */
export function chosenFit(
  spectra: GainSpectra,
  whole: PairSums,
  said: PathSaid,
): ChosenFit | MeasuredAnswer<never> {
  const isSeldom = comesSeldom(spectra);
  const common = {
    path: pathOf(said),
    from: band.from,
    to: Math.min(ofRate * spectra.rate, isSeldom ? band.slow : band.quick),
    skews: skewsOf(spectra),
    late: isSeldom ? [0] : [0, 1 / spectra.rate],
  };
  const fitWith = (
    byWanted: boolean,
    tried: readonly Term[],
    known: FitSetup['known'] = none,
  ): ChosenFit | null => {
    const setup = { ...common, byWanted, terms: tried, known };
    const fit = fitGains(spectra, whole, setup);
    return fit === null ? null : { fit, setup };
  };
  const best = (byWanted: boolean): ChosenFit | null => {
    const plain = fitWith(byWanted, base, knownOf(said));
    const pushed = fitWith(byWanted, [...base, 'feedforward']);
    if (plain === null || pushed === null) return plain ?? pushed;
    return gained(plain.fit, pushed.fit) > takes.feedforward ? pushed : plain;
  };
  const ofAll = best(false);
  if (ofAll !== null && ofAll.fit.share >= leastShare.ofAll) {
    const bent = fitWith(false, [...ofAll.setup.terms, 'bent'], ofAll.setup.known);
    return bent !== null && isBent(ofAll.fit, bent.fit, whole) ? notThroughZero(spectra) : ofAll;
  }
  const ofWanted = best(true);
  if (ofWanted !== null && ofWanted.fit.share >= leastShare.ofWanted) return ofWanted;
  return poor(spectra, said, ofAll?.fit.share ?? 0);
}

const none: FitSetup['known'] = new Map();

function knownOf({ feedforward }: PathSaid): FitSetup['known'] {
  return feedforward === 0 ? none : new Map([['feedforward', feedforward]]);
}

/** Share of what one fit leaves that another takes. */
function gained(before: GainFit, after: GainFit): number {
  return 1 - (1 - after.share) / Math.max(1e-9, 1 - before.share);
}

/** A command that does not grow in proportion to the error: a term in its square, with its sign, takes much of the rest. */
function isBent(straight: GainFit, bent: GainFit, whole: PairSums): boolean {
  const error = (errorOf(whole) * Math.PI) / 180;
  const by = (bent.gains.get('bent') ?? 0) * error;
  const proportional = bent.gains.get('proportional') ?? 0;
  return gained(straight, bent) > takes.bent && Math.abs(by) > mostBent * Math.abs(proportional);
}

function notThroughZero({ axis }: GainSpectra): MeasuredAnswer<never> {
  return withheld(
    `What the motors are told about ${axis} doesn’t grow in proportion to what is missing.`,
    'Look whether motor.thrust-shape, control.when and the limits in the script are those that were flown.',
  );
}

function pathOf(said: PathSaid): KnownPath {
  return {
    gyroFilters: said.gyroFilters ?? [],
    derivativeFilters: said.derivativeFilters ?? [],
    feedforwardFilters: said.feedforwardFilters,
    controlRate: said.controlRate,
    ofError: said.ofError,
  };
}

/** Rows a second from which on the slopes of a derivative without a cutoff are seen, Hz. Ours. */
const leastUncut = 200;

export function rateForDerivative({ derivativeCutoff }: PathSaid): number {
  return derivativeCutoff === null ? leastUncut : timesCutoff * derivativeCutoff;
}

export function showsDerivative({ rate }: GainSpectra, said: PathSaid): boolean {
  return said.derivativeFilters !== null && rate >= rateForDerivative(said);
}

/** rms of what is missing between asked and flown rate in the slow band, deg/s. */
export function errorOf(sums: PairSums): number {
  let power = 0;
  for (let bin = 1; bin < sums.frequencies.length && (sums.frequencies[bin] ?? 0) <= band.slow; bin += 1)
    power +=
      pairAt(sums, gainSignal.wanted, gainSignal.wanted, bin).re +
      pairAt(sums, gainSignal.gyro, gainSignal.gyro, bin).re -
      2 * pairAt(sums, gainSignal.wanted, gainSignal.gyro, bin).re;
  const width = sums.frequencies[1] ?? 0;
  return (180 / Math.PI) * Math.sqrt((power * width) / sums.segments);
}

/** What to fly for more, with care. */
export function moveIt({ axis }: GainSpectra): string {
  return `Fly half a minute of small quick steps about ${axis} in a calm hover, high enough and with an observer beside.`;
}

function poor(spectra: GainSpectra, said: PathSaid, share: number): MeasuredAnswer<never> {
  const isSeldom = !showsDerivative(spectra, said);
  return withheld(
    `Only ${Math.max(0, Math.round(100 * share))} % of what the motors are told about ${spectra.axis} follows from error, its sum and the turning.`,
    isSeldom ? `${moveIt(spectra)} Rows that come more often tell more of it.` : moveIt(spectra),
  );
}
