import { isSpelledLikeUnit } from '../units/nearest-unit';
import { readAcceptance } from './acceptance';
import type { Name, Path, SectionKind, Span, Statement, ValueNode } from './ast';
import { lex, type Tokens } from './lexer';
import { cutsName } from './look-alikes';
import { readOwnLine } from './own-line';
import { isOwnGroup } from './path-text';
import { problem, replacement } from './problem';
import type { Token } from './token';
import { TokenReader } from './token-reader';
import { readValue } from './value-parser';

/** A line with more problems than this is no settings line; the first few tell enough. */
const mostProblems = 8;

/** A line longer than this holds no setting of a craft; reading all of it would only take time and memory. */
const longestLine = 100_000;

/**
 * Reads one line, without its end. Never throws: what can't be understood becomes problems. `isOwn`: it sets
 * something that only the board knows, as `setsOwn` tells.
 */
export function parseLine(line: string, isOwn = false): Statement {
  const read = isOwn ? readOwnLine : readLine;
  return line.length > longestLine && !line.trimStart().startsWith('#') ? tooLong(line, read) : read(line);
}

/** What an overlong line sets is still told by its beginning; its value is unknown. */
function tooLong(line: string, read: (line: string) => Statement): Statement {
  const head = read(line.slice(0, longestLine));
  const span = { start: longestLine, end: line.length };
  const values = { given: String(line.length), longest: String(longestLine) };
  const problems = [problem('line/too-long', span, values)];
  const common = { comment: null, acceptance: null, problems };
  if (head.kind === 'setting' || head.kind === 'constant') return { ...head, ...common, value: null };
  return { kind: 'broken', opensSection: null, ...common };
}

function readLine(line: string): Statement {
  const lexed = lex(line);
  const reader = new TokenReader(lexed.tokens, contentEnd(lexed, line));
  const body = readBody(reader);
  const { acceptance, problems } = readAcceptance(line, lexed.comment);
  const isCut =
    cutsName.test(line.slice(0, lexed.comment?.start)) &&
    lexed.problems.some(({ id }) => id === 'line/odd-space');
  return {
    ...(isCut ? asCut(body) : body),
    comment: lexed.comment,
    acceptance,
    // The halves of a name with something unseen in it are no names; they would only be called unknown.
    problems: [...lexed.problems, ...(isCut ? [] : reader.problems), ...problems].slice(0, mostProblems),
  };
}

function asCut(body: StatementBody): StatementBody {
  return body.kind === 'section' ? { kind: 'broken', opensSection: kindOf(body.path) } : body;
}

type StatementBody = DistributiveOmit<Statement, 'comment' | 'acceptance' | 'problems'>;
type DistributiveOmit<T, K extends PropertyKey> = T extends unknown ? Omit<T, K> : never;

function contentEnd({ tokens, comment }: Tokens, line: string): number {
  return tokens.at(-1)?.end ?? comment?.start ?? line.length;
}

function readBody(reader: TokenReader): StatementBody {
  const first = reader.peek();
  if (first === undefined) return { kind: 'blank' };
  if (first.kind === 'sign' && first.text === '[') return readSection(reader);
  if (first.kind === 'name' && first.text === 'include') return readInclude(reader, first);
  if (first.kind === 'name' && first.text === 'let' && reader.peek(1)?.kind === 'name')
    return readConstant(reader);
  if (first.kind === 'name') return readSetting(reader, first);
  const numbered = numberAsName(first, reader.peek(1));
  if (numbered !== null) return readSetting(reader, numbered);
  reader.refuse('a setting such as `mass = 212 g`, a section such as `[gyro]`, `let` or `include`');
  return { kind: 'broken', opensSection: null };
}

/** `2 = 100 mW` under `[video.power-steps]`: the members of some collections are numbers. */
function numberAsName(first: Token, second: Token | undefined): Token | null {
  const isWhole = first.kind === 'number' && first.unit === null && /^\d+$/.test(first.digits);
  if (!isWhole || second?.kind !== 'sign' || second.text !== '=') return null;
  const name = { start: first.start, end: first.end, text: first.digits };
  return { kind: 'name', ...name, names: [name] };
}

