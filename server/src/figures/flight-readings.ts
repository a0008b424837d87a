import type { CraftView } from '../craft/view';
import { type Carried, withDrive } from './carried';
import { hovering } from './drive-states';
import { chemistryInView, fullVoltage, landingCell, leftAtRest, packCount } from './pack-in-view';
import { type Doubt, doubtOf } from './uncertain';

/** The notes of a flight that tell something of the craft's doubtful inputs. */
export const readingKinds = ['hover-throttle', 'hover-current', 'used-charge'] as const;

export type ReadingKind = (typeof readingKinds)[number];

/** Something that was read off on a flight. */
export interface FlightReading {
  readonly kind: ReadingKind;
  readonly flight: string;
  /** In SI: what was read, and the span that holds the truth nine times of ten. */
  readonly likely: number;
  readonly low: number;
  readonly high: number;
  /** What the model has for it, in SI; null where the craft can't hover. */
  readonly measure: (carried: Carried) => number | null;
}

/** How far readings may be off: shares of throttle; a share of the current; volts a cell of reading and of the table. */
const errors = { throttle: 0.03, current: 0.1, rest: 0.02, table: 0.03, charger: 0.03 };

/** With less than this share of the charge taken out, rest voltage tells too little of the rest. */
const leastTaken = 0.3;

/** From this temperature up (K) a pack gives all its charge. */
const warm = 288;

/** What was read off on a flight with the pack in view, which carries what it was estimated to. */
export function readingsOf(view: CraftView, flight: string, prior: Carried): readonly FlightReading[] {
  return readingKinds.flatMap((kind) => readers[kind](view, flight, prior) ?? []);
}

type Reader = (view: CraftView, flight: string, prior: Carried) => FlightReading | null;

const readers: Readonly<Record<ReadingKind, Reader>> = {
  'hover-throttle': (view, flight, prior) => {
    const likely = noted(view, flight, 'hover-throttle');
    if (likely === null) return null;
    const state = hovering(prior);
    const sticks = state === null ? null : sticksIn(prior);
    // Nobody says whether a limit scales the stick or cuts it off: both are in the span.
    const either = sticks === null ? 1 : Math.sqrt(sticks.to / sticks.from);
    const { throttle } = errors;
    const [low, high] = [Math.max(likely / 2, likely - throttle) / either, (likely + throttle) * either];
    return { kind: 'hover-throttle', flight, likely, low, high, measure: stickInHover };
  },
  'hover-current': (view, flight) => {
    const likely = noted(view, flight, 'hover-current');
    if (likely === null) return null;
    const [low, high] = [likely / (1 + errors.current), likely * (1 + errors.current)];
    const measure = (carried: Carried) => hovering(carried)?.packCurrent ?? null;
    return { kind: 'hover-current', flight, likely, low, high, measure };
  },
  'used-charge': (view, flight) => {
    const used = noted(view, flight, 'used-charge');
    const rest = noted(view, flight, 'rest-cell');
    const air = view.quantity('craft.air-temperature');
    if (used === null || rest === null || air === null || air < warm) return null;
    const off = Math.hypot(errors.rest, errors.table);
    const taken = [rest - off, rest, rest + off].map((voltage) => takenAt(view, voltage));
    const [most, likely, least] = taken;
    if (most == null || likely == null || least == null || least < leastTaken) return null;
    return {
      kind: 'used-charge',
      flight,
      likely: used / likely,
      low: used / most / (1 + errors.charger),
      high: (used / least) * (1 + errors.charger),
      measure: ({ charge }) => charge,
    };
  },
};

function noted(view: CraftView, flight: string, setting: string): number | null {
  const value = view.quantityOr(`flight.${flight}.${setting}`, null);
  return value === null || value <= 0 ? null : value;
}

/** Share of a full cell's charge that is gone where it rests at a voltage; null where nobody measured its chemistry. */
function takenAt(view: CraftView, voltage: number): number | null {
  const chemistry = chemistryInView(view);
  const left = chemistry === undefined ? null : leftAtRest(chemistry, voltage);
  return left === null ? null : 1 - left;
}

function sticksIn(carried: Carried): { readonly from: number; readonly to: number } | null {
  const state = hovering(carried);
  if (state === null || carried.throttle === null) return null;
  const sticks = carried.throttle.stickFor(carried.throttle.askedFor(state.throttle, state.packVoltage));
  return sticks === null || sticks.from <= 0 ? null : sticks;
}

/** Where the stick stands in the hover, as a share of its travel. */
export function stickInHover(carried: Carried): number | null {
  const sticks = sticksIn(carried);
  return sticks === null ? null : Math.sqrt(sticks.from * sticks.to);
}

/** How full the pack was in the hover: from full to landing, or to where it rested after the flight. */
export function packStateOn(
  view: CraftView,
  flight: string,
  prior: Carried,
): { readonly carried: Carried; readonly doubt: Doubt<Carried> } | null {
  const [full, cells, landing] = [fullVoltage(view), packCount(view, 'cells'), landingCell(view)];
  if (full === null || cells === null || landing === null) return null;
  const rest = noted(view, flight, 'rest-cell') ?? 0;
  const least = Math.min(0.99 * full, cells * Math.max(landing, rest - errors.rest));
  const { openVoltage } = prior.drive;
  const likely = openVoltage > least && openVoltage < full ? openVoltage : Math.sqrt(least * full);
  return {
    carried: withDrive(prior, { openVoltage: likely }),
    doubt: doubtOf('how full the pack was', { low: least / likely, high: full / likely }, (model, by) =>
      withDrive(model, { openVoltage: by * model.drive.openVoltage }),
    ),
  };
}
