import { chargeAtRest, type RestPoint, restVoltage } from './cells';

/** A pack as it empties. It keeps one resistance all the way: cells measured along their charge differ by a tenth. */
export interface Pack {
  /** In series. */
  readonly cells: number;
  /** What one of them shows at rest, by its charge: rising. */
  readonly atRest: readonly RestPoint[];
  /** Of all of them with what leads to the load, ohm. */
  readonly resistance: number;
  /** What it gives from full to empty, C. */
  readonly charge: number;
}

/** What hangs on a pack: a power (W), and beside it a current (A) that flows at any voltage. */
export interface PackLoad {
  readonly power: number;
  readonly current: number;
}

export interface LoadedPack {
  /** V */
  readonly voltage: number;
  /** A */
  readonly current: number;
}

/**
 * A pack of a voltage at rest E (V) and a resistance R (ohm) under a load of a power P and a current I0:
 * V = (E − R I0 + √((E − R I0)² − 4 R P)) / 2 and I = P/V + I0. Null beyond the most that it can give.
 * Source: Ohm's law; of the two roots the one with the higher voltage.
 */
export function packUnderLoad(open: number, resistance: number, load: PackLoad): LoadedPack | null {
  const voltage = voltageUnderLoad(open, resistance, load);
  return Number.isNaN(voltage) ? null : { voltage, current: load.power / voltage + load.current };
}

/** The voltage of the above alone; not a number beyond the most that the pack can give. */
export function voltageUnderLoad(open: number, resistance: number, { power, current }: PackLoad): number {
  const rest = open - resistance * current;
  return rest > 0 ? (rest + Math.sqrt(rest * rest - 4 * resistance * power)) / 2 : Number.NaN;
}

/**
 * Share of its charge with which a pack under a load comes down to a voltage (V), or can no longer bear the load,
 * whichever is first; 1 where even a full one does, 0 where not even an empty one does.
 */
export function chargeWhenDownTo(pack: Pack, load: PackLoad, voltage: number): number {
  const { cells, atRest, resistance } = pack;
  // Below this one the pack gives no more, however far its voltage is drawn down.
  const lowest = Math.sqrt(resistance * load.power);
  const least = Math.max(voltage, lowest);
  const current = least > 0 ? load.power / least + load.current : load.current;
  return chargeAtRest(atRest, (least + resistance * current) / cells);
}

/**
 * The quadrature of Gauss and Legendre with two points, each of half the weight, over a step from 0 to 1: where the
 * first one lies, and how far behind it the second.
 */
const firstNode = (1 - Math.sqrt(1 / 3)) / 2;
const betweenNodes = Math.sqrt(1 / 3);

/** Stretches between two points of the table are walked in steps of this share of the charge at most. */
const longestStep = 0.05;

/**
 * Seconds in which a load takes a pack from one share of its charge to a lower one: Q ∫ ds / I, step by step between
 * the points of the open-circuit table. Null where the pack can't bear the load on the way.
 * Source: conservation of charge, and the law above at each place.
 */
export function secondsToUse(pack: Pack, load: PackLoad, from: number, to: number): number | null {
  return emptying(pack, load, from, to)?.seconds ?? null;
}

/** Joules that a load takes meanwhile: Q ∫ V ds. Null as above. */
export function energyToUse(pack: Pack, load: PackLoad, from: number, to: number): number | null {
  return emptying(pack, load, from, to)?.energy ?? null;
}

/** Both on the way down; none of either where there is no way. */
function emptying(
  { cells, atRest, resistance, charge }: Pack,
  load: PackLoad,
  from: number,
  to: number,
): { readonly seconds: number; readonly energy: number } | null {
  let low: RestPoint = { charge: to, voltage: restVoltage(atRest, to) };
  const last = { charge: from, voltage: restVoltage(atRest, from) };
  let [seconds, energy] = [0, 0];
  for (let at = 0; at <= atRest.length && low.charge < from; at += 1) {
    const corner = atRest[at] ?? last;
    const high = corner.charge < from ? corner : last;
    const width = high.charge - low.charge;
    if (width <= 0) continue;
    const steps = Math.ceil(width / longestStep - 1e-9);
    const given = (charge * width) / (2 * steps);
    for (let step = 0; step < steps; step += 1) {
      for (let node = firstNode; node < 1; node += betweenNodes) {
        const open = low.voltage + ((step + node) / steps) * (high.voltage - low.voltage);
        const voltage = voltageUnderLoad(cells * open, resistance, load);
        seconds += given / (load.power / voltage + load.current);
        energy += given * voltage;
      }
    }
    low = high;
  }
  return Number.isNaN(seconds) ? null : { seconds, energy };
}
