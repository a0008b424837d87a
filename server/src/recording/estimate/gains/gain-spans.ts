import { studentNinety } from '../../../physics/student';
import { shortNumber } from '../../../units/number-text';
import type { MeasuredAnswer, MeasuredSpan } from '../../report';
import { isOpposite, reversed } from '../response/response-curve';
import { give, measuredBy, withheld } from '../span';
import {
  type ChosenFit,
  chosenFit,
  comesSeldom,
  errorOf,
  moveIt,
  type PathSaid,
  rateForDerivative,
  showsDerivative,
} from './gain-choice';
import { fitGains, type GainFit } from './gain-fit';
import { type GainSpectra, gainSignal } from './gain-signals';
import type { Term } from './gain-terms';
import { type PairSums, pairAt, withMore } from './pair-sums';

/** Of each term, in shares of the motors’ range a rad/s, a rad, a rad/s². */
export interface AxisGains {
  readonly proportional: MeasuredAnswer<MeasuredSpan>;
  readonly integral: MeasuredAnswer<MeasuredSpan>;
  readonly derivative: MeasuredAnswer<MeasuredSpan>;
}

/** A gain that scatters so many times wider for the others that move with it can’t be told apart. */
const mostInflation = 6;
/**
 * deg/s rms over the part of a flight in which most is missing between asked and flown rate. Gusts on a calm hover reach 9,
 * small steps of the sticks 12 to 70, on simulated flights. From less it can’t be confirmed that the command grows in
 * proportion to what is missing, and what was told was outside its span more often.
 */
const leastError = 10;

/** What a fit is off by beside its scatter, found on simulated flights; shares. Rows that come seldom fold noise down. */
const modelError = {
  often: { proportional: 0.05, integral: 0.07, derivative: 0.12 },
  seldom: { proportional: 0.1, integral: 0.12, derivative: 0.12 },
};
/** What is told so much late looks like a derivative of so much times the proportional gain: skews are found no finer, s. */
const unseen = 0.000_3;
/** A half span wider than this share tells nobody anything. */
const widest = { proportional: 0.2, integral: 0.3, derivative: 0.3 };

export function* axisGains(
  spectra: GainSpectra,
  said: PathSaid,
): Generator<void, AxisGains | MeasuredAnswer<never>> {
  const [first, ...others] = spectra.blocks;
  if (first === undefined) return withheld('No whole rows in ordinary flight.', moveIt(spectra));
  const whole = others.reduce((all, one) => withMore(all, one, 1), first);
  yield;
  if (spectra.isUnfiltered && said.gyroFilters === null)
    return withheld(
      'Only the gyro from before the filters was logged, and the script doesn’t say what they are.',
      'Log the gyro after the board’s filters, or write gyro.filter into the script.',
    );
  const error = Math.max(...spectra.blocks.map(errorOf));
  if (!(error >= leastError))
    return withheld(
      `Asked and flown rate about ${spectra.axis} differ by ${shortNumber(error, 2)} deg/s rms at most: too calm to confirm that what the motors are told grows in proportion to it.`,
      moveIt(spectra),
    );
  if (turnsOpposite(whole)) return reversed(spectra.axis);
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

function withoutDerivative(spectra: GainSpectra, said: PathSaid): MeasuredAnswer<never> | null {
  if (showsDerivative(spectra, said)) return null;
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

/**
 * What a fit leaves may be noise that goes with the error: more so where rows come seldom, or where it is all that what goes
 * with the sticks leaves. Found on simulated flights; a share.
 */
function unexplained({ fit, setup }: ChosenFit): number {
  const left = Math.max(0, 1 - fit.share);
  return setup.byWanted ? 6 * left : setup.late.length === 1 ? 1.8 * left : 0.3 * left;
}

function spanOf(
  term: keyof AxisGains,
  chosen: ChosenFit,
  parts: readonly GainFit[],
  spectra: GainSpectra,
): MeasuredAnswer<MeasuredSpan> {
  const { fit } = chosen;
  const value = fit.gains.get(term) ?? Number.NaN;
  if ((fit.inflation.get(term) ?? Number.POSITIVE_INFINITY) > mostInflation)
    return withheld(
      `About ${spectra.axis}, ${term} can’t be told apart from the other terms: they moved alike.`,
      `${moveIt(spectra)} Make slow ones and quick ones.`,
    );
  const off = Math.hypot(
    scatterOf(term, parts),
    modelError[comesSeldom(spectra) ? 'seldom' : 'often'][term] * value,
    unexplained(chosen) * value,
    term === 'derivative' ? unseen * (fit.gains.get('proportional') ?? 0) : 0,
  );
  if (term !== 'proportional' && value <= off)
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
  return measuredBy(give(value, off, ''), basisOf(spectra, chosen));
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

function basisOf({ seconds }: GainSpectra, { fit, setup }: ChosenFit): string {
  const share = `${Math.floor(100 * fit.share)} %`;
  const what = setup.byWanted ? 'of what goes with the sticks' : 'of the motors’ command';
  const pushed = setup.terms.includes('feedforward') ? ', with a feedforward' : '';
  return `${seconds.toFixed(0)} s, ${share} ${what} told up to ${Math.round(setup.to)} Hz${pushed}`;
}

/** What follows from the sticks by less than this share says nothing of signs. */
const leastCoherence = 0.6;

function turnsOpposite(sums: PairSums): boolean {
  const [asked, came] = [gainSignal.wanted, gainSignal.gyro];
  const between = pairAt(sums, asked, came, 1);
  const both = pairAt(sums, asked, asked, 1).re * pairAt(sums, came, came, 1).re;
  const isCoherent = between.re ** 2 + between.im ** 2 >= leastCoherence * both;
  return isCoherent && isOpposite(between, sums.frequencies[1] ?? Number.POSITIVE_INFINITY);
}
