import type { CraftView } from '../../../craft/view';
import { stagesOfKind } from '../../../figures/filter-stages';
import type { CodeRule } from '../../rule';
import { perStage } from './per-stage';

/** Filters that follow the motors or the noise: what they need, and whether they keep out of the craft's own band. */
export const followingFilterRules: readonly CodeRule[] = [
  {
    ids: ['tune/tones-need-feedback'],
    scope: 'craft',
    whole: true,
    check: (view, report) => {
      const isSet = view.isSet('esc.speed-feedback');
      const isOff = isSet ? view.flag('esc.speed-feedback') === false : view.isMissing('esc.speed-feedback');
      if (!isOff) return;
      for (const stage of stagesOfKind(view, 'follow-motors')) {
        report({
          id: 'tune/tones-need-feedback',
          at: `${stage.path}.kind`,
          values: { path: stage.path, 'esc.speed-feedback': isSet ? 'off' : 'not set' },
          related: [{ at: 'esc.speed-feedback', message: 'Off here.' }],
          fixes: [{ title: 'Turn speed feedback on', set: 'esc.speed-feedback', to: 'on' }],
        });
      }
    },
  },
  {
    ids: ['tune/poles-missing'],
    scope: 'craft',
    whole: true,
    check: (view, report) => {
      if (!view.isMissing('motor.poles')) return;
      for (const { path } of stagesOfKind(view, 'follow-motors'))
        report({ id: 'tune/poles-missing', at: `${path}.kind`, values: { path } });
    },
  },
  {
    ids: ['tune/blades-missing'],
    scope: 'craft',
    whole: true,
    check: (view, report) => {
      if (!view.isMissing('prop.blades')) return;
      for (const { path } of stagesOfKind(view, 'follow-motors')) {
        const at = `${path}.blade-tone`;
        if (view.flag(at) === true) report({ id: 'tune/blades-missing', at, values: { path } });
      }
    },
  },
  perStage('tune/following-wide', ['follow-motors', 'follow-noise'], (view, { path }) => {
    const [from, width] = [view.quantity(`${path}.from`), view.quantity(`${path}.width`)];
    if (from === null || width === null || width < from) return null;
    const half = view.exact(from / 2, 'Hz');
    return {
      at: `${path}.width`,
      values: { path, ...shown(view, path, 'from', 'width'), half },
      fixes: [{ title: 'Make it {to} wide', set: `${path}.width`, to: half }],
    };
  }),
  perStage('tune/search-reversed', ['follow-noise'], (view, { path }) => {
    const [from, to] = [view.quantity(`${path}.from`), view.quantity(`${path}.to`)];
    if (from === null || to === null || from < to) return null;
    return { at: `${path}.to`, values: { path, ...shown(view, path, 'from', 'to') } };
  }),
  perStage('tune/search-narrow', ['follow-noise'], (view, { path }) => {
    const [from, to] = [view.quantity(`${path}.from`), view.quantity(`${path}.to`)];
    if (from === null || to === null || from >= to || to >= leastReach * from) return null;
    const values = { path, ...shown(view, path, 'from', 'to'), twice: view.short(2 * from, 'Hz') };
    return { at: `${path}.to`, values };
  }),
  perStage('tune/search-slow', ['follow-noise'], (view, { path }) => {
    const interval = view.quantityOr(`${path}.interval`, null);
    const [from, width] = [view.quantity(`${path}.from`), view.quantity(`${path}.width`)];
    if (interval === null || from === null || width === null || from <= 0) return null;
    const moved = (from * interval) / doubling;
    if (moved <= width / 2) return null;
    const most = view.exact((width / from) * (doubling / 2), 'ms');
    const moves = { moved: view.short(moved, 'Hz'), doubling: view.short(doubling, 'ms'), most };
    return {
      at: `${path}.interval`,
      values: { path, ...shown(view, path, 'interval', 'from', 'width'), ...moves },
      fixes: [{ title: 'Look every {to}', set: `${path}.interval`, to: most }],
    };
  }),
];

/** A search band that ends below so many times its beginning holds no motor from idle to full. Common practice. */
const leastReach = 1.5;
/** s in which a motor can double its speed. Common practice. */
const doubling = 0.1;

/** Settings of a filter as a sentence shows them. */
function shown(view: CraftView, path: string, ...settings: readonly string[]) {
  return Object.fromEntries(settings.map((one) => [one, view.shown(`${path}.${one}`)]));
}
