import { fallingThroughZero } from './falling-through-zero';

/** (3 − √5) / 2: the golden section of a stretch. */
const golden = (3 - Math.sqrt(5)) / 2;

/**
 * Where something that falls and then rises is least, between two ends, to a share of the stretch. `measure` may be
 * infinite at the upper end: no parabola goes through such points, so the stretch is cut instead.
 * Source: R. P. Brent, Algorithms for Minimization without Derivatives (1973), chapter 5, procedure localmin: the
 * lowest point of a parabola through the three best points, or a golden section where that is not to be trusted.
 */
export function leastAt(measure: (at: number) => number, from: number, end: number, within = 1e-5): number {
  const near = (within * (end - from)) / 2;
  let [low, high] = [from, end];
  const first = low + golden * (high - low);
  let best = { at: first, value: measure(first) };
  let [second, third] = [best, best];
  let [step, before] = [0, 0];
  while (Math.abs(best.at - (low + high) / 2) > 2 * near - (high - low) / 2) {
    const rest = best.at < (low + high) / 2 ? high - best.at : low - best.at;
    const lowest = lowestOf(best, second, third);
    const [lastButOne, aim] = [before, best.at + lowest];
    const isTrusted =
      Math.abs(lastButOne) > near && Math.abs(lowest) < Math.abs(lastButOne) / 2 && aim > low && aim < high;
    before = isTrusted ? step : rest;
    step = isTrusted ? lowest : golden * rest;
    if (isTrusted && (aim - low < 2 * near || high - aim < 2 * near)) step = Math.sign(rest) * near;
    const at = best.at + (Math.abs(step) < near ? (step < 0 ? -near : near) : step);
    const next = { at, value: measure(at) };
    // Of two that are alike, and of two that are infinite, the lower is nearer.
    if (next.value < best.value || (next.value === best.value && at < best.at)) {
      if (at < best.at) high = best.at;
      else low = best.at;
      [best, second, third] = [next, best, second];
      continue;
    }
    if (at < best.at) low = at;
    else high = at;
    if (next.value <= second.value || second === best) [second, third] = [next, second];
    else if (next.value <= third.value || third === best || third === second) third = next;
  }
  return best.at;
}

interface PowerAtSpeed {
  readonly at: number;
  readonly value: number;
}

/** How far it is from the best point to the lowest one of a parabola through three; not a number where there is none. */
function lowestOf(best: PowerAtSpeed, second: PowerAtSpeed, third: PowerAtSpeed): number {
  const one = (best.at - second.at) * (best.value - third.value);
  const other = (best.at - third.at) * (best.value - second.value);
  return ((best.at - second.at) * one - (best.at - third.at) * other) / (2 * (other - one));
}

/** Three points about a guess lie so far apart, as a share of it. */
const apart = 5e-3;
/** Once the guess moves by no more than this share of it, it is off by some hundred-thousandths. */
const closeToGuess = 2e-3;
/** A guess that moves more often, or is off by more than this share, is given up. */
const mostMoves = 6;
const farthest = 0.25;

/**
 * Where something that falls and then rises is least, about a guess: at the lowest point of a parabola through three
 * points about it, time and again. Between the ends where the guess proves wrong.
 * Source: Newton's method for the slope, with differences in place of derivatives.
 */
function leastAbout(
  measure: (at: number) => number,
  from: number,
  end: number,
  guess: number | null,
): number {
  let at = guess ?? from;
  for (let move = 0; move < mostMoves; move += 1) {
    const side = apart * at;
    if (at - side <= from || at + side >= end) break;
    const below = measure(at - side);
    const above = measure(at + side);
    const bend = below - 2 * measure(at) + above;
    const step = (side * (below - above)) / (2 * bend);
    if (!(bend > 0) || !(Math.abs(step) < farthest * at)) break;
    at += step;
    if (Math.abs(step) < closeToGuess * at) return at;
  }
  return leastAt(measure, from, end);
}

/** Where hovering is thought to take least, nothing slower than this share of the highest speed is told from it. */
const hardlyMoving = 1e-2;

/**
 * Airspeed (m/s) between 0 and a highest one at which a power (W) along the airspeed is least; 0: hovering. It is looked
 * for about a guess first.
 */
export function enduranceSpeed(
  power: (speed: number) => number,
  highest: number,
  guess: number | null = null,
): number {
  const near = guess === 0 ? leastAt(power, 0, highest, hardlyMoving) : guess;
  if (guess === 0 && near !== null && near <= hardlyMoving * highest) return 0;
  const speed = leastAbout(power, 0, highest, near);
  return power(0) <= power(speed) ? 0 : speed;
}

/**
 * Airspeed (m/s) up to a highest one at which a metre over the ground takes least, against a wind (m/s; below 0: with
 * it), and how much it takes there (J/m); null where no airspeed makes way. It is looked for about a guess first.
 */
export function rangeSpeed(
  power: (speed: number) => number,
  highest: number,
  wind = 0,
  guess: number | null = null,
): { readonly speed: number; readonly perMetre: number } | null {
  if (highest <= wind) return null;
  const perMetre = (speed: number) => power(speed) / (speed - wind);
  const speed = leastAbout(perMetre, Math.max(0, wind), highest, guess);
  const least = perMetre(speed);
  return Number.isFinite(least) ? { speed, perMetre: least } : null;
}

/** A highest speed is looked for from this factor below a guess to this factor above it. */
const aside = 1.25;
/** m/s */
const closest = 1e-3;

/**
 * The highest speed (m/s) up to a limit at which something that falls through 0 is still above it, as it is at 0: to a
 * millimetre a second. It is looked for about a guess first.
 */
export function highestSpeed(spare: (speed: number) => number, limit: number, guess = limit / 4): number {
  let [low, high] = [Math.min(limit, guess) / aside, Math.min(limit, guess * aside)];
  while (high < limit && spare(high) > 0) [low, high] = [high, Math.min(limit, 2 * high)];
  while (low > closest && spare(low) <= 0) [low, high] = [low / 2, low];
  return spare(high) > 0 ? high : fallingThroughZero(spare, low > closest ? low : 0, high, closest);
}

/**
 * How far out and back (m) with what takes it so far the one way (m) and so far the other, each by itself: the parts of
 * the charge that the two ways use add up to all of it, R / out + R / back = 1.
 */
export function reachOutAndBack(out: number, back: number): number {
  return out > 0 && back > 0 ? 1 / (1 / out + 1 / back) : 0;
}
