import type { CraftView } from '../../../craft/view';
import { axisNames } from '../../../figures/axis-names';
import { stickEnd } from '../../../figures/stick-figures';
import type { CodeRule } from '../../rule';

const collection = 'control.when';
const shares = ['proportional', 'integral', 'derivative'] as const;

/** Situations in which the loop is to work otherwise: whether they begin, and whether anything changes then. */
export const situationRules: readonly CodeRule[] = [
  {
    ids: ['tune/situation-changes-nothing'],
    scope: 'pack',
    whole: true,
    check(view, report) {
      for (const situation of view.members(collection)) {
        const from = `${collection}.${situation}.from`;
        const begins = view.written(from);
        if (begins === null || changesIn(view, situation)) continue;
        const values = { situation, from: begins };
        report({ id: 'tune/situation-changes-nothing', at: from, values });
      }
    },
  },
  {
    ids: ['tune/situation-without-beginning'],
    scope: 'pack',
    whole: true,
    check(view, report) {
      for (const situation of ['throttle-jumps', 'high-throttle', 'fast-turn']) {
        const from = `${collection}.${situation}.from`;
        const changed = shares.find((share) => isChanged(view, situation, share));
        if (changed === undefined || !view.isMissing(from)) continue;
        const at = `${collection}.${situation}.${changed}`;
        const values = { situation, share: view.shown(at), what: changed, from };
        report({ id: 'tune/situation-without-beginning', at, values });
      }
    },
  },
  {
    ids: ['tune/fast-turn-never'],
    scope: 'pack',
    check(view, report) {
      const at = `${collection}.fast-turn.from`;
      const from = view.quantity(at);
      const ends = axisNames.map((axis) => stickEnd(view, axis));
      if (from === null || ends.some((end) => end === null)) return;
      const fastest = Math.max(...ends.map((end) => end ?? 0));
      if (from < fastest) return;
      const values = { from: view.shown(at), fastest: view.short(fastest, 'deg/s') };
      report({ id: 'tune/fast-turn-never', at, values });
    },
  },
];

/** Whether something is otherwise in a situation, or may be: a share that nobody can read may be any. */
function changesIn(view: CraftView, situation: string): boolean {
  return (
    shares.some((share) => isChanged(view, situation, share)) ||
    view.mayBeUnsaid(`${collection}.${situation}.proportional`) ||
    view.isSet(`${collection}.${situation}.keep-steering`)
  );
}

function isChanged(view: CraftView, situation: string, share: string): boolean {
  const path = `${collection}.${situation}.${share}`;
  return view.isSet(path) && view.quantity(path) !== 1;
}
