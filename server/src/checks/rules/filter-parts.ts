import { lowpasses, notches } from '../../figures/filter-stages';
import type { CodeRule } from '../rule';

/** Filters that lack a part, and parts of filters that are off. */
export const filterPartRules: readonly CodeRule[] = [
  {
    ids: ['tune/cutoff-missing'],
    scope: 'craft',
    whole: true,
    check(view, report) {
      for (const { path } of lowpasses) {
        const shape = view.word(`${path}.shape`);
        if (shape === null || shape === 'off' || view.isSet(`${path}.cutoff`)) continue;
        report({ id: 'tune/cutoff-missing', at: `${path}.shape`, values: { path, shape } });
      }
    },
  },
  {
    ids: ['tune/cutoff-unused'],
    scope: 'pack',
    check(view, report) {
      for (const { path } of lowpasses) {
        if (!view.isSet(`${path}.cutoff`) || view.word(`${path}.shape`) !== 'off') continue;
        const values = { path, shape: 'off', cutoff: view.shown(`${path}.cutoff`) };
        report({ id: 'tune/cutoff-unused', at: `${path}.cutoff`, values });
      }
    },
  },
  {
    ids: ['tune/notch-incomplete'],
    scope: 'craft',
    whole: true,
    check(view, report) {
      for (const { path } of notches(view)) {
        const [hasCentre, hasWidth] = [view.isSet(`${path}.centre`), view.isSet(`${path}.width`)];
        if (hasCentre === hasWidth) continue;
        const [has, lacks] = hasCentre ? ['centre', 'width'] : ['width', 'centre'];
        const shown = `${has} of ${view.shown(`${path}.${has}`)}`;
        report({ id: 'tune/notch-incomplete', at: `${path}.${has}`, values: { path, has: shown, lacks } });
      }
    },
  },
  {
    ids: ['tune/tracker-incomplete'],
    scope: 'craft',
    whole: true,
    check(view, report) {
      const count = view.count('gyro.tracker.count') ?? 0;
      if (count === 0) return;
      for (const lacks of ['gyro.tracker.from', 'gyro.tracker.to', 'gyro.tracker.width']) {
        if (view.isSet(lacks)) continue;
        report({
          id: 'tune/tracker-incomplete',
          at: 'gyro.tracker.count',
          values: { count: String(count), lacks },
        });
      }
    },
  },
  {
    ids: ['tune/tones-need-feedback'],
    scope: 'craft',
    whole: true,
    check(view, report) {
      const harmonics = view.count('gyro.tones.harmonics') ?? 0;
      const isSet = view.isSet('esc.speed-feedback');
      if (harmonics === 0 || (isSet && view.flag('esc.speed-feedback') !== false)) return;
      report({
        id: 'tune/tones-need-feedback',
        at: 'gyro.tones.harmonics',
        values: { harmonics: String(harmonics), feedback: isSet ? 'off' : 'not set' },
        related: [{ at: 'esc.speed-feedback', message: 'Off here.' }],
        fixes: [{ title: 'Turn speed feedback on', set: 'esc.speed-feedback', to: 'on' }],
      });
    },
  },
];
