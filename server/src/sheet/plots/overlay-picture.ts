import { elements, overlayGrid } from '../../checks/rules/see/overlay-elements';
import type { CraftView } from '../../craft/view';
import { targetOfPath } from '../target';
import { isOfCraft, readingOf } from './overlay-readings';
import type { OverlayPicture } from './plot';

/** The overlay as the goggles show it: this craft's numbers with the pack in view, invented ones for the flight. */
export function overlayPicture(view: CraftView): OverlayPicture | null {
  const grid = overlayGrid(view);
  const placed = elements(view);
  if (grid === null || placed.length === 0) return null;
  const members = new Map(view.catalog.members('overlay').map((member) => [member.name, member]));
  return {
    kind: 'overlay',
    id: 'overlay',
    part: 'who-sees-me',
    title: 'The overlay as the goggles show it',
    columns: grid.columns,
    rows: grid.rows,
    elements: placed.map(({ name, row, column, width }) => {
      const member = members.get(name);
      // Of what hangs on the craft only its own number is shown: another one would be taken for it.
      const invented = isOfCraft(name) ? undefined : member?.sample;
      return {
        title: member?.title ?? name,
        sample: (readingOf(view, name) ?? invented ?? '?'.repeat(width)).slice(0, width),
        row,
        column,
        target: targetOfPath(view, `overlay.${name}.place`),
      };
    }),
  };
}
