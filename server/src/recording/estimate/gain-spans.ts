import type { DigitalFilter } from '../../physics/filter';
import { studentNinety } from '../../physics/student';
import { shortNumber } from '../../units/number-text';
import type { MeasuredSpan, Told } from '../report';
import { type FitSetup, fitGains, type GainFit, type KnownPath, type Term } from './gain-fit';
import { type GainSpectra, gainSignal } from './gain-signals';
import { type PairSums, pairAt, withMore } from './pair-sums';
import { give, told, withheld } from './span';

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

/** Of each term, in shares of the motors’ range a rad/s, a rad, a rad/s². */
export interface AxisGains {
  readonly proportional: Told<MeasuredSpan>;
  readonly integral: Told<MeasuredSpan>;
  readonly derivative: Told<MeasuredSpan>;
}

/** Below this the mean of a segment is all there is; up to the second flying shows, and the derivative up to the third, Hz. */
const band = { from: 1, slow: 12, quick: 30 };
/** The highest share of the rate of rows at which their slopes still tell. */
const ofRate = 0.2;
/** Rows so many times the derivative’s cutoff tell it: the design of this estimate. */
const timesCutoff = 4;

/** Less of the command’s movement that follows is a poor fit; of what goes with the sticks nearly all must follow. */
const leastShare = { ofAll: 0.9, ofWanted: 0.985 };
/** A gain that scatters so many times wider for the others that move with it can’t be told apart. */
const mostInflation = 6;
/** deg/s rms: differences that are smaller drown in the steps in which they are written. */
const leastError = 0.4;

/** What a fit is off by beside its scatter, found on simulated flights; shares. */
const modelError = { proportional: 0.045, integral: 0.05, derivative: 0.12 };
/** A half span wider than this share tells nobody anything. */
const widest = { proportional: 0.2, integral: 0.3, derivative: 0.3 };

/** Outputs are written down up to so much earlier or later than the gyro beside them: so long, and a row, s. */
const skewed = { before: 0.000_5, behind: 0.001, step: 0.000_25, most: 16 };
/** With rows that come more often, a wanted rate may be one row late; more seldom, faster noise is folded down, Hz. */
const seldom = 200;

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

export function* axisGains(spectra: GainSpectra, said: PathSaid): Generator<void, AxisGains | Told<never>> {
  const [first, ...others] = spectra.blocks;
  if (first === undefined) return withheld('No whole rows in ordinary flight.', moveIt(spectra));
  const whole = others.reduce((all, one) => withMore(all, one, 1), first);
  yield;
  if (spectra.isUnfiltered && said.gyroFilters === null)
    return withheld(
      'Only the gyro from before the filters was logged, and the script doesn’t say what they are.',
      'Log the gyro after the board’s filters, or write gyro.filter into the script.',
    );
  const error = errorOf(whole);
  if (!(error >= leastError))
    return withheld(
      `Asked and flown rate about ${spectra.axis} differ by ${shortNumber(error, 2)} deg/s only: too little movement.`,
      moveIt(spectra),
    );
  const chosen = chosenFit(spectra, whole, said);
  yield;
  if ('told' in chosen) return chosen;
  const parts: GainFit[] = [];
  for (const block of spectra.blocks) {
    yield;
    const fit = fitGains(spectra, withMore(whole, block, -1), chosen.setup);
    if (fit !== null) parts.push(fit);
  }
  return {
    proportional: spanOf('proportional', chosen, parts, spectra),
    integral: spanOf('integral', chosen, parts, spectra),
    derivative: withoutDerivative(spectra, said) ?? spanOf('derivative', chosen, parts, spectra),
  };
}

interface Chosen {
  readonly fit: GainFit;
  readonly setup: FitSetup;
}

