import type { Document } from '../../language/document';
import { type ScriptLine, sectionOpened } from '../../language/script-line';

/** A section with its lines, 0-based and both included. */
export interface SectionExtent {
  readonly header: ScriptLine;
  readonly first: number;
  /** The last line that says something: neither blank nor a comment on top of the next header. */
  readonly last: number;
}

type LineAt = (number: number) => ScriptLine | undefined;

/** Whether a line opens a section, even one that nobody can name. */
export function opensSection({ statement }: ScriptLine): boolean {
  return sectionOpened(statement) !== null;
}

/** A line that holds a comment and nothing else. */
export function isCommentLine({ statement }: ScriptLine): boolean {
  return statement.kind === 'blank' && statement.comment !== null;
}

/** All sections, in order. */
export function sectionExtents(document: Document): readonly SectionExtent[] {
  const lines = [...document.lines()];
  const at: LineAt = (number) => lines[number];
  return lines.flatMap((line, number) => (opensSection(line) ? [extentFrom(line, number, at)] : []));
}

/** The section that a line stands in; undefined before the first one and between two. */
export function sectionAround(document: Document, number: number): SectionExtent | undefined {
  const at: LineAt = (other) => document.lineAt(other);
  for (let first = number; first >= 0; first -= 1) {
    const line = at(first);
    if (line === undefined || !opensSection(line)) continue;
    const extent = extentFrom(line, first, at);
    return number <= extent.last ? extent : undefined;
  }
  return undefined;
}

function extentFrom(header: ScriptLine, first: number, at: LineAt): SectionExtent {
  let next = first + 1;
  for (let line = at(next); line !== undefined && !opensSection(line); line = at(next)) next += 1;
  let last = next - 1;
  if (at(next) !== undefined) while (last > first && isComment(at(last))) last -= 1;
  while (last > first && isBlank(at(last))) last -= 1;
  return { header, first, last };
}

function isComment(line: ScriptLine | undefined): boolean {
  return line !== undefined && isCommentLine(line);
}

function isBlank(line: ScriptLine | undefined): boolean {
  return line?.statement.kind === 'blank' && line.statement.comment === null;
}
