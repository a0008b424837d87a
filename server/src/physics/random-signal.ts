import type { Chain } from './filter';
import { respondingAlong } from './filter-along';
import type { Gains } from './loop';

/**
 * The power (unit²) in each bin of a one-sided density (unit²/Hz at rising frequencies, Hz) from one frequency to another:
 * their sum is the integral by the trapezoid over the bins between, 0 in all others.
 * Source: integral of the density, A. V. Oppenheim, R. W. Schafer, Discrete-Time Signal Processing, section on
 * discrete-time random signals; the trapezoid is common practice.
 */
export function binPowers(
  frequencies: ArrayLike<number>,
  density: ArrayLike<number>,
  from: number,
  to = Number.POSITIVE_INFINITY,
): Float64Array {
  const powers = new Float64Array(frequencies.length);
  for (let at = 1; at < powers.length; at += 1) {
    const [low = 0, high = 0] = [frequencies[at - 1], frequencies[at]];
    if (low < from || high > to) continue;
    powers[at - 1] = (powers[at - 1] ?? 0) + ((high - low) / 2) * (density[at - 1] ?? 0);
    powers[at] = (powers[at] ?? 0) + ((high - low) / 2) * (density[at] ?? 0);
  }
  return powers;
}

/**
 * By how much each of some chains turns the density of a random signal at some frequencies (Hz): |H|², so that the density behind it
 * is that before them times this.
 * Source: A. V. Oppenheim, R. W. Schafer, Discrete-Time Signal Processing, section on discrete-time random signals.
 */
export function powerGains(
  chains: readonly Chain[],
  frequencies: ArrayLike<number>,
): readonly Float64Array[] {
  const respond = respondingAlong(Array.from(frequencies));
  return chains.map(({ filters }) => {
    const { re, im } = respond(filters, 0);
    return Float64Array.from(re, (real, at) => real * real + (im[at] ?? 0) ** 2);
  });
}

/** The root of the mean square (unit) of a signal with such powers (unit²) in its bins. Source: Parseval's theorem. */
export function rmsOf(powers: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < powers.length; at += 1) sum += powers[at] ?? 0;
  return Math.sqrt(sum);
}

/** What filters make of each bin: the real and the imaginary parts of their response. */
export interface Responses {
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** Sums over the bins of a gyro's noise from which its command follows with any gains. */
export interface NoiseSums {
  /** (rad/s)² */
  readonly rate: number;
  /** Of the angle and of the derivative behind its filters, rad² and (rad/s²)². */
  readonly angle: number;
  readonly derivative: number;
  /** What of the derivative goes with the rate, (rad/s)(rad/s²), and with the angle, rad (rad/s²). */
  readonly withRate: number;
  readonly withAngle: number;
}

/** Of powers ((rad/s)² in each bin) behind the gyro's filters. `derived`: what those of the derivative make of a bin. */
export function noiseSums(frequencies: Float64Array, powers: Float64Array, { re, im }: Responses): NoiseSums {
  let [rate, angle, derivative, withRate, withAngle] = [0, 0, 0, 0, 0];
  for (let at = 0; at < powers.length; at += 1) {
    const power = powers[at] ?? 0;
    if (power === 0) continue;
    const pulse = 2 * Math.PI * (frequencies[at] ?? 0);
    const [real, imaginary] = [re[at] ?? 1, im[at] ?? 0];
    rate += power;
    angle += power / (pulse * pulse);
    derivative += power * pulse * pulse * (real * real + imaginary * imaginary);
    withRate -= power * pulse * imaginary;
    withAngle -= power * real;
  }
  return { rate, angle, derivative, withRate, withAngle };
}

/**
 * The root of the mean square of the command (share of full throttle) that such noise comes to with gains: ∫ S |P + I/jω + D
 * jω H|² df, its square written out.
 * Source: output density of a linear system, A. V. Oppenheim, R. W. Schafer, as above.
 */
export function noiseCommand({ proportional, integral, derivative }: Gains, sums: NoiseSums): number {
  return Math.sqrt(
    Math.max(
      0,
      proportional ** 2 * sums.rate +
        integral ** 2 * sums.angle +
        derivative ** 2 * sums.derivative +
        2 * proportional * derivative * sums.withRate +
        2 * integral * derivative * sums.withAngle,
    ),
  );
}
