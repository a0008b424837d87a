/** A complex number. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

export const zero: Complex = { re: 0, im: 0 };
export const one: Complex = { re: 1, im: 0 };

/** A number of size 1 at an angle in rad. */
export function unit(angle: number): Complex {
  return { re: Math.cos(angle), im: Math.sin(angle) };
}

export function add(a: Complex, b: Complex): Complex {
  return { re: a.re + b.re, im: a.im + b.im };
}

export function times(a: Complex, b: Complex): Complex {
  return { re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re };
}

export function over(a: Complex, b: Complex): Complex {
  const size = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / size, im: (a.im * b.re - a.re * b.im) / size };
}

export function magnitude({ re, im }: Complex): number {
  return Math.sqrt(re * re + im * im); // Gains are far from overflow, and hypot is many times slower.
}

/** Angle in rad, from −π to π. */
export function angle({ re, im }: Complex): number {
  return Math.atan2(im, re);
}

/** Complex numbers along frequencies, by their parts. */
export interface Along {
  readonly re: readonly number[];
  readonly im: readonly number[];
}

/** The same, to be written over. */
export interface Room {
  readonly re: number[];
  readonly im: number[];
}

/** As many numbers as there are frequencies, to be written over: a copy is made quicker than a list grows. */
export function roomFor(frequencies: readonly number[]): Room {
  return { re: frequencies.slice(), im: frequencies.slice() };
}
