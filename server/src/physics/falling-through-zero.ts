const mostLooks = 60;

/**
 * Where something that falls from above 0 passes through it, between two ends: by false position with the weight
 * of an end that stays halved, and by halving where that leads outside, until it moves by no more than `within`.
 * Source: the Illinois method, M. Dowell and P. Jarratt, A modified regula falsi method (BIT 11, 1971).
 */
export function fallingThroughZero(
  measure: (at: number) => number,
  from: number,
  end: number,
  within: number,
): number {
  let [low, high] = [from, end];
  let [above, below] = [measure(low), measure(high)];
  let last = high;
  let wasAbove: boolean | null = null;
  for (let look = 0; look < mostLooks; look += 1) {
    const share = above / (above - below);
    const at = share > 0 && share < 1 ? low + share * (high - low) : (low + high) / 2;
    if (Math.abs(at - last) <= within) return at;
    last = at;
    const value = measure(at);
    const isAbove = value > 0;
    if (isAbove) [low, above] = [at, value];
    else [high, below] = [at, value];
    if (isAbove === wasAbove) {
      if (isAbove) below /= 2;
      else above /= 2;
    }
    wasAbove = isAbove;
  }
  return last;
}
