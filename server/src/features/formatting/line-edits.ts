import { rangeInLine, type TextEdit } from '../range';

/**
 * The edits that turn one text of a line into another that differs in blanks alone: one for each gap that
 * changes, no longer than it must be. Throws when more than blanks differ.
 */
export function blankEdits(line: number, before: string, after: string): readonly TextEdit[] {
  const edits: TextEdit[] = [];
  let at = 0;
  let to = 0;
  while (at < before.length || to < after.length) {
    const old = blanksAt(before, at);
    const wanted = blanksAt(after, to);
    if (old !== wanted) edits.push(gapEdit(line, at, old, wanted));
    at += old.length;
    to += wanted.length;
    if (before[at] !== after[to]) throw new Error('formatting may change blanks only');
    at += 1;
    to += 1;
  }
  return edits;
}

function gapEdit(line: number, start: number, old: string, wanted: string): TextEdit {
  let same = 0;
  while (same < old.length && same < wanted.length && old[same] === wanted[same]) same += 1;
  return {
    range: rangeInLine(line, { start: start + same, end: start + old.length }),
    newText: wanted.slice(same),
  };
}

function blanksAt(text: string, start: number): string {
  let end = start;
  while (text[end] === ' ' || text[end] === '\t') end += 1;
  return text.slice(start, end);
}
