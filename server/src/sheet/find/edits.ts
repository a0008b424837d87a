import { diffArrays } from 'diff';
import type { Document, DocumentEdit } from '../../language/document';

/**
 * What turns one document into another, as few lines as can be: places are those of the first, and no two edits touch.
 * From the last to the first, so that they may be made one after the other.
 */
export function editsBetween(before: Document, after: Document): readonly DocumentEdit[] {
  const edits: DocumentEdit[] = [];
  const [old, fresh] = [textLines(before), textLines(after)];
  let at = 0;
  let to = 0;
  let [from, since] = [0, 0];
  const close = () => {
    if (at > from || to > since) edits.push(replaced(old, from, at, fresh.slice(since, to), before.lineEnd));
    [from, since] = [at, to];
  };
  for (const { added, removed, count } of diffArrays([...old], [...fresh])) {
    if (added) to += count;
    else if (removed) at += count;
    else {
      close();
      at += count;
      to += count;
      [from, since] = [at, to];
    }
  }
  close();
  return edits.reverse();
}

function textLines(document: Document): readonly string[] {
  return [...document.lines()].map(({ text }) => text);
}

/** Lines in place of those from one to another; none of them: behind the line before. */
function replaced(
  old: readonly string[],
  from: number,
  to: number,
  lines: readonly string[],
  end: string,
): DocumentEdit {
  const text = lines.join(end);
  if (to > from)
    return {
      start: { line: from, character: 0 },
      end: { line: to - 1, character: old[to - 1]?.length ?? 0 },
      text,
    };
  const before = { line: from - 1, character: old[from - 1]?.length ?? 0 };
  return from === 0
    ? { start: { line: 0, character: 0 }, end: { line: 0, character: 0 }, text: `${text}${end}` }
    : { start: before, end: before, text: `${end}${text}` };
}
