import { enduranceSpeed, highestSpeed, rangeSpeed } from '../physics/best-speed';
import { type Forward, powerAt, toSpareAt } from './airframe';

/** m/s: nothing that this is about flies as fast. */
const limit = 150;

/** Speeds of one model, looked for once: many figures ask for them. */
export interface BestSpeeds {
  /** m/s */
  readonly top: number;
  readonly endurance: number;
  readonly range: number;
}

const found = new WeakMap<Forward, BestSpeeds | null>();

/** Null for a craft that can't hover. They lie near those of the craft as it is likely, and are looked for there. */
export function bestSpeeds(forward: Forward, likely: Forward): BestSpeeds | null {
  const known = found.get(forward);
  if (known !== undefined) return known;
  const near = forward === likely ? null : bestSpeeds(likely, likely);
  const speeds = hovers(forward) ? speedsOf(forward, near) : null;
  found.set(forward, speeds);
  return speeds;
}

export function hovers(forward: Forward): boolean {
  return toSpareAt(forward, 0) > 0;
}

function speedsOf(forward: Forward, near: BestSpeeds | null): BestSpeeds | null {
  const top = highestSpeed((speed) => toSpareAt(forward, speed), limit, near?.top);
  const power = (speed: number) => powerAt(forward, speed);
  const range = rangeSpeed(power, top, 0, near?.range);
  if (range === null) return null;
  let endurance: number | null = null;
  return {
    top,
    range: range.speed,
    // Only some of the models are asked for it.
    get endurance() {
      endurance ??= enduranceSpeed(power, top, near?.endurance);
      return endurance;
    },
  };
}

/** By model and wind: two figures ask for the same. */
const inWind = new WeakMap<Forward, Map<number, number | null>>();

/** Airspeed (m/s) at which it gets farthest against a wind (m/s; below 0: with it); null where it makes no way. */
export function bestInWind(at: Forward, wind: number, likely: Forward): number | null {
  const speeds = bestSpeeds(at, likely);
  if (speeds === null || wind === 0) return speeds?.range ?? null;
  const known = inWind.get(at) ?? new Map<number, number | null>();
  inWind.set(at, known);
  const before = known.get(wind);
  if (before !== undefined) return before;
  const near = at === likely ? null : bestInWind(likely, wind, likely);
  const speed = rangeSpeed((one) => powerAt(at, one), speeds.top, wind, near)?.speed ?? null;
  known.set(wind, speed);
  return speed;
}
