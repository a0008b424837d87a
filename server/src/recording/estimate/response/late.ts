import { type FrequencyResponse, sizeAndPhase } from '../../../physics/frequency-response';
import { type WaitAndLags, type WeighedCurve, waitBehindLags } from '../../../physics/waits-and-lags';
import type { MeasuredAnswer, MeasuredSpan } from '../../report';
import { measuredBy, withheld } from '../span';
import { flySteps } from './fly';
import { coherentBins, ninety } from './response-curve';

export interface DelayAndLag {
  readonly delay: MeasuredAnswer<MeasuredSpan>;
  readonly lag: MeasuredAnswer<MeasuredSpan>;
}

/** Time constants of motors that are tried, s; the craft itself is slower still: air brakes its turning. */
const tried = { from: 0.002, to: 0.16, body: 3, factor: 1.18 } as const;
const fine = 1.035;
/** Of neighbouring bins of this window each is half the other. */
const shared = 1.5;
/** Up to there a filter waits, beyond it also takes away, Hz. */
const highest = 45;
const fewestBins = 6;
/** A whole row either way is more than nine in ten by itself: beside it chance counts less. */
const besideRow = 0.6;
/** Spans that are wider than so tell nobody anything: ms, and a share. Ours. */
const widest = { delay: 4, lag: 0.8 };
/**
 * What two lags and a wait leave out: motors that quicken sooner than they slow down answer in between, by a few percent
 * of their lag either way; what they are held at between rows, some tenths of a millisecond. Of simulated flights.
 */
const modelError = { delay: 0.0001, usual: 0.03, lag: 0.04 };

/** From what the motors are told about an axis to its gyro: what only waits, and the motors' lag. */
export function* delayAndLag(
  axis: string,
  response: FrequencyResponse,
  averages: number,
  rate: number,
): Generator<void, DelayAndLag> {
  const curve = weighed(response, averages);
  const end = curve.frequencies.at(-1) ?? 0;
  if (curve.frequencies.length < fewestBins) {
    const why = withheld(
      `What the motors are told and what the gyro says follow the sticks about ${axis} up to ${end.toFixed(0)} Hz only.`,
      flySteps,
    );
    return { delay: why, lag: why };
  }
  const coarse = yield* tries(curve, tried.from, tried.to, tried.factor, () => true);
  const best = leastOf(coarse);
  const inflation = shared * Math.max(1, best.misfit / (2 * curve.frequencies.length - 4));
  const near = coarse.filter(({ misfit }) => misfit < best.misfit + 9 * inflation);
  const within = (which: number) => {
    const all = near.map(({ lags }) => lags[which] ?? 0);
    return [Math.min(...all) / tried.factor, Math.max(...all) * tried.factor] as const;
  };
  const [motor, body] = [within(0), within(1)];
  const close = yield* tries(curve, motor[0], motor[1], fine, (lag) => lag >= body[0] && lag <= body[1]);
  return spansOf(axis, close, inflation, { end, rate });
}

/** The bins that tell, early phases unwound. */
function weighed(response: FrequencyResponse, averages: number): WeighedCurve {
  const bins = coherentBins(response).filter((bin) => (response.frequencies[bin] ?? 0) <= highest);
  const at = (values: readonly number[]) => bins.map((bin) => values[bin] ?? 0);
  const curve = sizeAndPhase({
    frequencies: at(response.frequencies),
    re: at(response.re),
    im: at(response.im),
  });
  return {
    ...curve,
    deviation: at(response.scatter).map((one) => Math.max(0.003, one / Math.sqrt(averages))),
  };
}

function* tries(
  curve: WeighedCurve,
  from: number,
  to: number,
  factor: number,
  isTried: (body: number) => boolean,
): Generator<void, readonly WaitAndLags[]> {
  const all: WaitAndLags[] = [];
  for (let motor = from; motor <= to; motor *= factor) {
    yield;
    for (let body = motor; body <= tried.body; body *= factor)
      if (isTried(body)) all.push(waitBehindLags(curve, [motor, body]));
  }
  return all;
}

function leastOf(tries: readonly WaitAndLags[]): WaitAndLags {
  return tries.reduce((least, one) => (one.misfit < least.misfit ? one : least));
}

/** Each try counts as much as chance lets it be the true one. */
function spansOf(
  axis: string,
  tries: readonly WaitAndLags[],
  inflation: number,
  { end, rate }: { readonly end: number; readonly rate: number },
): DelayAndLag {
  const { misfit } = leastOf(tries);
  const weights = tries.map((one) => Math.exp((misfit - one.misfit) / (2 * inflation)));
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = (of: (one: WaitAndLags) => number) =>
    tries.reduce((sum, one, at) => sum + of(one) * (weights[at] ?? 0), 0) / all;
  const delay = mean(({ wait }) => wait);
  const scatter = Math.sqrt(
    mean(({ wait, waitDeviation }) => (wait - delay) ** 2 + inflation * waitDeviation ** 2) +
      modelError.delay ** 2,
  );
  const found = mean(({ lags }) => lags[0] ?? 0);
  const lag = (1 - modelError.usual) * found;
  const lagScatter = Math.sqrt(
    mean(({ lags }) => ((lags[0] ?? 0) - found) ** 2) + (modelError.lag * lag) ** 2,
  );
  const row = 1 / rate;
  const basis = `up to ${end.toFixed(0)} Hz, from what the motors are told to the gyro`;
  return {
    delay:
      1000 * ninety * scatter > widest.delay
        ? tooFew(axis, end)
        : measuredBy(
            spanOf(delay, besideRow * ninety * scatter + row),
            `${basis}; one row, ${(1000 * row).toFixed(1)} ms, either way is in the span`,
          ),
    lag:
      ninety * lagScatter > widest.lag * lag
        ? tooFew(axis, end)
        : measuredBy(spanOf(lag, ninety * lagScatter), basis),
  };
}

function tooFew(axis: string, end: number): MeasuredAnswer<never> {
  return withheld(
    `The answer about ${axis} is known up to ${end.toFixed(0)} Hz only: a wait and a lag can’t be told apart there.`,
    flySteps,
  );
}

/** ms */
function spanOf(seconds: number, off: number): MeasuredSpan {
  return {
    likely: 1000 * seconds,
    low: 1000 * Math.max(0, seconds - off),
    high: 1000 * (seconds + off),
    unit: 'ms',
  };
}
