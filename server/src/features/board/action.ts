import type { AcceptanceChange } from '../../board/kept/accepted';
import type { BoardLayer } from '../../board/layer/layer';
import type { CodeAction } from '../code-actions';
import type { TextEdit } from '../range';
import { boardAcceptance } from './acceptance';
import { acceptedBeside, changeBeside } from './beside';
import { boardFix } from './fix';
import type { BoardWords } from './words/board-words';

/** Something that can be done about a board's text: edits of it, or a change of what is kept beside it. */
export interface BoardAction {
  readonly title: string;
  readonly edits: readonly TextEdit[];
  readonly beside: AcceptanceChange | null;
}

/** What can be done in the script that a text comes to, done in the text or beside it; null where neither can be. */
export function boardAction(layer: BoardLayer, words: BoardWords, action: CodeAction): BoardAction | null {
  if (action.kind === 'accept') return acceptAction(layer, action);
  const beside = changeBeside(layer, action.edits);
  if (beside !== null) return { title: action.title, edits: [], beside };
  const fix = action.fix === null ? null : boardFix(layer, words, action.fix, action.edits);
  return fix === null ? null : { ...fix, beside: null };
}

/** In a comment of the board; beside the text where it knows none. */
function acceptAction(layer: BoardLayer, { title, edits, findings }: CodeAction): BoardAction | null {
  const [edit] = edits.flatMap((file) => file.edits);
  const [finding] = findings;
  if (edit === undefined || finding === undefined) return null;
  const { line } = edit.range.start;
  const comment = boardAcceptance(layer, line, edit.newText);
  if (comment !== null) return { title, edits: [comment], beside: null };
  const beside = acceptedBeside(layer, line, finding.check.id);
  return beside === null ? null : { title: `${title}, beside the text`, edits: [], beside };
}
