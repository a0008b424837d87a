import type { MovedFigure } from '../../server/src/sheet/compare/moved-figures';

/** Whether a figure turns for the better, as a shape and a word; nothing where neither is so. */
export function turnWords(turn: MovedFigure['turn']): string {
  if (turn === null) return '';
  return turn === 'better' ? '▲ better' : '▼ worse';
}
