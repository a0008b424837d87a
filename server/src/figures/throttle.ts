import type { CraftView } from '../craft/view';
import { curveSlope, curveValue, type MonotoneCurve, monotoneCurve } from '../physics/monotone-curve';

/** What stands between the throttle that is asked for and what the motors are told. Shares from 0 to 1. */
export interface Throttle {
  /** The most that any motor is ever told. */
  readonly most: number;
  /** What the motors are told for a throttle; null above what the script lets through. A full pack has it so. */
  readonly told: (asked: number) => number | null;
  /** The throttle that has the motors told an output (a share), with a pack of so many volts under its load. */
  readonly askedFor: (output: number, voltage: number) => number;
  /** The most that a motor may be told to steer with, whatever the throttle. */
  readonly lid: number;
  /**
   * Where the stick stands for a throttle, as a share of its travel; from and to where it hangs on whether the board
   * scales a limit or cuts it off. Null where the stick's curve can't be turned round.
   */
  readonly stickFor: (asked: number) => { readonly from: number; readonly to: number } | null;
  /** How many times as much the motors are told with a pack of so many volts under its load; 1 for a full one. */
  readonly raisedAt: (voltage: number) => number;
  /** How much more the motors are told for a little more throttle, at a throttle and a voltage. */
  readonly slopeAt: (asked: number, voltage: number) => number;
}

/** Null where the script speaks of it and can't be read. `full`: the full pack without a load, V; null: not known. */
export function throttleOf(view: CraftView, full: number | null): Throttle | null {
  // Where the script sets nothing the throttle is left alone: that is no assumption to tell.
  const lid = view.quantityOr('motor.output-limit', 1);
  const stick = view.quantityOr('stick.throttle.limit', 1);
  const even = view.quantityOr('power.even-thrust', 0);
  const shape = risingCurve(view, 'motor.thrust-shape');
  const along = risingCurve(view, 'stick.throttle.curve');
  if (lid === null || stick === null || even === null || shape === null) return null;
  const most = Math.min(lid, curveValue(shape, stick));
  const raisedAt = (voltage: number) => (full === null ? 1 : 1 + even * Math.max(0, full / voltage - 1));
  return {
    most,
    lid,
    told(asked) {
      const output = curveValue(shape, asked);
      return output > most + 1e-9 ? null : output;
    },
    askedFor: (output, voltage) => inverse(shape, output / raisedAt(voltage)),
    stickFor: (asked) =>
      along === null || stick <= 0
        ? null
        : { from: inverse(along, asked), to: inverse(along, Math.min(1, asked / stick)) },
    raisedAt,
    slopeAt: (asked, voltage) => raisedAt(voltage) * curveSlope(shape, asked),
  };
}

const straight = monotoneCurve([
  { x: 0, y: 0 },
  { x: 1, y: 1 },
]);

/** A curve that the script may set, from share to share; null where its points do not rise. */
function risingCurve(view: CraftView, path: string): MonotoneCurve | null {
  if (!view.isSet(path)) return straight;
  const points = view.curve(path);
  if (points === null || points.length < 2) return null;
  const rises = points.every(({ x, y }, index) => {
    const before = points[index - 1];
    return before === undefined || (x > before.x && y >= before.y);
  });
  return rises ? monotoneCurve(points) : null;
}

const halvings = 40;

/** Where a rising curve reaches a value: to a few billionths. */
function inverse(curve: MonotoneCurve, value: number): number {
  if (curve === straight) return Math.min(1, Math.max(0, value));
  let [low, high] = [0, 1];
  for (let step = 0; step < halvings; step += 1) {
    const middle = (low + high) / 2;
    if (curveValue(curve, middle) < value) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
