import type { CraftView } from '../craft/view';
import { type DigitalFilter, notch } from '../physics/filter';
import { halfRate } from '../physics/sampling';
import { motorPlaces } from './layouts';

/** Notches that move with the motors. */
export interface Following {
  /** Of every motor, with all of them turning so often a second: what their delay adds up from. */
  readonly all: (turns: number) => readonly DigitalFilter[];
  /** Those that surely meet one motor's tone: its own, not its neighbours', which turn a little differently. */
  readonly own: (turns: number) => readonly DigitalFilter[];
}

/** Notches that the speed answers steer: one a motor for each multiple of its speed. Null: there are none. */
export function toneNotches(view: CraftView, rate: number): Following | null {
  const harmonics = view.count('gyro.tones.harmonics') ?? 0;
  const from = view.quantity('gyro.tones.from');
  const width = view.quantity('gyro.tones.width');
  if (harmonics === 0 || from === null || width === null) return null;
  if (view.flag('esc.speed-feedback') !== true) return null;
  const blades = view.flag('gyro.tones.blade-pass') === true ? view.count('prop.blades') : null;
  const multiples = new Set(Array.from({ length: harmonics }, (_, index) => index + 1));
  if (blades !== null) multiples.add(blades);
  const own = kept((turns) =>
    [...multiples].flatMap((multiple) => notchAt(Math.max(from, multiple * turns), width, rate)),
  );
  const motors = motorPlaces(view.word('craft.layout') ?? '')?.length ?? 0;
  const all = kept((turns) => own(turns).flatMap((one) => Array.from({ length: motors }, () => one)));
  return { own, all };
}

/**
 * Notches that search by themselves: taken to sit on the motors' tones, the strongest first, as far as their band
 * lets them. Null: there are none.
 */
export function trackedNotches(view: CraftView, rate: number): Following | null {
  const count = view.count('gyro.tracker.count') ?? 0;
  const from = view.quantity('gyro.tracker.from');
  const to = view.quantity('gyro.tracker.to');
  const width = view.quantity('gyro.tracker.width');
  if (count === 0 || from === null || to === null || width === null || from > to) return null;
  const multiples = [...new Set([1, view.count('prop.blades') ?? 1, 2, 3, 4, 5, 6, 7, 8])].slice(0, count);
  const found = kept((turns) =>
    multiples.flatMap((multiple) => notchAt(Math.min(to, Math.max(from, multiple * turns)), width, rate)),
  );
  return { own: found, all: found };
}

type AtTurns = (turns: number) => readonly DigitalFilter[];

/** Many figures ask for the same few speeds: idle, hover, full. */
function kept(make: AtTurns): AtTurns {
  const known = new Map<number, readonly DigitalFilter[]>();
  return (turns) => {
    const filters = known.get(turns) ?? make(turns);
    known.set(turns, filters);
    return filters;
  };
}

/** None where it would lie beyond what samples can tell. */
export function notchAt(centre: number, width: number, rate: number): readonly DigitalFilter[] {
  const half = halfRate(rate);
  const fits = centre > 0 && centre < half && width > 0 && width < half;
  return fits ? [notch(centre, width, rate)] : [];
}
