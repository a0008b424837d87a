import type { CraftView } from '../../../craft/view';
import type { CodeRule } from '../../rule';

/** Motors that are to stop must not be given throttle. */
const motorsOffWithThrottle: CodeRule = {
  ids: ['safe/motors-off-with-throttle'],
  scope: 'pack',
  check(view, report) {
    const at = 'signal-loss.throttle';
    const throttle = view.quantity(at);
    if (view.word('signal-loss.action') !== 'motors-off' || throttle === null) return;
    const idle = view.quantity('motor.idle') ?? 0;
    if (throttle <= idle + 1e-9) return;
    const shown = idle === 0 ? 'zero' : `the idle of ${view.shown('motor.idle')}`;
    report({
      id: 'safe/motors-off-with-throttle',
      at,
      values: { throttle: view.shown(at), idle: shown },
      related: [
        { at: 'signal-loss.action', message: 'The action is {action}.', values: { action: 'motors-off' } },
      ],
      fixes: [{ title: 'Write {to}', set: at, to: '0 %' }],
    });
  },
};

/** Coming back needs to know where back is. */
const homeNotKnown: CodeRule = {
  ids: ['safe/home-not-known'],
  scope: 'craft',
  whole: true,
  check(view, report) {
    const at = wantsHome(view);
    if (at === null || view.words('arming.needs')?.includes('position-fix') === true) return;
    if (!view.isMissing('arming.needs') && view.words('arming.needs') === null) return;
    const by = at === 'signal-loss.action' ? 'signal loss' : 'a switch';
    report({ id: 'safe/home-not-known', at, values: { by } });
  },
};

function wantsHome(view: CraftView): string | null {
  if (view.word('signal-loss.action') === 'return') return 'signal-loss.action';
  return view.count('switch.return.channel') === null ? null : 'switch.return.channel';
}

export const signalLostRules: readonly CodeRule[] = [motorsOffWithThrottle, homeNotKnown];
