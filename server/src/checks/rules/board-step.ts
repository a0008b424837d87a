import type { Value } from '../../craft/value';
import { rangeText } from '../../craft/value-text';
import type { CraftView } from '../../craft/view';
import { exactText, parseQuantity } from '../../units/quantity';
import type { CodeRule, RuleFinding } from '../rule';

/** Says what the board will hold where it counts in coarser steps than the script does. */
const boardStep: CodeRule = {
  ids: ['line/board-step'],
  scope: 'pack',
  check(view, report) {
    for (const { parameter, step } of view.board?.steps ?? []) {
      const size = parseQuantity(step)?.value;
      if (size === undefined) continue;
      for (const path of pathsOf(view, parameter)) {
        const found = view.isSet(path) ? stepFinding(view, path, step, size) : null;
        if (found !== null) report(found);
      }
    }
  },
};

export const boardRules: readonly CodeRule[] = [boardStep];

/** A catalogue name with an open part stands for each member that the craft names. */
function pathsOf(view: CraftView, name: string): readonly string[] {
  const open = /^(.*?)\.(<[a-z]+>)/.exec(name);
  if (open === null) return [name];
  return view.members(open[1] ?? '').map((member) => name.replace(open[2] ?? '', member));
}

function stepFinding(view: CraftView, path: string, step: string, size: number): RuleFinding | null {
  const value = view.value(path);
  const held = value === null ? null : heldText(value, size);
  if (held === null) return null;
  return {
    id: 'line/board-step',
    at: path,
    values: { given: view.shown(path), held, step, board: view.board?.title ?? 'the board' },
    fixes: [{ title: `Write ${held}`, set: path, to: held }],
  };
}

/** The value that the board keeps, as a script would write it; null where it keeps what is written. */
function heldText(value: Value, step: number): string | null {
  if (value.kind === 'quantity') {
    return isOnStep(value.value, step) ? null : exactText(onStep(value.value, step), value.unit);
  }
  if (value.kind !== 'range' || (isOnStep(value.low, step) && isOnStep(value.high, step))) return null;
  return rangeText(onStep(value.low, step), onStep(value.high, step), value.unit);
}

function onStep(value: number, step: number): number {
  return Math.round(value / step) * step;
}

/** Binary arithmetic is no loss: a millionth of a step is none. */
function isOnStep(value: number, step: number): boolean {
  return Math.abs(value / step - Math.round(value / step)) < 1e-6;
}
