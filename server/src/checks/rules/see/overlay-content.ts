import type { CraftView } from '../../../craft/view';
import { listed } from '../../report/listed';
import type { CodeRule } from '../../rule';
import { type Fitted, hasCurrent, hasEscReport, hasHeight, hasPosition } from '../fitted';

/** What the overlay shows: the essentials, in flight, and only what the craft can know. */
export const overlayContentRules: readonly CodeRule[] = [
  {
    ids: ['see/cell-voltage-missing', 'see/armed-time-missing'],
    scope: 'craft',
    whole: true,
    check(view, report) {
      const shown = view.members('overlay').filter((name) => view.isSet(`overlay.${name}.place`));
      if (shown.length === 0 && !view.isSet('video.standard')) return;
      for (const name of ['cell-voltage', 'armed-time']) {
        if (shown.includes(name) || view.mayBeUnsaid(`overlay.${name}.place`)) continue;
        const values = { shown: shown.length === 0 ? 'nothing' : listed(shown) };
        report({ id: `see/${name}-missing`, at: 'overlay', values });
      }
    },
  },
  {
    ids: ['see/hidden-in-flight'],
    scope: 'craft',
    check(view, report) {
      for (const element of ['cell-voltage', 'pack-voltage', 'armed-time', 'warnings', 'link-quality']) {
        const at = `overlay.${element}.shown-in`;
        const phases = view.words(at);
        if (!view.isSet(at) || phases === null || phases.includes('in-flight')) continue;
        report({ id: 'see/hidden-in-flight', at, values: { element, shown: listed(phases) } });
      }
    },
  },
  {
    ids: ['see/element-without-source'],
    scope: 'craft',
    whole: true,
    check(view, report) {
      for (const [element, needs, fitted] of sources(view)) {
        const at = `overlay.${element}.place`;
        if (!view.isSet(at) || fitted.has !== false) continue;
        report({ id: 'see/element-without-source', at, values: { element, needs, why: fitted.why } });
      }
    },
  },
];

function sources(view: CraftView): readonly (readonly [string, string, Fitted])[] {
  const position = hasPosition(view);
  const current = hasCurrent(view);
  const fromPosition = ['speed', 'home-distance', 'home-direction', 'satellites'] as const;
  return [
    ...fromPosition.map((element) => [element, 'a position receiver', position] as const),
    ['altitude', 'a barometer or a position receiver', hasHeight(view)],
    ['current', 'a measured current', current],
    ['used-charge', 'a measured current', current],
    ['esc-temperature', 'a report from the speed controllers', hasEscReport(view)],
  ];
}
