import type { SizeAndPhase } from '../../physics/frequency-response';
import { fallsBelow, phaseDelayOf, reachesPhase, resonanceOf } from '../../physics/response-figures';
import type { MeasuredSpan, Told } from '../report';
import { flySteps } from './fly';
import { type AxisAnswer, answerBasis } from './response-curve';
import { give, told, withheld } from './span';

/** At the end of the bandwidth so much of what is asked for comes: -3 dB. */
const halfPower = Math.SQRT1_2;

export function bandwidthOf(answer: AxisAnswer): Told<MeasuredSpan> {
  const { curve, off } = answer;
  const at = (times: number) => fallsBelow(moved(curve, off, times), halfPower);
  const [low, likely, high] = [at(-1), at(0), at(1)];
  if (low === null || likely === null || high === null) return beyond(answer, 'at -3 dB');
  return told({ likely, low, high, unit: 'Hz' }, answerBasis(answer));
}

/** The curve with each size raised by so many times what it may be off. */
function moved({ frequencies, size, phase }: SizeAndPhase, off: readonly number[], times: number) {
  return { frequencies, phase, size: size.map((one, at) => one * (1 + times * (off[at] ?? 0))) };
}

function beyond({ axis, curve }: AxisAnswer, where: string): Told<never> {
  return withheld(
    `The answer about ${axis} is known up to ${(curve.frequencies.at(-1) ?? 0).toFixed(0)} Hz only, and is not ${where} there.`,
    flySteps,
  );
}

export function peakOf(answer: AxisAnswer): Told<MeasuredSpan> {
  const { axis, curve, off } = answer;
  const { size, frequency } = resonanceOf(curve);
  if (frequency === curve.frequencies[0])
    return withheld(
      `The answer about ${axis} has no peak: less comes the quicker it is asked for, from ${frequency.toFixed(1)} Hz on.`,
      'Nothing is to be done.',
    );
  const near = curve.frequencies.findIndex((one) => one >= frequency);
  return told(give(100 * size, 100 * size * (off[Math.max(0, near)] ?? 0), '%'), answerBasis(answer));
}

export function phaseDelayTold(answer: AxisAnswer): Told<MeasuredSpan> {
  const { curve, off } = answer;
  const delay = phaseDelayOf(curve);
  const half = reachesPhase(curve, -Math.PI);
  if (delay === null || half === null) return beyond(answer, 'at twice the frequency of half a turn');
  const end = curve.frequencies.findIndex((one) => one >= 2 * half);
  const late = (off[end] ?? 0) / (4 * Math.PI * half);
  return told(give(1000 * delay, 1000 * late, 'ms'), answerBasis(answer));
}