function readSection(reader: TokenReader): StatementBody {
  const open = reader.next();
  const name = reader.next();
  if (name?.kind === 'text') {
    const before = replacement('Put `own.` before it', { start: name.start, end: name.start }, 'own.');
    reader.refuseAt(name, '`own.` before a name in quotes', [before]);
    return { kind: 'broken', opensSection: 'own' };
  }
  if (name?.kind !== 'name' || open === undefined) {
    reader.refuseAt(name, 'the name of a section, such as `gyro.filter.1`');
    return { kind: 'broken', opensSection: 'known' };
  }
  const path = pathOf(name);
  const unnamed: StatementBody = { kind: 'broken', opensSection: kindOf(path) };
  let pack: Name | null = null;
  if (reader.takeSign('@')) {
    const token = reader.next();
    if (token?.kind !== 'name') {
      reader.refuseAt(token, 'the name of a pack after `@`');
      return unnamed;
    }
    pack = nameOf(token);
  }
  const closing = reader.peek();
  if (closing !== undefined && !reader.peekSign(']')) {
    // What stands before it is half a name at best, and would only be called unknown.
    reader.refuse(moreOf(path));
    return unnamed;
  }
  if (closing === undefined) reportUnclosed(reader);
  reader.next();
  reader.expectEnd();
  return { kind: 'section', path, pack };
}

function kindOf({ names }: Path): SectionKind {
  return isOwnGroup(names[0]?.text) ? 'own' : 'known';
}

function moreOf(path: Path): string {
  return kindOf(path) === 'own'
    ? '`]`, or a name in double quotes, such as `own."PID 1"`'
    : '`]`, or more of a name in letters a to z, digits, hyphens and dots';
}

function reportUnclosed(reader: TokenReader): void {
  const end = reader.lastEnd;
  const fix = replacement('Close the section', { start: end, end }, ']');
  reader.report(problem('line/section-not-closed', visible({ start: end, end }), {}, [fix]));
}

function readInclude(reader: TokenReader, keyword: Token): StatementBody {
  if (reader.peekSign('=', 1)) return readSetting(reader, keyword);
  reader.next();
  const path = reader.next();
  if (path?.kind !== 'text') {
    reader.refuseAt(path, 'a path in double quotes, such as `"club-habits.craft"`');
    return { kind: 'broken', opensSection: null };
  }
  reader.expectEnd();
  return { kind: 'include', path };
}

function readConstant(reader: TokenReader): StatementBody {
  reader.next();
  const token = reader.next();
  if (token?.kind !== 'name') return { kind: 'broken', opensSection: null };
  const name = nameOf(token);
  if (name.text.includes('.')) {
    reader.report(problem('line/constant-name', name, { given: name.text }));
    reader.skipAll();
  }
  if (isSpelledLikeUnit(name.text))
    reader.report(problem('line/constant-like-unit', name, { given: name.text }));
  const { equals, value } = readAssignment(reader);
  return { kind: 'constant', name, equals, value };
}

function readSetting(reader: TokenReader, name: Token): StatementBody {
  if (name.kind !== 'name') return { kind: 'broken', opensSection: null };
  reader.next();
  const { equals, value } = readAssignment(reader);
  return { kind: 'setting', path: pathOf(name), equals, value };
}

function readAssignment(reader: TokenReader): { equals: number; value: ValueNode | null } {
  const token = reader.peek();
  if (token?.kind !== 'sign' || token.text !== '=') {
    if (reader.problems.length === 0) reader.refuse('`=` and a value');
    return { equals: -1, value: null };
  }
  reader.next();
  return { equals: token.start, value: readWholeValue(reader, token) };
}

function readWholeValue(reader: TokenReader, equals: Span): ValueNode | null {
  if (reader.peek() === undefined) {
    reader.report(problem('line/value-missing', visible(equals)));
    return null;
  }
  const value = readValue(reader);
  if (value !== null) reader.expectEnd();
  return reader.isUnderstood ? value : null;
}

function nameOf({ start, end, text }: Extract<Token, { kind: 'name' }>): Name {
  return { start, end, text };
}

function pathOf({ start, end, text, names }: Extract<Token, { kind: 'name' }>): Path {
  return { start, end, text, names };
}

/** A mark must cover something to be seen. */
function visible({ start, end }: Span): Span {
  return end > start ? { start, end } : { start: Math.max(0, start - 1), end: Math.max(1, end) };
}
