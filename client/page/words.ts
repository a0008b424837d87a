import type { MovedFigure } from '../../server/src/sheet/compare/moved-figures';
import type { Target } from '../../server/src/sheet/target';
import { element } from './element';

/** Whether a figure turns for the better, as a shape and a word; nothing where neither is so. */
export function turnWords(turn: MovedFigure['turn']): string {
  if (turn === null) return '';
  return turn === 'better' ? '▲ better' : '▼ worse';
}

/** What a page says until it has its first answer; it is seen only where that takes long, as on a slow drive. */
export function waiting(): HTMLElement {
  return element('p', { class: 'aside waiting' }, 'The script and what it includes are being read…');
}

/** `line 19`; of another file than the script at `home`, as one that it includes: `club-habits.craft, line 19`. */
export function lineWords({ uri, line }: Target, home: string): string {
  const name = decodeURIComponent(uri.slice(uri.lastIndexOf('/') + 1));
  return `${uri === home ? '' : `${name}, `}line ${line + 1}`;
}
