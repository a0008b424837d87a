import { Line } from './line';
import { hasControls, shown } from './shown';

const mark = '\ufeff';

/** The lines of a text, without the mark at its start and as a terminal would show them. */
export function linesOf(text: string): readonly Line[] {
  const lines: Line[] = [];
  let start = text.startsWith(mark) ? mark.length : 0;
  for (const end of text.matchAll(/\r\n|\n|\r|$/g)) {
    // The place behind the last line end is a line only if something stands there.
    if (end[0] === '' && start === text.length) break;
    const line = text.slice(start, end.index);
    const plain = Line.plain(lines.length, line, start, end[0] === '\r' ? 'return' : 'line');
    lines.push(hasControls(line) ? shown(plain) : plain);
    start = end.index + end[0].length;
  }
  return lines;
}
