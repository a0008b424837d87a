import type { BoardLayer } from '../../board/layer/layer';
import type { Fix } from '../../checks/report/finding';
import type { TextEdit } from '../range';
import type { FileEdits } from '../text-edits';
import { boardEdits } from './edits';
import type { BoardWords } from './words/board-words';

/** A fix of the script that a board's text comes to, in the board's words; null where it has none for it. */
export function boardFix(
  layer: BoardLayer,
  words: BoardWords,
  fix: Pick<Fix, 'title' | 'values' | 'set'>,
  files: readonly FileEdits[],
): { readonly title: string; readonly edits: readonly TextEdit[] } | null {
  const all = files.flatMap(({ edits }) => edits);
  const edits = boardEdits(layer, words.catalog, all);
  return edits === null ? null : { title: words.title(fix, edits), edits };
}
