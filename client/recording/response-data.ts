import type { MeasuredSpan, ResponseCurve } from '../../server/src/lsp/recording-protocol';
import type { ModelCurve } from '../../server/src/sheet/recording-model';

/** Where less of what the gyro says follows from what was asked for, chance has its hand in it. */
export const sureFrom = 0.6;

/** A response that was measured. */
export interface ResponseLine {
  readonly name: string;
  readonly curve: ResponseCurve;
  /** Null where it is not known. */
  readonly bandwidth: MeasuredSpan | null;
}

export interface DrawnResponse {
  readonly id: string;
  readonly title: string;
  readonly lines: readonly ResponseLine[];
  /** What the script lets expect, and where; null where it says too little. */
  readonly model: { readonly name: string; readonly curve: ModelCurve } | null;
}

/** Where a curve of angles (deg) first falls through half a turn, of what is sure; Hz. */
export function halfTurnAt({ frequencies, phase, coherence }: ResponseCurve): number | null {
  for (let at = 1; at < phase.length; at += 1) {
    const [before, after] = [phase[at - 1] ?? 0, phase[at] ?? 0];
    if (!(before > -180 && after <= -180)) continue;
    if (Math.min(coherence[at - 1] ?? 0, coherence[at] ?? 0) < sureFrom) return null;
    const [low, high] = [frequencies[at - 1] ?? 0, frequencies[at] ?? 0];
    return low * (high / low) ** ((before + 180) / (before - after));
  }
  return null;
}
