import { type Translation, toBoard } from '../../board/translation';
import type { Position, Range } from '../range';

/**
 * A place in the script that a board's text was translated to, in the text. What the script has and the text has
 * not, such as the line that names the board, is told at the top.
 */
export function placeInText(
  translation: Translation | null,
  { line, character }: Position,
  isEnd: boolean,
): Position {
  const translated = translation?.lines[line];
  if (translated === undefined) return { line: 0, character: 0 };
  return { line, character: toBoard(translated, character, isEnd) };
}

export function rangeInText(translation: Translation | null, { start, end }: Range): Range {
  return { start: placeInText(translation, start, false), end: placeInText(translation, end, true) };
}
