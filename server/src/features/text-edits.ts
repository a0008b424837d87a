import type { Document } from '../language/document';
import type { Position, TextEdit } from './range';

/** Edits of one script, none over another. */
export interface FileEdits {
  readonly uri: string;
  readonly edits: readonly TextEdit[];
}

/** The whole text with edits made; they are in order and don't overlap. */
export function withEdits(document: Document, edits: readonly TextEdit[]): string {
  const text = document.text();
  const offsets = lineOffsets(document);
  const offsetOf = ({ line, character }: Position) => (offsets[line] ?? text.length) + character;
  const parts: string[] = [];
  let from = 0;
  for (const { range, newText } of edits) {
    parts.push(text.slice(from, offsetOf(range.start)), newText);
    from = offsetOf(range.end);
  }
  return parts.join('') + text.slice(from);
}

function lineOffsets(document: Document): readonly number[] {
  const offsets: number[] = [];
  let offset = 0;
  for (const line of document.lines()) {
    offsets.push(offset);
    offset += line.text.length + line.end.length;
  }
  return offsets;
}
