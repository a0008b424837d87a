import { splitLines } from '../../language/split-lines';

/** A line as it was meant: one that was wrapped is one again. */
export interface LogicalLine {
  /** Number of its first line in the text, 0-based. */
  readonly number: number;
  readonly text: string;
  /** How many lines of the text it takes. */
  readonly count: number;
}

/** A longer line is no setting; it is kept and told, not looked through. */
export const longestLine = 2000;

/** Puts lines together that a backslash at the end, or nothing but an indented value, continues. */
export function logicalLines(text: string): readonly LogicalLine[] {
  const lines = splitLines(text).map((line) => line.text);
  const made: LogicalLine[] = [];
  for (let number = 0; number < lines.length; number += 1) {
    const first = number;
    let whole = lines[number] ?? '';
    while (whole.endsWith('\\') && number + 1 < lines.length && whole.length < longestLine) {
      number += 1;
      whole = `${whole.slice(0, -1).trimEnd()} ${(lines[number] ?? '').trim()}`;
    }
    made.push({ number: first, text: whole, count: number - first + 1 });
  }
  return joinedIndents(made);
}

/** A line that ends where a value should stand goes on in the next one, if that is indented. */
function joinedIndents(lines: readonly LogicalLine[]): readonly LogicalLine[] {
  const made: LogicalLine[] = [];
  for (const line of lines) {
    const before = made.at(-1);
    const isOpen =
      before !== undefined && /[=:>,+]\s*$/.test(before.text.slice(-8)) && before.text.length < longestLine;
    if (isOpen && /^(?: {2,}|\t)\S/.test(line.text)) {
      const text = `${before.text.trimEnd()} ${line.text.trim()}`;
      made[made.length - 1] = { ...before, text, count: before.count + line.count };
    } else made.push(line);
  }
  return made;
}
