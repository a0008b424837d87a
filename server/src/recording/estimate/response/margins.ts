import { type Along, times } from '../../../physics/complex';
import {
  type FrequencyResponse,
  openOfClosed,
  type SizeAndPhase,
  sizeAndPhase,
  waited,
} from '../../../physics/frequency-response';
import { fallsBelow, reachesPhase, resonanceOf } from '../../../physics/response-figures';
import type { MeasuredAnswer, MeasuredMargins, MeasuredSpan } from '../../report';
import { give, measuredBy, withheld } from '../span';
import type { ControllerSaid } from './controller-said';
import { flySteps } from './fly';
import { fitAbout } from './follows';
import { type AxisAnswer, coherentBins, ninety } from './response-curve';

const degrees = 180 / Math.PI;

/** An open loop along the bins that tell. */
export interface MeasuredLoop {
  readonly by: MeasuredMargins['by'];
  readonly axis: string;
  readonly frequencies: readonly number[];
  readonly loop: Along;
  /** Share of the size, and rad of the phase, nine times in ten. */
  readonly off: readonly number[];
  /** How much one column may be later than another, s: a row. */
  readonly skew: number;
  readonly basis: string;
}

/** The craft from its command to its gyro, as measured, behind the controller that the script has. */
export function loopBehind(
  response: FrequencyResponse,
  controller: ControllerSaid,
  averages: number,
): Pick<MeasuredLoop, 'frequencies' | 'loop' | 'off'> {
  const bins = coherentBins(response);
  const values = bins.map((bin) =>
    times(
      { re: response.re[bin] ?? 0, im: response.im[bin] ?? 0 },
      controller(response.frequencies[bin] ?? 0),
    ),
  );
  return {
    frequencies: bins.map((bin) => response.frequencies[bin] ?? 0),
    loop: { re: values.map(({ re }) => re), im: values.map(({ im }) => im) },
    off: bins.map((bin) => (ninety * (response.scatter[bin] ?? 0)) / Math.sqrt(averages)),
  };
}

/** All that is fed back, off the answer: an error of the answer becomes 1/|1 − T| times that of the loop. */
export function loopWithin({
  bins,
  response,
  off,
  curve,
}: AxisAnswer): Pick<MeasuredLoop, 'frequencies' | 'loop' | 'off'> {
  const at = (values: readonly number[]) => bins.map((bin) => values[bin] ?? 0);
  const closed = { re: at(response.re), im: at(response.im) };
  const distance = closed.re.map((re, index) => Math.hypot(1 - re, closed.im[index] ?? 0));
  return {
    frequencies: curve.frequencies,
    loop: openOfClosed(closed),
    off: off.map((one, index) => one / (distance[index] ?? 1)),
  };
}

/**
 * Where the open loop passes gain 1 and half a turn, and how near it comes to −1: each off the curve about that place.
 * Source: definitions, e.g. K. J. Åström and R. M. Murray, Feedback Systems, section 10.3.
 */
export function marginsMeasured(measured: MeasuredLoop): MeasuredAnswer<MeasuredMargins> {
  const { axis, by, frequencies, loop, off, skew, basis } = measured;
  const curve = sizeAndPhase({ frequencies, ...loop });
  const known = { curve, off };
  const raw = fallsBelow(curve, 1);
  const end = frequencies.at(-1) ?? 0;
  if (raw === null)
    return withheld(
      (curve.size[0] ?? 0) < 1
        ? `The loop about ${axis} is weaker than 1 from ${(frequencies[0] ?? 0).toFixed(1)} Hz on: where it passes 1 was flown too little.`
        : `The loop about ${axis} is known up to ${end.toFixed(0)} Hz only, and is stronger than 1 there.`,
      flySteps,
    );
  const size = fitAbout(known, { centre: raw, powers: 2 }, (at) => Math.log(curve.size[at] ?? 1));
  const phase = fitAbout(known, { centre: raw, powers: 2 }, (at) => curve.phase[at] ?? 0);
  const fall = size?.coefficients[1] ?? 0;
  if (size === null || phase === null || !(fall < -0.2))
    return withheld(
      `Too little is known of the loop about ${axis} near the ${raw.toFixed(1)} Hz where it passes 1.`,
      flySteps,
    );
  const [place, sizeOff] = [-(size.coefficients[0] ?? 0) / fall, ninety * size.deviation];
  const crossover = raw * Math.exp(place);
  const bend = phase.coefficients[1] ?? 0;
  const left = Math.PI + (phase.coefficients[0] ?? 0) + bend * place;
  const skewed = 2 * Math.PI * crossover * skew;
  const leftOff = skewed + Math.hypot(ninety * phase.deviation, (bend * sizeOff) / fall);
  if (!(degrees * leftOff <= widest.phase))
    return withheld(
      `The phase margin about ${axis} is known to ${(degrees * leftOff).toFixed(0)} degrees only${skewed > leftOff / 2 ? ': rows come too seldom' : ''}.`,
      skewed > leftOff / 2 ? 'Log 500 rows a second or more.' : flySteps,
    );
  return measuredBy(
    {
      by,
      crossover: aboutRatio(crossover, sizeOff / -fall, 'Hz'),
      phaseMargin: give(degrees * left, degrees * leftOff, 'deg'),
      gainMargin: gainMarginIn(known, skew),
      sensitivityPeak: sensitivityIn(measured),
    },
    basis,
  );
}

