import type { SizeAndPhase } from './frequency-response';

/** A response of which each point is known to a standard deviation: a share of its size, and rad of its phase. */
export interface WeighedCurve extends SizeAndPhase {
  readonly deviation: readonly number[];
}

/** A response as K e^(−sD) / Π(1 + s τ) for given lags τ, with the K and D that fit best. */
export interface WaitAndLags {
  /** Time constants, s. */
  readonly lags: readonly number[];
  /** D, s. */
  readonly wait: number;
  /** Standard deviation of D by chance, s, for these lags. */
  readonly waitDeviation: number;
  /** K, in the unit of the response. */
  readonly gain: number;
  /** Σ (difference/deviation)² of sizes and phases. */
  readonly misfit: number;
}

/**
 * The wait and the gain that fit a response best behind lags that are given: the gain the weighed mean of what is left of
 * the logarithm of the size, the wait the weighed slope of what is left of the phase.
 * Source: least squares along the logarithm, e.g. M. B. Tischler, R. K. Remple, Aircraft and Rotorcraft System
 * Identification, on fits of transfer functions (from memory); the lags are those of any textbook on control.
 */
export function waitBehindLags(curve: WeighedCurve, lags: readonly number[]): WaitAndLags {
  const { frequencies, size, phase, deviation } = curve;
  let [weights, sizes, pulses, late] = [0, 0, 0, 0];
  const left: { size: number; phase: number; pulse: number; weight: number }[] = [];
  for (let at = 0; at < frequencies.length; at += 1) {
    const pulse = 2 * Math.PI * (frequencies[at] ?? 0);
    let [ownSize, ownPhase] = [Math.log(size[at] ?? 1), phase[at] ?? 0];
    for (const lag of lags) {
      ownSize += Math.log(1 + (pulse * lag) ** 2) / 2;
      ownPhase += Math.atan(pulse * lag);
    }
    const weight = 1 / (deviation[at] ?? 1) ** 2;
    weights += weight;
    sizes += weight * ownSize;
    pulses += weight * pulse ** 2;
    late -= weight * pulse * ownPhase;
    left.push({ size: ownSize, phase: ownPhase, pulse, weight });
  }
  const [gain, wait] = [sizes / weights, late / pulses];
  const misfit = left.reduce(
    (sum, one) => sum + one.weight * ((one.size - gain) ** 2 + (one.phase + wait * one.pulse) ** 2),
    0,
  );
  return { lags, wait, waitDeviation: 1 / Math.sqrt(pulses), gain: Math.exp(gain), misfit };
}
