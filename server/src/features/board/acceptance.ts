import type { BoardLayer } from '../../board/layer/layer';
import { rangeInLine, type TextEdit } from '../range';

/**
 * The comment above a setting of a board's text that accepts a risk. `words`: as a script's line has it, from its mark
 * on. Null where the board knows no comments, or something else stands on the line.
 */
export function boardAcceptance(layer: BoardLayer, scriptLine: number, words: string): TextEdit | null {
  const { forms, settings, lines, texts } = layer;
  const [mark] = forms.comments;
  const setting = settings[scriptLine];
  if (mark === undefined || setting === undefined || lines[scriptLine]?.acceptance !== null) return null;
  const { line } = setting.at.name.start;
  if (settings[scriptLine - 1]?.at.value.end.line === line) return null;
  const text = texts[line] ?? '';
  const indent = text.slice(0, text.length - text.trimStart().length);
  const comment = words.trim().replace(/^#\s*/, '');
  return {
    range: rangeInLine(line, { start: 0, end: 0 }),
    newText: `${indent}${mark} ${comment}\n`,
  };
}
