// Complex numbers, as plain as may be; none of the server’s.

export interface Complex {
  readonly re: number;
  readonly im: number;
}

export const one: Complex = { re: 1, im: 0 };
export const real = (re: number): Complex => ({ re, im: 0 });
export const plus = (a: Complex, b: Complex): Complex => ({ re: a.re + b.re, im: a.im + b.im });
export const minus = (a: Complex, b: Complex): Complex => ({ re: a.re - b.re, im: a.im - b.im });
export const times = (a: Complex, b: Complex): Complex => ({
  re: a.re * b.re - a.im * b.im,
  im: a.re * b.im + a.im * b.re,
});
export const over = (a: Complex, b: Complex): Complex => {
  const square = b.re * b.re + b.im * b.im;
  return { re: (a.re * b.re + a.im * b.im) / square, im: (a.im * b.re - a.re * b.im) / square };
};
export const scaled = (a: Complex, by: number): Complex => ({ re: a.re * by, im: a.im * by });
export const sizeOf = ({ re, im }: Complex): number => Math.hypot(re, im);
