import type { CraftView } from '../../../craft/view';
import { neighbourDistance } from '../../../figures/layouts';
import { toBase, unitOf } from '../../../units/unit';
import type { CodeRule, RuleFix } from '../../rule';

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
        fixes: smaller(view, apart - leastRoom),
      });
    },
  },
];

/** Propellers come in tenths of an inch. */
function smaller(view: CraftView, most: number): readonly RuleFix[] {
  const tenth = toBase(0.1, unitOf('in'));
  const tenths = Math.floor(most / tenth);
  if (tenths < 1) return [];
  const to = view.exact(tenths * tenth, 'in');
  const look = 'what is fitted; the spacing runs between opposite motors';
  return [{ title: 'Write {to}, for smaller propellers', set: 'prop.diameter', to, look }];
}

/** m: below it arms that bend in a hard turn let the blades meet. Common practice. */
const leastRoom = 0.003;

function apartOf(view: CraftView): number | null {
  const spacing = view.quantity('craft.motor-spacing');
  const layout = view.word('craft.layout');
  if (spacing === null || layout === null) return null;
  return neighbourDistance(layout, spacing, view.quantity('craft.width-to-length'));
}
