import { inBase } from '../../../catalog/known-parameter';
import type { CraftView } from '../../../craft/view';
import { signalInUse } from '../../../figures/motor-signal';
import type { CodeRule, RuleFix } from '../../rule';

/** A pulse only tells the controller how fast; nothing comes back on the wire. */
const pulseCannotAnswer: CodeRule = {
  ids: ['turn/pulse-cannot-answer'],
  scope: 'craft',
  check(view, report) {
    const signal = signalInUse(view);
    if (signal === undefined || signal.answer !== undefined) return;
    if (view.flag('esc.speed-feedback') !== true) return;
    report({
      id: 'turn/pulse-cannot-answer',
      at: 'esc.speed-feedback',
      values: { signal: signal.name },
      related: [{ at: 'esc.signal', message: `${signal.name} goes one way only.` }],
      fixes: [{ title: 'Turn speed feedback off', set: 'esc.speed-feedback', to: 'off' }],
    });
  },
};

/** Righting runs motors backwards by a command that only digital signals have. */
const rightingNeedsDigital: CodeRule = {
  ids: ['turn/righting-needs-digital'],
  scope: 'craft',
  check(view, report) {
    const signal = signalInUse(view);
    if (signal?.kind !== 'pulse' || view.count('switch.righting.channel') === null) return;
    const values = { signal: signal.name, channel: view.shown('switch.righting.channel') };
    const related = [{ at: 'esc.signal', message: `${signal.name} can't ask for the other direction.` }];
    report({ id: 'turn/righting-needs-digital', at: 'switch.righting.channel', values, related });
  },
};

const ends = ['esc.minimum-pulse', 'esc.maximum-pulse'] as const;

const endsUnused: CodeRule = {
  ids: ['turn/pulse-ends-unused'],
  scope: 'craft',
  check(view, report) {
    const signal = signalInUse(view);
    if (signal?.kind !== 'digital') return;
    for (const at of ends) {
      if (!view.isSet(at)) continue;
      report({ id: 'turn/pulse-ends-unused', at, mark: 'name', values: { signal: signal.name } });
    }
  },
};

/** Widths a fifth outside those of the signal belong to another signal. */
const endsOutside: CodeRule = {
  ids: ['turn/pulse-ends-outside'],
  scope: 'craft',
  check(view, report) {
    const signal = signalInUse(view);
    if (signal?.shortest === undefined || signal.longest === undefined) return;
    const [least, most] = [0.8 * inBase(signal.shortest), 1.2 * inBase(signal.longest)];
    for (const at of ends) {
      const width = view.quantity(at);
      if (width === null || (width >= least && width <= most)) continue;
      report({
        id: 'turn/pulse-ends-outside',
        at,
        values: { ...widths(view, at), signal: signal.name, span: `${signal.shortest} to ${signal.longest}` },
        related: [{ at: 'esc.signal', message: 'The signal.' }],
        fixes: [ofSignal(at, at === 'esc.minimum-pulse' ? signal.shortest : signal.longest)],
      });
    }
  },
};

function ofSignal(set: string, to: string): RuleFix {
  const look = 'what the controllers have learned; propellers off';
  return { title: 'Write {to}', set, to, look };
}

function widths(view: CraftView, at: (typeof ends)[number]) {
  return { width: view.shown(at), end: at === 'esc.minimum-pulse' ? 'shortest' : 'longest' };
}

export const pulseSignalRules: readonly CodeRule[] = [
  pulseCannotAnswer,
  rightingNeedsDigital,
  endsUnused,
  endsOutside,
];
