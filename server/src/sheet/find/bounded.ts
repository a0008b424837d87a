import type { Finding } from '../../checks/report/finding';
import type { Craft } from '../../craft/craft';
import type { Movable, MovableLine } from './movable';
import { ofLoops, raisedBy, spokenUp } from './raised';
import type { TrialCraft } from './trial';

export interface Bounded {
  readonly movables: readonly Movable[];
  /** What keeps a movable from going further, a sentence each. */
  readonly heldBack: readonly string[];
}

/**
 * How far each movable may go by itself before a check raises a must-fix or a risk. What several raise together is
 * found when a proposal is checked: so is what a filter brings that is off now, for one risk may take the place of a
 * larger one as it comes on.
 */
export function* bounded(
  trial: TrialCraft,
  movables: readonly Movable[],
  before: readonly Finding[],
  check: (craft: Craft) => readonly Finding[],
): Generator<void, Bounded> {
  /** Paths, by the check that keeps them and how. */
  const heldBack = new Map<string, Set<string>>();
  const kept: Movable[] = [];
  const dropped: Movable[] = [];
  for (const movable of movables) {
    const { kind, values, now } = movable;
    if (dropped.some((other) => isSameFilter(other, movable))) continue;
    const one = new OneMoved(trial, movables, movable);
    const raisedAt = (at: number) => raisedBy(before, check(one.at(at))).map(({ id }) => id);
    const comes = new Set([...ofLoops, ...(one.isOffNow && kind === 'number' ? raisedAt(now) : [])]);
    const isFine = (at: number): boolean => {
      const raised = raisedAt(at).filter((id) => !comes.has(id));
      const [line] = movable.lines(values.length - 1);
      const how = kind === 'switch' ? 'stays on' : 'no further';
      for (const id of raised) {
        const key = JSON.stringify([id, how]);
        heldBack.set(key, (heldBack.get(key) ?? new Set()).add(line?.path ?? ''));
      }
      return raised.length === 0;
    };
    yield;
    if (one.isOffNow && kind === 'switch') {
      (weighsMore(before, check(one.at(1))) ? dropped : kept).push(movable);
    } else if (kind !== 'switch') {
      const first = yield* farthest(now, 0, isFine);
      const last = yield* farthest(now, values.length - 1, isFine);
      kept.push(sliced(movable, first, last));
    } else if (isFine(0)) kept.push(movable);
  }
  return {
    movables: kept,
    heldBack: [...heldBack].map(([key, paths]) => {
      const [id, how]: [string, string] = JSON.parse(key);
      return `${[...paths].join(', ')}: ${how}, or ${spokenUp(trial.base, [id])}.`;
    }),
  };
}

/** Whether any pack, or the craft as a whole, has more that weighs than before. */
function weighsMore(before: readonly Finding[], after: readonly Finding[]): boolean {
  const counted = (findings: readonly Finding[]) => {
    const counts = new Map<string | null, number>();
    for (const { level, pack } of findings)
      if (level === 'must-fix' || level === 'risk') counts.set(pack, (counts.get(pack) ?? 0) + 1);
    return counts;
  };
  const was = counted(before);
  return [...counted(after)].some(([pack, count]) => count > (was.get(pack) ?? 0));
}

/** A craft with one movable elsewhere, its filter on. */
class OneMoved {
  readonly isOffNow: boolean;
  private readonly opened: readonly MovableLine[];

  constructor(
    private readonly trial: TrialCraft,
    movables: readonly Movable[],
    private readonly movable: Movable,
  ) {
    const sameFilter = movables.filter((one) => isSameFilter(one, movable));
    this.isOffNow = sameFilter.some((one) => one.kind === 'switch' && one.now === 0);
    const others = this.isOffNow ? sameFilter.filter((one) => one !== movable) : [];
    this.opened = others.flatMap((one) => one.lines(one.kind === 'switch' ? 1 : one.now));
  }

  at(place: number): Craft {
    return this.trial.with([...this.opened, ...this.movable.lines(place)]);
  }
}

function isSameFilter(one: Movable, other: Movable): boolean {
  const isSameStage = one.stage !== null && one.stage.path === other.stage?.path;
  return isSameStage && one.packs.some((pack) => other.packs.includes(pack));
}

/** The last place on the way to an end at which all is fine, by halving. */
function* farthest(from: number, end: number, isFine: (at: number) => boolean): Generator<void, number> {
  if (from === end || isFine(end)) return end;
  let [good, bad] = [from, end];
  while (Math.abs(bad - good) > 1) {
    yield;
    const middle = Math.trunc((good + bad) / 2);
    if (isFine(middle)) good = middle;
    else bad = middle;
  }
  return good;
}

function sliced(movable: Movable, first: number, last: number): Movable {
  if (first === 0 && last === movable.values.length - 1) return movable;
  return {
    ...movable,
    values: movable.values.slice(first, last + 1),
    now: movable.now - first,
    lines: (at) => movable.lines(at + first),
  };
}
