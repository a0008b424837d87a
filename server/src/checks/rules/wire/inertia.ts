import { axisNames } from '../../../figures/axis-names';
import { pointInertia } from '../../../physics/inertia';
import type { CodeRule } from '../../rule';

/** Moments of inertia against what the mass could have, and what a part of it has, out at the motors. */
export const inertiaRules: readonly CodeRule[] = [
  {
    ids: ['wire/inertia-too-large', 'wire/inertia-too-small'],
    scope: 'craft',
    check(view, report) {
      const mass = view.quantity('craft.mass');
      const spacing = view.quantity('craft.motor-spacing');
      if (mass === null || spacing === null) return;
      for (const axis of axisNames) {
        const at = `craft.inertia.${axis}`;
        const given = view.quantity(at);
        if (given === null) continue;
        const most = pointInertia([{ mass, distance: spacing / 2 }]);
        const least = atMotors * most * (axis === 'yaw' ? 1 : 0.5);
        if (given >= least && given <= most) continue;
        const values = {
          axis,
          inertia: view.shown(at),
          mass: view.shown('craft.mass'),
          most: view.amount(most, 'g*m^2'),
          least: view.amount(least, 'g*m^2'),
        };
        report({ id: given > most ? 'wire/inertia-too-large' : 'wire/inertia-too-small', at, values });
      }
    },
  },
];

/** Share of a craft's mass that motors and propellers have at the least. Common practice. */
const atMotors = 0.1;
