import type { Target } from '../../server/src/sheet/target';
import type { CursorPlace } from './messages';

let cursor: CursorPlace | null = null;

/** How a piece of the page says which line it comes from. */
export function placeMark({ uri, line }: Target): string {
  return `${line} ${uri}`;
}

/** Lights up what the cursor's line has to do with, wherever the page shows it. */
export function lightUp(place: CursorPlace | null = cursor): void {
  cursor = place;
  for (const piece of document.querySelectorAll<HTMLElement>('[data-from], [data-at]')) {
    const { from = '', at } = piece.dataset;
    const isFigure = cursor?.parameter != null && from.split(' ').includes(cursor.parameter);
    const isLine = cursor !== null && at === placeMark({ ...cursor, character: 0 });
    const lit = piece.dataset.from === undefined ? (piece.closest('li') ?? piece) : piece;
    if (lit === piece || isLine) lit.classList.toggle('lit', isFigure || isLine);
  }
}
