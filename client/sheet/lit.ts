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
  for (const piece of document.querySelectorAll('.lit')) piece.classList.remove('lit');
  if (cursor === null) return;
  const { parameters } = cursor;
  for (const row of document.querySelectorAll<HTMLElement>('[data-from]')) {
    const from = row.dataset.from?.split(' ') ?? [];
    if (parameters.some((one) => from.includes(one))) row.classList.add('lit');
  }
  const line = placeMark({ ...cursor, character: 0 });
  for (const link of document.querySelectorAll<HTMLElement>('[data-at]')) {
    if (link.dataset.at === line) (link.closest('li') ?? link).classList.add('lit');
  }
}
