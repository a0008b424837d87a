import type { BoardLayer } from '../../board/layer/layer';
import { Document } from '../../language/document';
import type { TextEdit } from '../range';
import type { FileEdits } from '../text-edits';
import { boardEdits } from './edits';
import type { BoardWords } from './words/board-words';

/** A fix of the script that a board's text comes to, in the board's words; null where it has none for it. */
export function boardFix(
  layer: BoardLayer,
  words: BoardWords,
  title: string,
  files: readonly FileEdits[],
): { readonly title: string; readonly edits: readonly TextEdit[] } | null {
  const all = files.flatMap(({ edits }) => edits);
  const edits = boardEdits(layer, words.catalog, all);
  return edits === null ? null : { title: words.title(title, pathSet(layer, all), edits), edits };
}

/** The setting that the first edit changes or adds. */
function pathSet(layer: BoardLayer, [edit]: readonly TextEdit[]): string | null {
  if (edit === undefined) return null;
  const line = edit.newText.includes('\n') ? undefined : layer.lines[edit.range.start.line];
  const text = line?.script ?? edit.newText;
  for (const { settingPath } of Document.of(text).lines()) if (settingPath !== null) return settingPath;
  return null;
}
