import { ListingLine } from './line';

const mostJoined = 200;

/** Lines that end with a mark, and the ones that go on with them, as one; the mark is gone. */
export function joinedAt(lines: readonly ListingLine[], mark: string): readonly ListingLine[] {
  const made: ListingLine[] = [];
  for (let at = 0; at < lines.length; at += 1) {
    const first = lines[at];
    if (first === undefined) break;
    const parts: [ListingLine, ...ListingLine[]] = [first];
    const from = at;
    while (endsWith(parts.at(-1), mark) && parts.length < mostJoined && lines[at + 1] !== undefined) {
      at += 1;
      const next = lines[at];
      if (next !== undefined) parts.push(next.from(next.text.length - next.text.trimStart().length));
    }
    const [head, ...rest] = parts;
    if (rest.length === 0) {
      made.push(head);
      continue;
    }
    const cut = (line: ListingLine) =>
      endsWith(line, mark) ? line.upTo(line.text.trimEnd().length - mark.length) : line;
    const written = lines.slice(from, at + 1).map(({ text }) => text);
    made.push(ListingLine.joined([cut(head), ...rest.map(cut)], ' ', written.join('\n')));
  }
  return made;
}

function endsWith(line: ListingLine | undefined, mark: string): boolean {
  return line?.text.trimEnd().endsWith(mark) === true;
}
