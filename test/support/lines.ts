import type { LineFix, Statement } from '../../server/src/language/ast';
import { parseLine } from '../../server/src/language/parser';

/** A problem of one line as tests read it: what is marked, and the line after each fix. */
export interface ProblemInLine {
  readonly id: string;
  readonly marked: string;
  readonly mended: readonly string[];
}

/** `isOwn`: the line stands under `own`. */
export function problemsIn(line: string, isOwn = false): readonly ProblemInLine[] {
  return parseLine(line, isOwn).problems.map(({ id, start, end, fixes }) => ({
    id,
    marked: line.slice(start, end),
    mended: fixes.map((fix) => fixed(line, fix)),
  }));
}

/** The line after a fix; its edits are applied from the right, so that places stay true. */
function fixed(line: string, { edits }: LineFix): string {
  return [...edits]
    .sort((one, other) => other.start - one.start)
    .reduce((text, { start, end, newText }) => text.slice(0, start) + newText + text.slice(end), line);
}

type Kind = Statement['kind'];

/** The statement of a line that must be of one kind. */
export function statementOf<K extends Kind>(
  line: string,
  kind: K,
  isOwn = false,
): Extract<Statement, { kind: K }> {
  const statement = parseLine(line, isOwn);
  if (statement.kind !== kind) throw new Error(`"${line}" is read as ${statement.kind}`);
  return statement as Extract<Statement, { kind: K }>;
}
