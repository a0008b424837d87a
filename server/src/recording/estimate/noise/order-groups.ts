import type { MeasuredSpan } from '../../report';
import { quantile } from '../span';
import { placeOf, type Track } from './tracks';

/** A tone that comes so many times for each turn of a motor. */
export interface FoundOrder {
  readonly order: MeasuredSpan;
  /** dB over what does not move. */
  readonly above: number;
  /** The motor that shakes most with it, and by how many dB more than any other; null where it is the only one. */
  readonly loudest: number;
  readonly louder: number | null;
  /** Turns a second of that motor, Hz: where the tone mostly was, and how far it came. */
  readonly turns: number;
  readonly slowest: number;
  readonly fastest: number;
}

/** A tone that was found along the turns of a motor. */
export interface TakenOrder {
  readonly motor: number;
  readonly order: MeasuredSpan;
  readonly above: number;
}

/** How one motor turned, in all segments and in those in which it turned evenly. */
export interface MotorTracks {
  readonly motor: number;
  readonly all: readonly Track[];
  readonly steady: readonly Track[];
  /** What stands at each of its orders anyway, summed along the steady ones. */
  readonly standing: Float64Array;
  /**
   * dB by which each of its orders stands out before anything is taken out: with a tone goes that of a motor that turns
   * nearly alike.
   */
  readonly untouched: Float64Array;
}

/** What lies nearer to an order is a part of it. */
const sameOrder = 0.12;

/** The same order of several motors is one, told by the loudest of them. */
export function groupsOf(
  taken: readonly TakenOrder[],
  motors: readonly MotorTracks[],
): readonly FoundOrder[] {
  const groups: TakenOrder[][] = [];
  for (const one of taken) {
    const same = groups.find(
      ([first]) =>
        first !== undefined && Math.abs(Math.log(first.order.likely / one.order.likely)) < sameOrder,
    );
    if (same === undefined) groups.push([one]);
    else same.push(one);
  }
  return groups.flatMap(([first]) => {
    const turns = motors.find(({ motor }) => motor === first?.motor)?.all.map((track) => track.turns) ?? [];
    if (first === undefined) return [];
    const others = motors.flatMap(({ motor, untouched }) =>
      motor === first.motor ? [] : [untouched[placeOf(first.order.likely)] ?? 0],
    );
    return [
      {
        order: first.order,
        above: first.above,
        loudest: first.motor,
        louder: others.length === 0 ? null : first.above - Math.max(...others),
        turns: quantile(turns, 0.5),
        slowest: quantile(turns, 0.02),
        fastest: quantile(turns, 0.98),
      },
    ];
  });
}
