import type { CraftView } from '../../../craft/view';
import { type AxisName, axisNames } from '../../../figures/axis-names';
import type { MeasuredAnswer } from '../../report';
import { heldThrottle } from '../calm';
import type { FlightRows } from '../flight-rows';
import { measuredBy, withheld } from '../span';

/** Shares by which the gains were changed in each row; null: they were not. */
export interface ChangedGains {
  readonly proportional: Float32Array | null;
  readonly integral: Float32Array | null;
  readonly derivative: Float32Array | null;
}

/** What was not ordinary flight, by the script: shares of the gains row by row, and rows that tell nothing. */
export interface SituationRows extends ChangedGains {
  readonly leftOut: Uint8Array;
}

/** Rows between two breaths: some milliseconds. */
const rowsInOneGo = 20_000;

const parts = ['proportional', 'integral', 'derivative'] as const;
type GainPart = (typeof parts)[number];
type GainShares = Readonly<Record<GainPart, number>>;

/** So near to its limit an axis is held back, and with less throttle than this boards let go of what they hold; shares. Ours. */
const near = { limit: 0.97, zero: 0.05 };
/** A jump of the throttle is told over so long, and fades as long after it, s. */
const jumpSeconds = 0.05;

/** Gains that fade with the throttle are undone; while a situation lasts that changes them otherwise, nothing is told. */
export function* situationRows(
  rows: FlightRows,
  view: CraftView,
  axis: AxisName,
  command: Float32Array,
): Generator<void, MeasuredAnswer<SituationRows>> {
  const leftOut = new Uint8Array(command.length);
  const throttle = heldThrottle(rows);
  const high = changedIn(view, 'high-throttle');
  const jumps = changedIn(view, 'throttle-jumps');
  const turns = changedIn(view, 'fast-turn');
  if (high === 'unreadable' || jumps === 'unreadable' || turns === 'unreadable')
    return withheld(
      'The script changes the gains in a situation that can’t be read.',
      'Mend what the script’s findings say of control.when.',
    );
  if ((high !== null || jumps !== null) && rows.channel('throttle') === null)
    return withheld(
      'The board changes its gains with the throttle, and no column says the throttle.',
      'Log the throttle.',
    );
  const limit = view.quantityOr(`control.${axis}.limit`, null) ?? Number.POSITIVE_INFINITY;
  const integralLimit = view.quantityOr('control.integral-limit', null) ?? Number.POSITIVE_INFINITY;
  const holds = slowly(command, rows);
  yield;
  const wanted = axisNames.flatMap((one) => rows.channel(`wanted.${one}`) ?? []);
  const back = Math.max(1, Math.round(jumpSeconds * rows.rate));
  for (const { from, to } of rows.airborne)
    for (let row = from; row < to; row += 1) {
      if (row % rowsInOneGo === 0) yield;
      const given = throttle?.[row] ?? 1;
      const isHeldBack =
        Math.abs(command[row] ?? 0) >= near.limit * limit ||
        Math.abs(holds[row] ?? 0) >= near.limit * integralLimit ||
        given <= near.zero;
      const jumped = Math.abs(given - (throttle?.[Math.max(from, row - back)] ?? given)) / (back / rows.rate);
      const isJump = jumps !== null && jumped >= jumps.from;
      const isTurn = turns !== null && wanted.some((values) => Math.abs(values[row] ?? 0) >= turns.from);
      if (isHeldBack || isTurn) leftOut[row] = 1;
      if (isJump) leftOut.fill(1, row, Math.min(to, row + 2 * back));
    }
  return measuredBy({ ...fadedBy(high, throttle), leftOut }, '');
}

interface ChangedShares {
  readonly from: number;
  readonly shares: GainShares;
}

/** Null where the situation changes nothing. */
function changedIn(view: CraftView, situation: string): ChangedShares | null | 'unreadable' {
  const path = (word: string) => `control.when.${situation}.${word}`;
  const from = view.quantityOr(path('from'), Number.POSITIVE_INFINITY);
  const [proportional, integral, derivative] = parts.map((part) => view.quantityOr(path(part), 1));
  if (from === null || proportional == null || integral == null || derivative == null) return 'unreadable';
  const changes = [proportional, integral, derivative].some((share) => share !== 1);
  return changes && Number.isFinite(from) ? { from, shares: { proportional, integral, derivative } } : null;
}

/** Evenly from where it begins up to full throttle, as the parameters’ own words have it. */
function fadedBy(high: ChangedShares | null, throttle: Float32Array | null): ChangedGains {
  const of = (part: GainPart) => {
    const share = high?.shares[part] ?? 1;
    if (high === null || throttle === null || share === 1 || high.from >= 1) return null;
    return throttle.map((given) => 1 + Math.max(0, (given - high.from) / (1 - high.from)) * (share - 1));
  };
  return { proportional: of('proportional'), integral: of('integral'), derivative: of('derivative') };
}

/** What an axis is commanded in the mean over half a second: about what the integral holds. */
function slowly(command: Float32Array, { airborne, rate }: FlightRows): Float32Array {
  const held = new Float32Array(command.length);
  const keep = Math.exp(-1 / (0.25 * rate));
  for (const { from, to } of airborne) {
    let mean = command[from] ?? 0;
    for (let row = from; row < to; row += 1) {
      mean = keep * mean + (1 - keep) * (command[row] ?? mean);
      held[row] = mean;
    }
  }
  return held;
}
