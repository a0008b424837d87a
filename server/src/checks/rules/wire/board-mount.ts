import { axisNames } from '../../../figures/axis-names';
import type { CodeRule } from '../../rule';

/** Boards are bolted on square, or turned by half a right angle. */
export const boardMountRules: readonly CodeRule[] = [
  {
    ids: ['wire/mount-odd'],
    scope: 'craft',
    check(view, report) {
      for (const axis of axisNames) {
        const at = `board.mount-${axis}`;
        const angle = view.quantityOr(at, null);
        if (angle === null) continue;
        const steps = angle / eighth;
        if (Math.abs(steps - Math.round(steps)) < 0.02) continue;
        const near = view.exact(Math.round(steps) * eighth, 'deg');
        report({ id: 'wire/mount-odd', at, values: { axis, given: view.shown(at), near } });
      }
    },
  },
];

const eighth = Math.PI / 4;
