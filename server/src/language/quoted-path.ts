import type { Name, Path, Problem } from './ast';
import { pathText, plainStep } from './path-text';
import { problem } from './problem';
import { readQuoted } from './quoted-text';

/** A path that was read, as far as it could be. */
export interface ReadPath {
  /** null: it does not begin with a step. */
  readonly path: Path | null;
  readonly end: number;
  readonly problems: readonly Problem[];
}

/** Reads a path whose steps may be texts in quotes: `own."PID α".roll`. Nothing may stand around its dots. */
export function readPath(line: string, start: number): ReadPath {
  const names: Name[] = [];
  const problems: Problem[] = [];
  let end = start;
  for (let at = start; ; at = end + 1) {
    const name = readName(line, at, problems);
    if (name === null) break;
    names.push(name);
    end = name.end;
    if (line[end] !== '.') break;
  }
  if (names.length === 0) return { path: null, end, problems };
  const text = pathText(names.map((name) => name.text));
  return { path: { text, names, start, end }, end, problems };
}

function readName(line: string, start: number, problems: Problem[]): Name | null {
  if (line[start] === '"') {
    const { text, end, isClosed } = readQuoted(line, start);
    if (!isClosed) problems.push(notClosed(line, start));
    return { text, start, end };
  }
  plainStep.lastIndex = start;
  const text = plainStep.exec(line)?.[0];
  return text === undefined ? null : { text, start, end: start + text.length };
}

/** A text whose quote nothing closes. Where it was to end nobody can say: its fix closes it at the end of the line. */
export function notClosed(line: string, start: number): Problem {
  const end = line.trimEnd().length;
  const edits = [{ start: end, end, newText: '"' }];
  return problem('line/text-not-closed', { start, end: line.length }, {}, [
    { title: 'Close the text', edits },
  ]);
}
