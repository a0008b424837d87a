import type { CraftView } from '../../craft/view';
import { type Carried, flightResistance, withDrive } from '../../figures/carried';
import { hovering } from '../../figures/drive-states';
import { stickInHover } from '../../figures/flight-readings';
import { priorDrive } from '../../figures/prior-drive';
import { type Doubtful, doubtful, type Estimate, estimate, inProportion } from '../../figures/uncertain';
import type { MeasuredSpan } from '../report';

/** The craft as its parts let one expect it, before any flight: what a recording is held against. */
export function expectedOf(view: CraftView | null): Doubtful<Carried> | null {
  const prior = view === null ? null : priorDrive(view, 'as it is');
  return prior === null ? null : doubtful(prior.value.carried, prior.value.doubts);
}

function spanOf({ likely, low, high }: Estimate, unit: string): MeasuredSpan {
  return { likely, low, high, unit };
}

/** Of pack and leads after some ten seconds, mohm. */
export function expectedResistance(expected: Doubtful<Carried>): MeasuredSpan | null {
  const found = estimate(expected, flightResistance);
  return found === null ? null : spanOf(inProportion(found, 1000), 'mohm');
}

/** Throttle in the hover, %, while the pack shows so many volts; null where it can't hover. */
export function expectedThrottle(expected: Doubtful<Carried>, voltage: number | null): MeasuredSpan | null {
  const found = estimate(expected, (carried) => stickInHover(shown(carried, voltage)));
  return found === null || found.highWords !== undefined ? null : spanOf(inProportion(found, 100), '%');
}

/** With a pack that shows a voltage in the hover, or half used where none was logged. */
function shown(carried: Carried, voltage: number | null): Carried {
  const state = voltage === null ? null : hovering(carried);
  if (state === null || voltage === null) return carried;
  return withDrive(carried, { openVoltage: carried.drive.openVoltage + voltage - state.packVoltage });
}

/** How far the weight is raised to see how thrust grows with throttle. */
const heavier = 1.1;

/**
 * Thrust that there was for a throttle (%) beside what the parts let expect, from the throttle at which it hovered and at
 * which it would: thrust grows by a power of the throttle, which the model tells about the hover.
 */
export function thrustScale(
  expected: Doubtful<Carried>,
  throttle: MeasuredSpan,
  voltage: number | null,
): MeasuredSpan | null {
  const at = shown(expected.likely, voltage);
  const [one, more] = [stickInHover(at), stickInHover({ ...at, weight: heavier * at.weight })];
  if (one === null || more === null || !(more > one)) return null;
  const power = Math.log(heavier) / Math.log(more / one);
  const scale = (percent: number) => (one / (percent / 100)) ** power;
  return { likely: scale(throttle.likely), low: scale(throttle.high), high: scale(throttle.low), unit: '' };
}
