import { fallingThroughZero } from './falling-through-zero';

/**
 * A winding in a housing in air, as data sheets of motors have it: heat flows from the winding to the housing and from
 * there to the air.
 *
 *     Cw dTw/dt = P − (Tw − Th)/Rwh,  Ch dTh/dt = Q + (Tw − Th)/Rwh − (Th − Ta)/Rha
 */
export interface TwoBodies {
  /** J/K */
  readonly winding: number;
  readonly housing: number;
  /** From the winding to the housing, and from there to the air, K/W. */
  readonly within: number;
  readonly toAir: number;
}

/** What heats them. */
export interface Heating {
  /** W in the winding while it has the temperature `at` (K); each kelvin more adds the share `growth` of it. */
  readonly winding: { readonly loss: number; readonly at: number; readonly growth: number };
  /** W in the housing, however warm. */
  readonly housing: number;
  /** Of the air, K. */
  readonly air: number;
}

/** K */
export interface Warmth {
  readonly winding: number;
  readonly housing: number;
}

/**
 * Where they settle; null where they never do, since the winding's loss grows faster with its temperature than it is
 * cooled: the limit is growth × loss × (Rwh + Rha) = 1.
 * Source: the two equations above at rest; the thermal model of the motor data sheets by maxon.
 */
export function settledWarmth(bodies: TwoBodies, heating: Heating): Warmth | null {
  const { within, toAir } = bodies;
  const { loss, at, growth } = heating.winding;
  const stays = 1 - growth * loss * (within + toAir);
  if (!(stays > 0)) return null;
  // The winding's loss, for which its own temperature is solved.
  const cold = heating.air + toAir * heating.housing;
  const power = (loss * (1 + growth * (cold - at))) / stays;
  const housing = cold + toAir * power;
  return { winding: housing + within * power, housing };
}

/**
 * How warm they are after a time (s) of the same heating. The equations are linear, also with a resistance that grows
 * with the temperature: the exact answer is taken, not steps. Hotter and hotter where they never settle.
 * Source: a system of two linear differential equations, any textbook on them.
 */
export function warmthAfter(bodies: TwoBodies, heating: Heating, start: Warmth, seconds: number): Warmth {
  const { within, toAir } = bodies;
  const { loss, at, growth } = heating.winding;
  // d(w, h)/dt = A (w, h) + b, in kelvin above the air.
  const ww = (growth * loss - 1 / within) / bodies.winding;
  const wh = 1 / (within * bodies.winding);
  const hw = 1 / (within * bodies.housing);
  const hh = -(1 / within + 1 / toAir) / bodies.housing;
  const bw = (loss * (1 + growth * (heating.air - at))) / bodies.winding;
  const bh = heating.housing / bodies.housing;
  const middle = (ww + hh) / 2;
  const reach = Math.sqrt(((ww - hh) / 2) ** 2 + wh * hw);
  const [slow, fast] = [middle + reach, middle - reach];
  const [w, h] = [start.winding - heating.air, start.housing - heating.air];
  // The parts of anything along both directions of A: (A − fast)/(slow − fast) gives the slow one's.
  const slowPart = (one: number, other: number) => ({
    w: ((ww - fast) * one + wh * other) / (slow - fast),
    h: (hw * one + (hh - fast) * other) / (slow - fast),
  });
  const [startSlow, pushSlow] = [slowPart(w, h), slowPart(bw, bh)];
  const after = (from: number, fromSlow: number, push: number, push0: number) =>
    fromSlow * Math.exp(slow * seconds) +
    (from - fromSlow) * Math.exp(fast * seconds) +
    push0 * grown(slow, seconds) +
    (push - push0) * grown(fast, seconds);
  return {
    winding: heating.air + after(w, startSlow.w, bw, pushSlow.w),
    housing: heating.air + after(h, startSlow.h, bh, pushSlow.h),
  };
}

/** ∫ exp(rate t) dt from 0: the time itself where the rate vanishes. */
function grown(rate: number, seconds: number): number {
  return Math.abs(rate * seconds) < 1e-12 ? seconds : Math.expm1(rate * seconds) / rate;
}

/** Between these a resistance from the housing to the air is looked for, K/W. */
const sought = { least: 1e-3, most: 1e4 };

/**
 * The resistance from the housing to the air (K/W) with which the housing has a temperature (K) after a time (s) from
 * cold; a time without end: once it has settled, where all heat goes through it. Null where none has: no warmer than the
 * air, or warmer than all of its heat could make it. After a time it is looked for by its logarithm: the housing is the
 * warmer, the worse it is cooled.
 */
export function resistanceToAir(
  bodies: Omit<TwoBodies, 'toAir'>,
  heating: Heating,
  read: { readonly housing: number; readonly seconds: number },
): number | null {
  if (!Number.isFinite(read.seconds)) {
    const toAir = resistanceAtRest(bodies, heating, read.housing);
    return toAir >= sought.least && toAir <= sought.most ? toAir : null;
  }
  const cold = { winding: heating.air, housing: heating.air };
  const short = (logarithm: number) =>
    read.housing -
    warmthAfter({ ...bodies, toAir: Math.exp(logarithm) }, heating, cold, read.seconds).housing;
  const [least, most] = [Math.log(sought.least), Math.log(sought.most)];
  if (short(least) < 0 || short(most) > 0) return null;
  return Math.exp(fallingThroughZero(short, least, most, 1e-10));
}

/** The same where the housing has settled at a temperature (K); below 0 or endless where it can't. */
function resistanceAtRest(
  { within }: Omit<TwoBodies, 'toAir'>,
  { winding: { loss, at, growth }, housing: iron, air }: Heating,
  housing: number,
): number {
  // The winding's loss at its own temperature, housing + within × loss.
  const power = (loss * (1 + growth * (housing - at))) / (1 - growth * loss * within);
  return (housing - air) / (iron + power);
}
