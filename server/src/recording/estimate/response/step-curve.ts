import { ImpulseSums, stepOf } from '../../../physics/impulse-response';
import type { MeasuredAnswer, MeasuredSpan, StepCurve } from '../../report';
import { type FlightRows, meanBetween } from '../flight-rows';
import { give, measuredBy, withheld } from '../span';
import { flySteps } from './fly';
import { type AxisAnswer, answerBasis, ninety } from './response-curve';

/** The end gain is told by means over such a while, s, and looks back over so long. */
const slow = { mean: 1 / 40, back: 0.6 };
/** An answer that is cut off while so much of it comes yet would ring. Ours. */
const mostAtEnd = 0.35;
const fewestBins = 64;
/** A drawing needs no more, and to turn more back takes long. */
const mostBins = 256;
/** A step is shown for so long, s, and no longer than this share of a segment: the rest is what it began with. */
const shown = { seconds: 0.5, share: 0.6 };
/** An end that is known no better tells no share of it, a share. Ours. */
const widestEnd = 0.25;

/** What comes of a sudden call that stays, by the response turned back into time; its end by the slow turns. */
export function* stepMeasured(
  rows: FlightRows,
  answer: AxisAnswer,
): Generator<void, MeasuredAnswer<StepCurve>> {
  const { axis, curve, bins, response, asked } = answer;
  const last = bins.at(-1) ?? 0;
  if ((curve.size.at(-1) ?? 1) > mostAtEnd)
    return withheld(
      `The answer about ${axis} is known up to ${(curve.frequencies.at(-1) ?? 0).toFixed(0)} Hz only, where ${(100 * (curve.size.at(-1) ?? 1)).toFixed(0)} % of it comes yet: a step would be cut short.`,
      flySteps,
    );
  const end = yield* endGain(rows, answer);
  if (end === null || !(end.off < widestEnd * end.gain))
    return withheld(
      `Where a step about ${axis} ends is known too badly: the sticks asked for too little that lasts.`,
      flySteps,
    );
  const { rate, segment } = asked.setup;
  const wished = 2 ** Math.ceil(Math.log2(2.5 * last));
  const count = Math.min(response.re.length - 1, mostBins, Math.max(fewestBins, wished));
  const size = 2 * count;
  const weights = Array.from({ length: count + 1 }, (_, bin) => weightOf(answer, bin, last));
  const part = (values: readonly number[], first: number) =>
    weights.map((weight, bin) => (bin === 0 ? first : weight * (values[bin] ?? 0)));
  const parts = { re: part(response.re, end.gain), im: part(response.im, 0) };
  yield;
  const all = stepOf(parts, size, Math.ceil(size / 16));
  const interval = segment / rate / size;
  const points = Math.min(all.length, Math.floor(shown.seconds / interval), Math.floor(shown.share * size));
  const share = all.slice(0, points);
  const half = halfOf(answer, { share, interval, end: end.gain, weights });
  if (half === null)
    return withheld(
      `What comes of a step about ${axis} does not reach half of where it ends within ${(points * interval).toFixed(1)} s.`,
      'Confirm the columns, and look at the answer.',
    );
  return measuredBy(
    {
      seconds: share.map((_, at) => Number(((at + summedOver) * interval).toFixed(5))),
      share: share.map((one) => Number(one.toFixed(4))),
      endGain: give(100 * end.gain, 100 * end.off, '%'),
      half,
    },
    answerBasis(answer),
  );
}

/** What is summed up to a sample has come half a sample after it. */
const summedOver = 0.5;

/** As much of a bin as it stands out of chance, and nothing of what lies beyond the curve. */
function weightOf({ response, asked }: AxisAnswer, bin: number, last: number): number {
  if (bin > last) return 0;
  const chance = (2 * (response.scatter[bin] ?? 0) ** 2) / asked.averages;
  return 1 / (1 + chance);
}

interface StepFound {
  readonly share: readonly number[];
  readonly interval: number;
  readonly end: number;
  readonly weights: readonly number[];
}

/** When half of the end has come; off by what chance moves the curve there, beside a row. */
function halfOf(answer: AxisAnswer, { share, interval, end, weights }: StepFound): MeasuredSpan | null {
  const after = share.findIndex((one) => one >= end / 2);
  if (after < 1) return null;
  const [before, own] = [share[after - 1] ?? 0, share[after] ?? 0];
  const place = after - 1 + (end / 2 - before) / (own - before);
  const { response, asked } = answer;
  const size = 2 * (weights.length - 1);
  let variance = 0;
  for (let bin = 1; bin < weights.length; bin += 1) {
    const strength = (weights[bin] ?? 0) ** 2 * ((response.re[bin] ?? 0) ** 2 + (response.im[bin] ?? 0) ** 2);
    if (strength === 0) continue;
    // A sum of so many turns of this bin.
    const turn = (Math.PI * bin) / size;
    const sum = Math.sin((after + 1) * turn) / Math.sin(turn);
    variance += strength * ((2 * (response.scatter[bin] ?? 0) ** 2) / asked.averages) * sum ** 2;
  }
  const level = Math.sqrt(2 * variance) / size;
  const off = (ninety * level * interval) / Math.max(1e-3, own - before) + 1 / asked.setup.rate;
  return give(1000 * interval * (place + summedOver), 1000 * off, 'ms');
}

/** What comes after that while changes the end by so much, a share. Of simulated flights. */
const slowest = 0.05;
/** Blocks between two breaths. */
const inOneGo = 60;

/** What comes in the end of what lasts, with what it may be off: the taps of the impulse response, summed up. */
function* endGain(
  rows: FlightRows,
  { axis }: AxisAnswer,
): Generator<void, { gain: number; off: number } | null> {
  const [wanted, gyro] = [rows.channel(`wanted.${axis}`), rows.channel(`gyro.${axis}`)];
  if (wanted === null || gyro === null) return null;
  const size = Math.max(1, Math.round(slow.mean * rows.rate));
  const sums = new ImpulseSums(Math.round((slow.back * rows.rate) / size));
  let since = 0;
  for (const { from, to } of rows.airborne) {
    sums.pause();
    for (let start = from; start + size <= to; start += size) {
      since += 1;
      if (since % inOneGo === 0) yield;
      const [asked, came] = [
        meanBetween(wanted, start, start + size),
        meanBetween(gyro, start, start + size),
      ];
      if (Number.isNaN(asked + came)) sums.pause();
      else sums.add(asked, came);
    }
  }
  yield;
  const fit = sums.fit(1e-4);
  if (fit === null) return null;
  // What wind does lasts over some means; and an integral goes on for longer than is looked back on.
  return { gain: fit.sum, off: Math.hypot(2 * ninety * fit.sumDeviation, slowest * fit.sum) };
}
