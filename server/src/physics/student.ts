/** The normal distribution lies below this many of its standard deviations 95 times of a hundred. */
const normal = 1.644_853_627;

/**
 * How many times its standard deviation a value may lie off, nine times of ten, where the deviation itself is known
 * from so few values that they leave so many degrees of freedom: Student's t at 95 %. For three and more, to half a
 * percent; fewer have it larger still.
 * Source: M. Abramowitz, I. Stegun, Handbook of Mathematical Functions, 26.7.5.
 */
export function studentNinety(freedom: number): number {
  const [z, z3, z5, z7] = [normal, normal ** 3, normal ** 5, normal ** 7];
  const first = (z3 + z) / 4;
  const second = (5 * z5 + 16 * z3 + 3 * z) / 96;
  const third = (3 * z7 + 19 * z5 + 17 * z3 - 15 * z) / 384;
  return z + first / freedom + second / freedom ** 2 + third / freedom ** 3;
}
