import type { CraftView } from '../../../craft/view';
import { type AxisName, axisNames } from '../../../figures/axis-names';
import { listed } from '../../report/listed';
import type { CodeRule, RuleFinding } from '../../rule';

/** Parts of the loop that are bounded by themselves, against what their axis may use in all. */
export const axisLimitRules: readonly CodeRule[] = [
  {
    ids: ['tune/integral-takes-all', 'tune/derivative-limit-unused'],
    scope: 'pack',
    check(view, report) {
      const integral = view.quantity('control.integral-limit');
      const derivative = view.quantity('derivative.limit');
      for (const axis of axisNames) {
        const limit = view.quantity(pathOf(axis));
        if (limit === null) continue;
        if (integral !== null && integral >= limit) report(takesAll(view, axis, limit));
        if (derivative !== null && derivative > limit && view.isSet('derivative.limit'))
          report(unused(view, axis));
      }
    },
  },
  {
    ids: ['tune/yaw-takes-from-others'],
    scope: 'pack',
    check(view, report) {
      const yaw = view.quantity(pathOf('yaw'));
      if (yaw === null) return;
      for (const axis of ['roll', 'pitch'] as const) {
        const limit = view.quantity(pathOf(axis));
        if (limit === null || yaw <= limit) continue;
        const text = view.exact(limit, '%');
        report({
          id: 'tune/yaw-takes-from-others',
          at: pathOf('yaw'),
          values: { yaw: view.shown(pathOf('yaw')), axis, limit: text },
          related: [{ at: pathOf(axis), message: `What ${axis} may use.` }],
          fixes: [{ title: 'Set {to}', set: pathOf('yaw'), to: text }],
        });
        return;
      }
    },
  },
  {
    ids: ['tune/axis-limit-unknown'],
    scope: 'craft',
    whole: true,
    check(view, report) {
      const missing = axisNames.map(pathOf).filter((path) => view.isMissing(path));
      const bounded = ['control.integral-limit', 'derivative.limit'].find((path) => view.isSet(path));
      if (missing.length === 0 || bounded === undefined) return;
      const values = { bound: view.shown(bounded), name: bounded, missing: listed(missing) };
      report({ id: 'tune/axis-limit-unknown', at: bounded, values });
    },
  },
];

function pathOf(axis: AxisName): string {
  return `control.${axis}.limit`;
}

function takesAll(view: CraftView, axis: AxisName, limit: number): RuleFinding {
  const at = pathOf(axis);
  return {
    id: 'tune/integral-takes-all',
    at,
    values: {
      axis,
      integral: view.shown('control.integral-limit'),
      limit: view.shown(at),
      half: view.exact(limit / 2, '%'),
    },
    related: view.isSet('control.integral-limit')
      ? [{ at: 'control.integral-limit', message: 'What the integral may hold.' }]
      : [],
  };
}

function unused(view: CraftView, axis: AxisName): RuleFinding {
  return {
    id: 'tune/derivative-limit-unused',
    at: pathOf(axis),
    values: { axis, derivative: view.shown('derivative.limit'), limit: view.shown(pathOf(axis)) },
    related: [{ at: 'derivative.limit', message: 'What the derivative may ask for.' }],
  };
}
