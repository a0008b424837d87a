import type { CraftView } from '../craft/view';
import { gravity } from '../physics/atmosphere';
import { type Drag, dragFactors, estimatedDragArea, estimatedLinearDrag } from '../physics/drag';
import type { DriveState } from '../physics/drive';
import {
  type DriveInFlight,
  packPowerInFlight,
  stateInFlight,
  voltageToSpareInFlight,
} from '../physics/drive-in-flight';
import { type Carried, driveInFlight } from './carried';
import { carriedBy } from './drive';
import { model } from './model';
import { changedIn, type Doubt, type Doubtful, doubtOf, eitherWay, withDoubts } from './uncertain';

/** A craft that flies forward. */
export interface Forward {
  readonly carried: Carried;
  readonly drag: Drag;
  /** As in `DriveInFlight`. */
  readonly advance: number;
  readonly inflowRise: number;
}

/**
 * Of the pitch, how far the air comes through in a turn until there is no thrust, and the factor that holds it.
 * Source: University of Illinois Propeller Data Site, volume 2, 39 propellers up to 5.6 inches: 0.89 to 1.25.
 */
const zeroThrust = { perPitch: 1.07, factor: 1.17 };
/**
 * Rotors in each other's wash: from none, discs that stand alone, to nearly 1, which is rear ones in the fully developed
 * wash of those in front. A craft of 3.29 kg that was measured to take as much at 8 m/s as at 2 lies inside (Bretl
 * Research Group, University of Illinois, A Model of Quadrotor Power Consumption, 2019).
 */
const inflowRise = { likely: 0.4, spread: 0.4 };
/** A drag area that somebody found by flying is off by this factor at most. Common practice. */
const measuredFactor = 1.25;

/** With a pack half used, in level flight. */
export const forwardOf = model<[], Doubtful<Forward>>('forward flight', (own) => {
  const carried = carriedBy(own);
  if (carried === null) return null;
  const measured = own.quantityOr('craft.drag-area', null);
  if (measured === null && own.isSet('craft.drag-area')) return null;
  const forward = changedIn(carried.value, (one): Forward => {
    const { drive, weight, pitch } = one;
    return {
      carried: one,
      drag:
        measured === null
          ? {
              linear: estimatedLinearDrag(weight / gravity, drive.propeller.diameter),
              area: estimatedDragArea(weight / gravity),
            }
          : { linear: 0, area: measured },
      advance: zeroThrust.perPitch * pitch,
      inflowRise: inflowRise.likely,
    };
  });
  return {
    value: withDoubts(forward, [
      ...(measured === null ? estimatedDrag : measuredDrag),
      doubtOf('the pitch at which propellers lose their thrust', eitherWay(zeroThrust.factor), (one, by) => ({
        ...one,
        advance: by * one.advance,
      })),
      {
        of: 'the wash of propellers on each other',
        at: (one, way) => ({
          ...one,
          inflowRise: Math.max(0, one.inflowRise + inflowRise.spread * way),
        }),
      },
    ]),
    assumed: [...carried.assumed, ...assumedOf(own, forward.likely)],
  };
});

const estimatedDrag: readonly Doubt<Forward>[] = [
  doubtOf('the drag of the rotors', eitherWay(dragFactors.linear), (one, by) => ({
    ...one,
    drag: { ...one.drag, linear: by * one.drag.linear },
  })),
  doubtOf('the drag area', eitherWay(dragFactors.area), withArea),
];

const measuredDrag: readonly Doubt<Forward>[] = [
  doubtOf('the drag area', eitherWay(measuredFactor), withArea),
];

function withArea(one: Forward, by: number): Forward {
  return { ...one, drag: { ...one.drag, area: by * one.drag.area } };
}

function assumedOf(view: CraftView, { drag: { linear, area } }: Forward): readonly string[] {
  if (view.isSet('craft.drag-area')) return [];
  const rotors = `${view.short(linear, 'N/(m/s)')} of the rotors`;
  return [
    `a drag of ${rotors} and a drag area of ${view.short(area, 'cm^2')}, as published craft of its mass have`,
  ];
}

/** Asked for at many speeds. */
const flying = new WeakMap<Forward, DriveInFlight>();

/** As the formulas take it. */
export function inFlight(forward: Forward): DriveInFlight {
  const known = flying.get(forward);
  if (known !== undefined) return known;
  const { carried, drag, advance, inflowRise } = forward;
  const drive = driveInFlight(carried);
  const { weight } = carried;
  const discArea = (drive.count * Math.PI * drive.propeller.diameter ** 2) / 4;
  const airframe = { weight, drag, discArea, airDensity: drive.airDensity };
  const craft = { drive, airframe, advance, inflowRise };
  flying.set(forward, craft);
  return craft;
}

/** Level flight at an airspeed (m/s), within what the script lets the throttle go to; null beyond. */
export function flyingAt(forward: Forward, speed: number): DriveState | null {
  const { throttle } = forward.carried;
  const state = stateInFlight(inFlight(forward), speed);
  return state === null || throttle === null || state.throttle > throttle.most ? null : state;
}

/** Above 0 at an airspeed (m/s) at which it can fly level, below 0 beyond: V, as `voltageToSpare` has it. */
export function toSpareAt(forward: Forward, speed: number): number {
  const { throttle } = forward.carried;
  if (throttle === null) return Number.NEGATIVE_INFINITY;
  return voltageToSpareInFlight(inFlight(forward), speed, throttle.most);
}

/** Power from the pack, W; infinite where it can't fly so. */
export function powerAt(forward: Forward, speed: number): number {
  const { throttle } = forward.carried;
  return throttle === null
    ? Number.POSITIVE_INFINITY
    : packPowerInFlight(inFlight(forward), speed, throttle.most);
}
