import { readAcceptance } from './acceptance';
import type { BareNode, Path, Problem, Span, Statement } from './ast';
import { hiddenCharacters } from './hidden-characters';
import { pathText } from './path-text';
import { problem, replacement } from './problem';
import { notClosed, readPath } from './quoted-path';
import { quoted, readQuoted } from './quoted-text';

/** Lines that say the same under `own` as anywhere: blank ones, comments, headers, includes and constants. */
const saysTheSame = /^\s*(?:$|[#[]|include\s*["\u201c-\u201f]|let\s+[A-Za-z_])/;
const wholePath = /^\s*own\./;

/** Whether a line under a section sets something that only the board knows, so that its value is kept as written. */
export function setsOwn(
  line: string,
  section: { readonly path: string | null; readonly isOwn: boolean },
): boolean {
  return section.isOwn ? !saysTheSame.test(line) : section.path === '' && wholePath.test(line);
}

/** Reads a line for which `setsOwn` holds. Never throws: what can't be understood becomes problems. */
export function readOwnLine(line: string): Statement {
  const start = skipBlanks(line, 0);
  const { path, end, problems } = readPath(line, start);
  if (problems.length > 0) return broken(line, null, problems);
  const equals = skipBlanks(line, end);
  if (path === null || line[equals] !== '=') return withoutValue(line, start, end, path);
  const { value, comment, problems: inValue } = readBare(line, equals);
  return { kind: 'setting', path, equals, value, ...rest(line, comment, inValue) };
}

/** How a value is written so that it is read as the same text again. It must not hold a line end. */
export function bareLiteral(text: string): string {
  return text === '' || text !== text.trim() || /["#]/.test(text) ? quoted(text) : text;
}

interface ReadBare {
  readonly value: BareNode | null;
  readonly comment: Span | null;
  readonly problems: readonly Problem[];
}

/** The value behind the equals sign: a text in quotes, or all up to a comment or the end of the line. */
function readBare(line: string, equals: number): ReadBare {
  const start = skipBlanks(line, equals + 1);
  const isQuoted = line[start] === '"';
  const { text, end, isClosed } = isQuoted
    ? readQuoted(line, start)
    : { text: '', end: start, isClosed: true };
  if (!isClosed) return { value: null, comment: null, problems: [notClosed(line, start)] };
  const comment = commentFrom(line, end);
  const written = line.slice(start, comment?.start).trimEnd();
  if (written === '') return { value: null, comment, problems: [missing(line, equals, comment)] };
  if (isQuoted && start + written.length === end)
    return { value: { kind: 'bare', text, start, end }, comment, problems: [] };
  const span = { start, end: start + written.length };
  if (written.includes('"')) return { value: null, comment, problems: [looseQuote(written, span)] };
  return { value: { kind: 'bare', text: written, ...span }, comment, problems: [] };
}

/** Nothing stands there, or what begins with the mark of a comment and was hardly meant as one. */
function missing(line: string, equals: number, comment: Span | null): Problem {
  const word = comment === null ? '' : (/^#\S+/.exec(line.slice(comment.start))?.[0] ?? '');
  if (comment !== null && word !== '') {
    const span = { start: comment.start, end: comment.start + word.length };
    const values = { found: `\`${word}\``, expected: 'a value, in double quotes where it holds `#`' };
    return problem('line/not-understood', span, values, [
      replacement('Put the value in quotes', span, quoted(word)),
    ]);
  }
  const behind = { start: equals + 1, end: equals + 1 };
  return problem('line/value-missing', { start: equals, end: equals + 1 }, {}, [
    replacement('Write "" for a text that is empty', behind, ' ""'),
  ]);
}

/** A quote within a value, or something behind the one that closes it. */
function looseQuote(written: string, { start, end }: Span): Problem {
  const isQuoted = written.startsWith('"');
  const at = isQuoted ? skipBlanks(written, readQuoted(written, 0).end) : written.indexOf('"');
  const expected = isQuoted
    ? 'the end of the line, or a comment after `#`'
    : 'a value without quotes, or all of it in quotes';
  const values = { found: `\`${written.slice(at)}\``, expected };
  const fixes = [replacement('Put all of the value in quotes', { start, end }, quoted(written))];
  return problem('line/not-understood', { start: start + at, end }, values, fixes);
}

/** A line whose name can't be read, or behind whose name no equals sign stands. */
function withoutValue(line: string, start: number, end: number, path: Path | null): Statement {
  const comment = commentFrom(line, end);
  const code = line.slice(0, comment?.start).trimEnd();
  const equals = code.indexOf('=', end);
  if (equals >= 0) return broken(line, comment, [oddName(line, { start, end: equals })]);
  const expected = '`=` and a value';
  const last = { start: Math.max(0, code.length - 1), end: code.length };
  const span = end < code.length ? { start: skipBlanks(line, end), end: code.length } : last;
  const found = end < code.length ? `\`${line.slice(span.start, span.end)}\`` : 'the end of the line';
  const problems = [problem('line/not-understood', span, { found, expected })];
  if (path === null) return broken(line, comment, problems);
  return { kind: 'setting', path, equals: -1, value: null, ...rest(line, comment, problems) };
}

/** A name that needs quotes: `gyro rate`, `größe`. Its dots part its steps, as everywhere. */
function oddName(line: string, before: Span): Problem {
  const name = line.slice(before.start, before.end).trimEnd();
  const span = { start: before.start, end: Math.max(before.start + name.length, before.start + 1) };
  const expected = 'a name of letters a to z, digits and hyphens, or any other in double quotes';
  const steps = name.split('.').map((step) => step.trim());
  const fixes = steps.includes('') ? [] : [replacement('Put the name in quotes', span, pathText(steps))];
  return problem('line/not-understood', span, { found: `\`${name || '='}\``, expected }, fixes);
}

function broken(line: string, comment: Span | null, problems: readonly Problem[]): Statement {
  return { kind: 'broken', opensSection: null, ...rest(line, comment, problems) };
}

function rest(line: string, comment: Span | null, problems: readonly Problem[]) {
  const { acceptance, problems: inComment } = readAcceptance(line, comment);
  return { comment, acceptance, problems: [...problems, ...hiddenCharacters(line), ...inComment] };
}

function commentFrom(line: string, from: number): Span | null {
  const start = line.indexOf('#', from);
  return start < 0 ? null : { start, end: line.length };
}

function skipBlanks(line: string, from: number): number {
  let at = from;
  while (at < line.length && /\s/.test(line.charAt(at))) at += 1;
  return at;
}
