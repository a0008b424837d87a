import type { BoardLayer } from '../../board/layer/layer';
import { rangeOfScript } from '../../board/layer/places';
import type { Position, Range } from '../range';

/**
 * A range of the script that a board's text comes to, in the text. What the script has and the text has not, such as
 * the line that names the board, is told at the top.
 */
export function rangeInText(layer: BoardLayer, { start, end }: Range): Range {
  return rangeOfScript(layer, start, end);
}

/** The end of what stands at a place of that script. */
export function placeInText(layer: BoardLayer, place: Position): Position {
  return rangeOfScript(layer, place, place).end;
}
