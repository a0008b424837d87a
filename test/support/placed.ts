import type { TextDocument } from 'vscode-languageserver-textdocument';
import { type DocumentEdit, isInsidePair, type Position } from '../../server/src/language/document';
import type { LooseEdit } from './craft-scripts';

/** A loose edit where it falls in a text. */
export function placed(
  document: TextDocument,
  { line, character, lines, endCharacter, text }: LooseEdit,
): DocumentEdit {
  const number = Math.min(document.lineCount - 1, Math.floor(line * document.lineCount));
  const start = positionIn(document, number, character);
  const end = positionIn(document, number + lines, endCharacter);
  const isBackwards = lines === 0 && end.character < start.character;
  return isBackwards ? { start: end, end: start, text } : { start, end, text };
}

/** A position by its share of a line; never between the halves of a character, where editors never are. */
function positionIn(document: TextDocument, line: number, share: number): Position {
  const range = { start: { line, character: 0 }, end: { line: line + 1, character: 0 } };
  const text = document.getText(range).replace(/[\r\n]+$/, '');
  const at = Math.round(share * text.length);
  return { line, character: isInsidePair(text, at) ? at - 1 : at };
}