function chosenFit(spectra: GainSpectra, whole: PairSums, said: PathSaid): Chosen | Told<never> {
  const isSeldom = spectra.rate < seldom;
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
  ): Chosen | null => {
    const setup = { ...common, byWanted, terms: tried, known };
    const fit = fitGains(spectra, whole, setup);
    return fit === null ? null : { fit, setup };
  };
  const best = (byWanted: boolean): Chosen | null => {
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

function notThroughZero({ axis }: GainSpectra): Told<never> {
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

function rateForDerivative({ derivativeCutoff }: PathSaid): number {
  return derivativeCutoff === null ? leastUncut : timesCutoff * derivativeCutoff;
}

function tellsDerivative({ rate }: GainSpectra, said: PathSaid): boolean {
  return said.derivativeFilters !== null && rate >= rateForDerivative(said);
}

function withoutDerivative(spectra: GainSpectra, said: PathSaid): Told<never> | null {
  if (tellsDerivative(spectra, said)) return null;
  if (said.derivativeFilters === null)
    return withheld(
      'The script doesn’t say how the derivative is filtered.',
      'Write derivative.filter, or derivative.chain = none.',
    );
  const cutoff = said.derivativeCutoff;
  const what = cutoff === null ? 'a derivative' : `a derivative that is cut off at ${shortNumber(cutoff)} Hz`;
  return withheld(
    `Rows come ${spectra.rate.toPrecision(3)} times a second, too seldom for ${what}.`,
    `Log ${Math.ceil(rateForDerivative(said))} rows a second or more.`,
  );
}

/** rms of what is missing between asked and flown rate in the slow band, deg/s. */
function errorOf(sums: PairSums): number {
  let power = 0;
  for (let bin = 1; bin < sums.frequencies.length && (sums.frequencies[bin] ?? 0) <= band.slow; bin += 1)
    power +=
      pairAt(sums, gainSignal.wanted, gainSignal.wanted, bin).re +
      pairAt(sums, gainSignal.gyro, gainSignal.gyro, bin).re -
      2 * pairAt(sums, gainSignal.wanted, gainSignal.gyro, bin).re;
  const width = sums.frequencies[1] ?? 0;
  return (180 / Math.PI) * Math.sqrt((power * width) / sums.segments);
}

function moveIt({ axis }: GainSpectra): string {
  return `Fly half a minute of small quick steps about ${axis} in a calm hover, high enough and with an observer beside.`;
}

function poor(spectra: GainSpectra, said: PathSaid, share: number): Told<never> {
  const isSeldom = !tellsDerivative(spectra, said);
  return withheld(
    `Only ${Math.max(0, Math.round(100 * share))} % of what the motors are told about ${spectra.axis} follows from error, its sum and the turning.`,
    isSeldom ? `${moveIt(spectra)} Rows that come more often tell more of it.` : moveIt(spectra),
  );
}

/**
 * What a fit leaves may be noise that goes with the error: more so where rows come seldom, or where it is all that what goes
 * with the sticks leaves. Found on simulated flights; a share.
 */
function unexplained({ fit, setup }: Chosen): number {
  const left = Math.max(0, 1 - fit.share);
  return setup.byWanted ? 6 * left : setup.late.length === 1 ? 1.8 * left : 0.3 * left;
}

function spanOf(
  term: keyof AxisGains,
  chosen: Chosen,
  parts: readonly GainFit[],
  spectra: GainSpectra,
): Told<MeasuredSpan> {
  const { fit } = chosen;
  const value = fit.gains.get(term) ?? Number.NaN;
  if ((fit.inflation.get(term) ?? Number.POSITIVE_INFINITY) > mostInflation)
    return withheld(
      `About ${spectra.axis}, ${term} can’t be told apart from the other terms: they moved alike.`,
      `${moveIt(spectra)} Make slow ones and quick ones.`,
    );
  const off = Math.hypot(scatterOf(term, parts), modelError[term] * value, unexplained(chosen) * value);
  if (term !== 'proportional' && Math.abs(value) <= off)
    return withheld(
      `Nothing of ${term} shows in what the motors are told about ${spectra.axis}: it is 0 or drowns in the rest.`,
      term === 'integral' ? 'Fly slow turns too, and hold some lean for a second.' : moveIt(spectra),
    );
  if (!(value > 0))
    return withheld(
      `What the motors are told about ${spectra.axis} works against the error’s sign.`,
      'Look at motor.order, motor.spin and the signs of the columns: right, nose up and clockwise are more.',
    );
  if (off > widest[term] * value)
    return withheld(
      `Parts of the flight disagree on ${term} by ${Math.round((100 * off) / value)} %.`,
      term === 'integral' ? 'Fly slow turns too, and hold some lean for a second.' : moveIt(spectra),
    );
  return told(give(value, off, ''), basisOf(spectra, chosen));
}

/**
 * How far a gain may lie off, nine times in ten, by how it changes as each part of the flight is left out: the jackknife.
 * Source: B. Efron, The Jackknife, the Bootstrap and Other Resampling Plans (1982), chapter 3.
 */
function scatterOf(term: Term, parts: readonly GainFit[]): number {
  const values = parts.map(({ gains }) => gains.get(term) ?? Number.NaN);
  const count = values.length;
  const mean = values.reduce((sum, one) => sum + one, 0) / count;
  const square = values.reduce((sum, one) => sum + (one - mean) ** 2, 0);
  return studentNinety(Math.max(3, count - 1)) * Math.sqrt((square * (count - 1)) / count);
}

function basisOf({ seconds }: GainSpectra, { fit, setup }: Chosen): string {
  const share = `${Math.floor(100 * fit.share)} %`;
  const what = setup.byWanted ? 'of what goes with the sticks' : 'of the motors’ command';
  const pushed = setup.terms.includes('feedforward') ? ', with a feedforward' : '';
  return `${seconds.toFixed(0)} s, ${share} ${what} told up to ${Math.round(setup.to)} Hz${pushed}`;
}
