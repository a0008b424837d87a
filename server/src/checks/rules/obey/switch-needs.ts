import type { CraftView } from '../../../craft/view';
import type { CodeRule } from '../../rule';
import { type Fitted, hasHeight, hasPosition } from '../fitted';

/** What functions and the signal-loss action need beside a switch. */
export const switchNeedsRules: readonly CodeRule[] = [
  {
    ids: ['obey/function-without-sensor'],
    scope: 'craft',
    whole: true,
    check(view, report) {
      for (const [name, needs, fitted] of needed(view)) {
        const at = `switch.${name}.channel`;
        if (!view.isSet(at) || fitted.has !== false) continue;
        report({
          id: 'obey/function-without-sensor',
          at,
          values: { function: name, needs, why: fitted.why },
        });
      }
    },
  },
  {
    ids: ['obey/loss-action-without-sensor'],
    scope: 'craft',
    whole: true,
    check(view, report) {
      const action = view.word('signal-loss.action');
      const position = hasPosition(view);
      if ((action !== 'return' && action !== 'hover') || position.has !== false) return;
      report({
        id: 'obey/loss-action-without-sensor',
        at: 'signal-loss.action',
        values: { action, needs: positionNeed, why: position.why },
      });
    },
  },
  {
    ids: ['obey/joined-with-nothing'],
    scope: 'craft',
    whole: true,
    check(view, report) {
      for (const name of view.members('switch')) {
        const at = `switch.${name}.joined-with`;
        const other = view.word(at);
        if (other === null || (other !== name && !view.isMissing(`switch.${other}.channel`))) continue;
        const why = other === name ? 'is itself' : 'is on no channel';
        report({ id: 'obey/joined-with-nothing', at, values: { function: name, other, why } });
      }
    },
  },
  {
    ids: ['obey/locate-not-heard'],
    scope: 'craft',
    check(view, report) {
      const channel = view.count('switch.locate.channel');
      const on = view.words('find.on');
      if (channel === null || on === null || on.includes('switch')) return;
      report({
        id: 'obey/locate-not-heard',
        at: 'find.on',
        values: { channel: String(channel), on: view.shown('find.on') },
        fixes: [{ title: 'Add switch', set: 'find.on', to: `[${[...on, 'switch'].join(', ')}]` }],
      });
    },
  },
];

const positionNeed = 'a position receiver';
const heightNeed = 'a barometer or a position receiver';

function needed(view: CraftView): readonly (readonly [string, string, Fitted])[] {
  return [
    ['return', positionNeed, hasPosition(view)],
    ['hold-position', positionNeed, hasPosition(view)],
    ['hold-altitude', heightNeed, hasHeight(view)],
  ];
}
