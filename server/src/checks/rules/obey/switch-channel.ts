import type { CraftView } from '../../../craft/view';
import type { CodeRule } from '../../rule';
import { commonPart, partText, switchUses } from './switch-table';

/** Channels that exist and that nothing else uses. */
export const switchChannelRules: readonly CodeRule[] = [
  {
    ids: ['obey/channel-missing', 'obey/channel-on-stick'],
    scope: 'craft',
    check(view, report) {
      const arriving = arrivingChannels(view);
      for (const { function: name, path, channel } of usedChannels(view)) {
        const values = { function: name, channel: String(channel) };
        if (channel <= 4) report({ id: 'obey/channel-on-stick', at: path, values });
        else if (arriving !== null && channel > arriving.count) {
          const more = { what: arriving.what, count: String(arriving.count) };
          report({ id: 'obey/channel-missing', at: path, values: { ...values, ...more } });
        }
      }
    },
  },
  {
    ids: ['obey/channels-beyond-link'],
    scope: 'craft',
    check(view, report) {
      const link = view.catalog.link(view.word('receiver.link') ?? '');
      const given = view.count('receiver.channels');
      if (link?.channels === undefined || given === null || given <= link.channels) return;
      const count = String(link.channels);
      report({
        id: 'obey/channels-beyond-link',
        at: 'receiver.channels',
        values: { 'receiver.channels': String(given), link: `the link ${link.name}`, count },
        fixes: [{ title: 'Write {to}', set: 'receiver.channels', to: count }],
      });
    },
  },
  {
    ids: ['obey/switch-incomplete'],
    scope: 'craft',
    whole: true,
    check(view, report) {
      for (const name of view.members('switch')) {
        const [channel, on] = [`switch.${name}.channel`, `switch.${name}.on`];
        const [has, lacks] = view.isSet(channel) ? [channel, on] : [on, channel];
        if (!view.isSet(has) || !view.isMissing(lacks)) continue;
        report({
          id: 'obey/switch-incomplete',
          at: has,
          values: {
            function: name,
            has: has === channel ? `channel ${view.shown(has)}` : `a part, ${view.shown(has)}`,
            lacks: lacks === channel ? 'channel' : 'part of its travel',
            path: lacks,
          },
        });
      }
    },
  },
  {
    ids: ['obey/strength-channel-taken'],
    scope: 'craft',
    check(view, report) {
      const channel = view.count('receiver.strength-channel');
      const taker = switchUses(view).find((use) => use.channel === channel);
      if (channel === null || taker === undefined) return;
      report({
        id: 'obey/strength-channel-taken',
        at: 'receiver.strength-channel',
        values: { channel: String(channel), function: taker.name },
        related: [
          { at: `switch.${taker.name}.channel`, message: '{taker} is on it.', values: { taker: taker.name } },
        ],
      });
    },
  },
  {
    ids: ['obey/loss-channel-taken'],
    scope: 'craft',
    check(view, report) {
      const channel = view.count('signal-loss.switch-channel');
      const on = view.range('signal-loss.switch-on');
      if (channel === null || on === null) return;
      const loss = { name: 'signal-loss', channel, on };
      for (const use of switchUses(view)) {
        if (use.channel !== channel || commonPart(use, loss) === null) continue;
        report({
          id: 'obey/loss-channel-taken',
          at: 'signal-loss.switch-channel',
          values: {
            channel: String(channel),
            range: partText(view, on),
            function: use.name,
            other: partText(view, use.on),
          },
          related: [{ at: `switch.${use.name}.on`, message: '{use} is on here.', values: { use: use.name } }],
        });
      }
    },
  },
];

/** Channels that something other than the sticks listens to. */
function usedChannels(view: CraftView) {
  const others = [
    { function: 'Signal strength', path: 'receiver.strength-channel' },
    { function: 'The signal-loss action', path: 'signal-loss.switch-channel' },
  ];
  const switches = view.members('switch').map((name) => ({ function: name, path: `switch.${name}.channel` }));
  return [...switches, ...others].flatMap((one) => {
    const channel = view.count(one.path);
    return channel === null ? [] : [{ ...one, channel }];
  });
}

function arrivingChannels(view: CraftView): { readonly what: string; readonly count: number } | null {
  if (view.isSet('receiver.channels')) {
    const count = view.count('receiver.channels');
    return count === null ? null : { what: 'the receiver', count };
  }
  const link = view.catalog.link(view.word('receiver.link') ?? '');
  return link?.channels === undefined ? null : { what: `the link ${link.name}`, count: link.channels };
}
