/** How the rows of a file are written. */
export interface Dialect {
  /** Between cells; a blank stands for any number of blanks and tabs. */
  readonly separator: ',' | ';' | '\t' | ' ';
  readonly decimalComma: boolean;
}

/** The cells of a line as text, without the blanks and quotes around them; for headings and first rows. */
export function splitCells(line: string, { separator }: Dialect): readonly string[] {
  const text = separator === ' ' ? line.trim() : line;
  // Another separator may be the right one, and quotes then stand within what this one makes cells.
  const hasPairs = text.split('"').length % 2 === 1;
  const cells: string[] = [];
  let cell = '';
  let close = '';
  for (let at = 0; at < text.length; at += 1) {
    const character = text[at] ?? '';
    if (close !== '') {
      if (character === close) close = '';
      cell += character;
    } else if (separator === ' ' ? /\s/.test(character) : character === separator) {
      if (separator === ' ' && cell === '') continue;
      cells.push(bare(cell));
      cell = '';
    } else {
      const opens = cell.trim() === '' || (character === '"' && hasPairs);
      close = opens ? (closing.get(character) ?? '') : '';
      cell += character;
    }
  }
  return [...cells, bare(cell)];
}

/** What keeps a separator inside a cell, with what ends it: quotes, and the brackets of a vector. */
const closing = new Map([
  ['"', '"'],
  ['[', ']'],
  ['(', ')'],
]);

function bare(cell: string): string {
  const text = cell.trim();
  return text.length > 1 && text.startsWith('"') && text.endsWith('"')
    ? text.slice(1, -1).replaceAll('""', '"').trim()
    : text;
}
