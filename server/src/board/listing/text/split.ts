import { ListingLine } from './line';
import { hasControls, shown } from './shown';

const mark = '\ufeff';

/** The lines of a text, without the mark at its start and as a terminal would show them. */
export function linesOf(text: string): readonly ListingLine[] {
  const lines: ListingLine[] = [];
  let start = text.startsWith(mark) ? mark.length : 0;
  for (const end of text.matchAll(/\r\n|\n|\r|$/g)) {
    // The place behind the last line end is a line only if something stands there.
    if (end[0] === '' && start === text.length) break;
    const line = text.slice(start, end.index);
    const plain = ListingLine.plain(lines.length, line, start, end[0] === '\r' ? 'return' : 'line');
    lines.push(hasControls(line) ? shown(plain) : plain);
    start = end.index + end[0].length;
  }
  return withoutWiped(lines);
}

/** A line that a row of blanks is written over, as pagers do, is gone with them. */
function withoutWiped(lines: readonly ListingLine[]): readonly ListingLine[] {
  const isWiped = (index: number) => {
    const [line, next] = [lines[index], lines[index + 1]];
    if (line?.end !== 'return' || next === undefined || next.text === '') return false;
    return next.text.trim() === '' && next.text.length >= line.text.length;
  };
  const isWiper = (index: number) => index > 0 && isWiped(index - 1) && lines[index]?.end === 'return';
  return lines.filter((_, index) => !isWiped(index) && !isWiper(index));
}
