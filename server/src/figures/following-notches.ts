import type { CraftView } from '../craft/view';
import { type DigitalFilter, notch } from '../physics/filter';
import { halfRate } from '../physics/sampling';
import { kindOf, type Stage, stagesBefore, stagesOf } from './filter-stages';
import { motorPlaces } from './layouts';

/** Notches that move with the motors. */
export interface Following {
  /** Of every motor, with all of them turning so often a second: what their delay adds up from. */
  readonly all: (turns: number) => readonly DigitalFilter[];
  /** Those that surely meet one motor's tone: its own, not its neighbours', which turn a little differently. */
  readonly own: (turns: number) => readonly DigitalFilter[];
}

/** Notches that the speed answers steer: one a motor for each multiple of its speed. Null: not known. */
export function toneNotches(view: CraftView, stage: Stage, rate: number): Following | null {
  const multiples = followedMultiples(view, stage);
  const from = view.quantity(`${stage.path}.from`);
  const width = view.quantity(`${stage.path}.width`);
  if (multiples === null || from === null || width === null) return null;
  if (!view.isOn('esc.speed-feedback')) return { own: () => [], all: () => [] };
  const own = kept((turns) =>
    multiples.flatMap((multiple) => notchAt(Math.max(from, multiple * turns), width, rate)),
  );
  const motors = motorPlaces(view.word('craft.layout') ?? '')?.length ?? 0;
  const all = kept((turns) => own(turns).flatMap((one) => Array.from({ length: motors }, () => one)));
  return { own, all };
}

/** The multiples of a motor's speed that a filter takes out; null where their number is not known. */
function followedMultiples(view: CraftView, { path }: Stage): readonly number[] | null {
  const tones = view.count(`${path}.tones`);
  if (tones === null) return null;
  const blades = view.flag(`${path}.blade-tone`) === true ? view.count('prop.blades') : null;
  const multiples = new Set(Array.from({ length: tones }, (_, index) => index + 1));
  if (blades !== null) multiples.add(blades);
  return [...multiples];
}

/** The strongest tones of a motor as multiples of its speed: its own, that of its blades, then the overtones. */
function loudest(view: CraftView): readonly number[] {
  return [...new Set([1, view.count('prop.blades') ?? 1, 2, 3, 4, 5, 6, 7, 8])];
}

/**
 * Notches that search by themselves: taken to sit on the loudest tones that the filters before them leave, as far as
 * their band lets them. Null: not known.
 */
export function searchedNotches(view: CraftView, stage: Stage, rate: number): Following | null {
  const count = view.count(`${stage.path}.count`);
  const from = view.quantity(`${stage.path}.from`);
  const to = view.quantity(`${stage.path}.to`);
  const width = view.quantity(`${stage.path}.width`);
  if (count === null || from === null || to === null || width === null || from > to) return null;
  const gone = takenBefore(view, stage);
  const multiples = loudest(view)
    .filter((multiple) => !gone.has(multiple))
    .slice(0, count);
  const found = kept((turns) =>
    multiples.flatMap((multiple) => notchAt(Math.min(to, Math.max(from, multiple * turns)), width, rate)),
  );
  return { own: found, all: found };
}

/** The multiples that filters which hear the motors' speed have taken out before this one's turn. */
function takenBefore(view: CraftView, stage: Stage): ReadonlySet<number> {
  if (!view.isOn('esc.speed-feedback')) return new Set();
  const ahead = stagesBefore(view, stage);
  const before = stage.chain === 'gyro' ? ahead : [...stagesOf(view, 'gyro'), ...ahead];
  return new Set(
    before.flatMap((one) =>
      kindOf(view, one) === 'follow-motors' ? (followedMultiples(view, one) ?? []) : [],
    ),
  );
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
