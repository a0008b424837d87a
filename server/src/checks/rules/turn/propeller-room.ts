import type { CraftView } from '../../../craft/view';
import { neighbourDistance } from '../../../figures/layouts';
import type { CodeRule } from '../../rule';

/** Room between the propellers of motors that sit next to each other. */
export const propellerRoomRules: readonly CodeRule[] = [
  {
    ids: ['turn/propellers-overlap', 'turn/propellers-close'],
    scope: 'craft',
    check(view, report) {
      const diameter = view.quantity('prop.diameter');
      const apart = apartOf(view);
      if (diameter === null || apart === null) return;
      const room = apart - diameter;
      if (room >= leastRoom) return;
      report({
        id: room < 0 ? 'turn/propellers-overlap' : 'turn/propellers-close',
        at: 'prop.diameter',
        values: {
          diameter: view.amount(diameter, 'mm'),
          apart: view.amount(apart, 'mm'),
          layout: view.shown('craft.layout'),
          spacing: view.shown('craft.motor-spacing'),
          room: view.amount(Math.abs(room), 'mm'),
          most: view.amount(apart - leastRoom, 'in'),
        },
        related: [{ at: 'craft.motor-spacing', message: 'The spacing of the motors.' }],
      });
    },
  },
];

/** m: below it arms that bend in a hard turn let the blades meet. Common practice. */
const leastRoom = 0.003;

function apartOf(view: CraftView): number | null {
  const spacing = view.quantity('craft.motor-spacing');
  const layout = view.word('craft.layout');
  if (spacing === null || layout === null) return null;
  return neighbourDistance(layout, spacing, view.quantity('craft.width-to-length'));
}
