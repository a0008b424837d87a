import type { SheetFinding } from '../../server/src/sheet/can-it-fly';
import { drawing, element } from './element';

/** A finding's level, or `accepted`: a shape of its own each, so that nothing hangs on colour alone. */
export type Mark = SheetFinding['level'] | 'accepted';

const words: Readonly<Record<Mark, string>> = {
  'must-fix': 'To mend:',
  risk: 'Risk:',
  note: 'Note:',
  tidy: 'Tidy:',
  accepted: 'Accepted risk:',
};

/** Strokes on a square of sixteen units; what is inside the outline is drawn with gaps between. */
const shapes: Readonly<Record<Mark, string>> = {
  'must-fix': 'M8 1.5a6.5 6.5 0 1 0 0 13a6.5 6.5 0 0 0 0-13zM5.7 5.7l4.6 4.6M10.3 5.7l-4.6 4.6',
  risk: 'M8 2l6.5 12h-13zM8 6.5v3.7M8 12v.2',
  note: 'M8 1.5a6.5 6.5 0 1 0 0 13a6.5 6.5 0 0 0 0-13zM8 7.3v4M8 4.7v.2',
  tidy: 'M4 8h.2M8 8h.2M12 8h.2',
  accepted: 'M8 2l6.5 12h-13zM5.8 10l1.7 1.8 2.8-3.4',
};

/** The level as a shape, with its word for a screen reader. */
export function markOf(mark: Mark): HTMLElement {
  return element(
    'span',
    { class: 'mark' },
    drawing('svg', { viewBox: '0 0 16 16', 'aria-hidden': 'true' }, drawing('path', { d: shapes[mark] })),
    element('span', { class: 'said' }, words[mark]),
  );
}