/** Spans that reach farther tell nobody anything: deg, and a factor. Ours. */
const widest = { phase: 25, gain: 1.7 };

interface KnownCurve {
  readonly curve: SizeAndPhase;
  readonly off: readonly number[];
}

function gainMarginIn(known: KnownCurve, skew: number): MeasuredSpan | null {
  const { curve } = known;
  const raw = reachesPhase(curve, -Math.PI);
  if (raw === null) return null;
  const size = fitAbout(known, { centre: raw, powers: 1 }, (at) => Math.log(curve.size[at] ?? 1));
  const phase = fitAbout(known, { centre: raw, powers: 1 }, (at) => curve.phase[at] ?? 0);
  const fall = phase?.coefficients[1] ?? 0;
  if (size === null || phase === null || !(fall < 0)) return null;
  const place = (-Math.PI - (phase.coefficients[0] ?? 0)) / fall;
  const slope = size.coefficients[1] ?? 0;
  const moved = (2 * Math.PI * raw * skew + ninety * phase.deviation) / -fall;
  const off = Math.hypot(ninety * size.deviation, slope * moved);
  const margin = Math.exp(-(size.coefficients[0] ?? 0) - slope * place);
  return margin > 1 && Math.exp(off) < widest.gain ? aboutRatio(margin, off, '') : null;
}

/** 1 over the least distance from −1: of the sensitivity |1/(1 + L)| the peak; with what comes a row sooner and later. */
function sensitivityIn(measured: MeasuredLoop): MeasuredSpan {
  const { frequencies, loop, skew } = measured;
  const [sooner, own, later] = [-skew, 0, skew].map((seconds) =>
    peakOfSensitivity(measured, waited({ frequencies, ...loop }, seconds)),
  ) as [PeakFound, PeakFound, PeakFound];
  // Far above its crossover a loop leaves disturbances as they are: the peak is never below 1.
  return {
    likely: Math.max(1, own.size),
    low: Math.max(1, Math.min(sooner.size, own.size, later.size) * Math.exp(-own.off)),
    high: Math.max(sooner.size, own.size, later.size) * Math.exp(own.off),
    unit: '',
  };
}

interface PeakFound {
  readonly size: number;
  /** Share by which it may be off by chance. */
  readonly off: number;
}

function peakOfSensitivity({ frequencies, off }: MeasuredLoop, { re, im }: Along): PeakFound {
  const distance = re.map((value, at) => Math.hypot(1 + value, im[at] ?? 0));
  const size = distance.map((one) => 1 / one);
  const share = off.map((one, at) => (one * Math.hypot(re[at] ?? 0, im[at] ?? 0)) / (distance[at] ?? 1));
  const curve = { frequencies, size, phase: size.map(() => 0) };
  const peak = resonanceOf(curve);
  const fit = fitAbout({ curve, off: share }, { centre: peak.frequency, powers: 2 }, (at) =>
    Math.log(size[at] ?? 1),
  );
  if (fit !== null) return { size: Math.exp(fit.coefficients[0] ?? 0), off: ninety * fit.deviation };
  return { size: peak.size, off: share[size.indexOf(Math.max(...size))] ?? 0 };
}

/** A value that may lie off by so much of its logarithm either way. */
function aboutRatio(likely: number, off: number, unit: string): MeasuredSpan {
  return { likely, low: likely * Math.exp(-off), high: likely * Math.exp(off), unit };
}
