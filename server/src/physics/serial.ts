/** How a byte is framed on an asynchronous serial line. */
export interface Framing {
  readonly dataBits: number;
  readonly parity: 'none' | 'even' | 'odd';
  readonly stopBits: number;
}

/**
 * Bits that one byte takes on the line: a start bit, the data, a parity bit where there is one, the stop bits.
 * Source: USART chapter of any microcontroller's data sheet, e.g. Atmel ATmega8A, "Frame formats".
 */
export function bitsPerByte({ dataBits, parity, stopBits }: Framing): number {
  return 1 + dataBits + (parity === 'none' ? 0 : 1) + stopBits;
}

/**
 * Seconds that a frame of so many bytes takes at a line speed in symbols a second, without pauses between
 * its bytes: bytes × bits a byte / speed.
 */
export function frameTime(bytes: number, framing: Framing, speed: number): number {
  return (bytes * bitsPerByte(framing)) / speed;
}

/**
 * Relative error of the line speed that a clock (Hz) gives when it is divided by the nearest whole number:
 * positive when the line runs too fast. `samples` is how many clock steps one division stands for (16 for a
 * port that samples each bit sixteen times, 1 for one with a finer divider). Needs a clock of at least one
 * step a bit; at slower clocks the divider is taken as 1.
 */
export function dividerError(clock: number, speed: number, samples = 1): number {
  const divider = Math.max(1, Math.round(clock / (samples * speed)));
  return clock / (samples * divider) / speed - 1;
}

/**
 * How far a receiver that samples each bit sixteen times may be off before the last bit of a byte is read
 * wrongly: slowest and fastest speed of the sender relative to the receiver's own, as ratios.
 * Domain: 5 to 10 data and parity bits.
 * Source: Atmel ATmega8A data sheet, USART, "Asynchronous operational range"; the formula from memory, proved
 * against the table there.
 */
export function speedTolerance({ dataBits, parity }: Framing): {
  readonly slow: number;
  readonly fast: number;
} {
  const bits = dataBits + (parity === 'none' ? 0 : 1);
  const samples = 16;
  const first = 8; // the first sample used for the majority vote
  const middle = 9; // the middle one
  return {
    slow: ((bits + 1) * samples) / (samples - 1 + bits * samples + first),
    fast: ((bits + 2) * samples) / ((bits + 1) * samples + middle),
  };
}

/**
 * Share of mismatch between the two ends that is recommended at most, so that clock drift and slow edges keep
 * their part of the tolerance. Domain: 5 to 10 data and parity bits; null outside.
 * Source: Atmel ATmega8A data sheet, USART, table 24-2, column "recommended".
 */
export function recommendedError({ dataBits, parity }: Framing): number | null {
  const bits = dataBits + (parity === 'none' ? 0 : 1);
  return recommended.get(bits) ?? null;
}

const recommended = new Map([
  [5, 0.03],
  [6, 0.025],
  [7, 0.02],
  [8, 0.02],
  [9, 0.015],
  [10, 0.015],
]);
