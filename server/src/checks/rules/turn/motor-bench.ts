import type { CraftView } from '../../../craft/view';
import { type Bench, benchOf } from '../../../figures/motor-bench';
import type { CodeRule, RuleFinding } from '../../rule';

/** What speaks against a maker's table of the motor, and what can't be told from it. */
export const motorBenchRules: readonly CodeRule[] = [
  {
    ids: [
      'turn/bench-rows-few',
      'turn/bench-gives-too-much',
      'turn/bench-kv-unlike',
      'turn/bench-torque-computed',
      'turn/bench-winding-hidden',
    ],
    scope: 'craft',
    check(view, report) {
      const bench = benchOf(view);
      const finding = bench === null || view.unreadable.length > 0 ? null : findingOf(view, bench);
      if (finding !== null) report(finding);
    },
  },
];

function findingOf(view: CraftView, { fault, hidesWinding }: Bench): RuleFinding | null {
  const row = (name: string) => firstWith(view, name);
  switch (fault?.kind) {
    case 'few': {
      const rows = fault.rows === 0 ? 'no row' : fault.rows === 1 ? 'one row' : 'two rows';
      return { id: 'turn/bench-rows-few', at: firstSet(view), values: { rows } };
    }
    case 'gain': {
      const values = { share: view.amount(fault.share, '%') };
      return { id: 'turn/bench-gives-too-much', at: row('torque'), values };
    }
    case 'kv': {
      const values = { found: view.amount(fault.found, 'rpm/V'), kv: view.shown('motor.kv') };
      const related = [{ at: row('speed'), message: 'The speeds of the table.' }];
      return { id: 'turn/bench-kv-unlike', at: 'motor.kv', values, related };
    }
    case 'torque':
      return { id: 'turn/bench-torque-computed', at: row('torque') };
    default: {
      const rows = String(paths(view, 'torque').filter((path) => view.isSet(path)).length);
      return hidesWinding ? { id: 'turn/bench-winding-hidden', at: row('torque'), values: { rows } } : null;
    }
  }
}

function paths(view: CraftView, name: string): readonly string[] {
  return view.members('motor.bench').map((member) => `motor.bench.${member}.${name}`);
}

/** The first row that tells it. */
function firstWith(view: CraftView, name: string): string {
  return paths(view, name).find((path) => view.isSet(path)) ?? 'motor.kv';
}

function firstSet(view: CraftView): string {
  const names = ['voltage', 'current', 'thrust', 'speed', 'torque', 'throttle'];
  return names.flatMap((name) => paths(view, name)).find((path) => view.isSet(path)) ?? 'motor.kv';
}
