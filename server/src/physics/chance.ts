/**
 * The share of a χ² distribution that lies below a value: P(freedom/2, value/2) of the incomplete gamma function, by
 * its series below the middle and its continued fraction above. Domain: freedom above 0, value from 0 on.
 * Source: M. Abramowitz, I. Stegun, Handbook of Mathematical Functions, 26.4.19, 6.5.29 and 6.5.31.
 */
export function chiSquaredBelow(freedom: number, value: number): number {
  const [shape, x] = [freedom / 2, value / 2];
  if (x <= 0) return 0;
  const front = Math.exp(shape * Math.log(x) - x - logGamma(shape));
  return x < shape + 1 ? front * series(shape, x) : 1 - front * fraction(shape, x);
}

function series(shape: number, x: number): number {
  let term = 1 / shape;
  let sum = term;
  for (let step = 1; term > 1e-16 * sum; step += 1) {
    term *= x / (shape + step);
    sum += term;
  }
  return sum;
}

/** 1/(x + (1−a)/(1 + 1/(x + …))) in its even form, from a place deep enough upwards. */
function fraction(shape: number, x: number): number {
  const deep = 60 + Math.ceil(4 * Math.sqrt(shape));
  let below = 0;
  for (let step = deep; step >= 1; step -= 1)
    below = (step * (step - shape)) / (x + 2 * step + 1 - shape - below);
  return 1 / (x + 1 - shape - below);
}

/** ln Γ(x) for x above 0. Source: Abramowitz and Stegun 6.1.41, after moving x up by the recurrence 6.1.15. */
function logGamma(x: number): number {
  let moved = x;
  let less = 0;
  for (; moved < 12; moved += 1) less += Math.log(moved);
  const tail = 1 / (12 * moved) - 1 / (360 * moved ** 3) + 1 / (1260 * moved ** 5);
  return (moved - 0.5) * Math.log(moved) - moved + Math.log(2 * Math.PI) / 2 + tail - less;
}

/** The value below which a share of a χ² distribution lies; found by halving. Domain: share between 0 and 1. */
export function chiSquaredAt(freedom: number, share: number): number {
  let [low, high] = [0, freedom + 10];
  while (chiSquaredBelow(freedom, high) < share) high *= 2;
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (chiSquaredBelow(freedom, middle) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * By what a mean of so many independent spectra is multiplied for the span that holds the true density with a
 * probability: 2n/χ² with 2n degrees of freedom.
 * Source: P. D. Welch (1967); J. S. Bendat, A. G. Piersol, Random Data, chapter 8 (from memory).
 */
export function densitySpan(
  averages: number,
  probability: number,
): { readonly low: number; readonly high: number } {
  const outside = (1 - probability) / 2;
  const at = (share: number) => (2 * averages) / chiSquaredAt(2 * averages, share);
  return { low: at(1 - outside), high: at(outside) };
}

/** How many times its mean level a bin of nothing but noise reaches with a probability. Source: as above. */
export function chanceLevel(averages: number, probability: number): number {
  return chiSquaredAt(2 * averages, 1 - probability) / (2 * averages);
}
