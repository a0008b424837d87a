import type { CodeRule } from '../../rule';

/** What every craft should ask before its motors may turn. Common practice. */
const least = ['receiver-alive', 'gyro-still', 'switch-seen-off'];

const asksTooLittle: CodeRule = {
  ids: ['safe/arming-asks-too-little'],
  scope: 'craft',
  check(view, report) {
    const needs = view.isSet('arming.needs') ? view.words('arming.needs') : null;
    const missing = least.filter((need) => needs !== null && !needs.includes(need));
    if (needs === null || missing.length === 0) return;
    const whole = `[${[...needs, ...missing].join(', ')}]`;
    report({
      id: 'safe/arming-asks-too-little',
      at: 'arming.needs',
      values: { missing: missing.join(' and ') },
      fixes: [
        { title: 'Add {missing}', values: { missing: missing.join(', ') }, set: 'arming.needs', to: whole },
      ],
    });
  },
};

/** A call that only the transmitter can start is of no use when the transmitter can't reach the craft. */
const onlyBySwitch: CodeRule = {
  ids: ['safe/find-only-by-switch'],
  scope: 'craft',
  check(view, report) {
    const on = view.words('find.on');
    if (on?.length === 1 && on[0] === 'switch') report({ id: 'safe/find-only-by-switch', at: 'find.on' });
  },
};

export const armingAskRules: readonly CodeRule[] = [asksTooLittle, onlyBySwitch];
