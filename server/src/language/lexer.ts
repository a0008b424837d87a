import type { LineFix, Name, Problem, Span } from './ast';
import { hiddenCharacters } from './hidden-characters';
import { lookAlikeMinus, lookAlikeQuote, lookAlikeSpace, unseenInText } from './look-alikes';
import { readNumber } from './number';
import { isOwnPath, ownGroup } from './path-text';
import { characterName, characterPhrase, problem, replacement } from './problem';
import { readPath } from './quoted-path';
import type { Sign, Token } from './token';

/** A line cut into tokens. Problems found on the way don't stop the cutting. */
export interface Tokens {
  readonly tokens: readonly Token[];
  readonly comment: Span | null;
  readonly problems: readonly Problem[];
}

const blanks = /[ \t\f\v]+/y;
const names =
  /[A-Za-z_](?:[A-Za-z0-9_]|-(?=[A-Za-z0-9_]))*(?:\.(?:[A-Za-z0-9_](?:[A-Za-z0-9_]|-(?=[A-Za-z0-9_]))*))*/y;
const dates = /\d{4}-\d{2}-\d{2}(?![\d-])/y;
const signs = /->|\.\.|[=[\](),+\-*/@]/y;

/** Cuts one line, without its end, into tokens. Linear in the length of the line. */
export function lex(line: string): Tokens {
  return new Lexer(line).run();
}

class Lexer {
  private at = 0;
  /** For every bracket that is open: whether commas in it part items rather than digits. */
  private readonly open: boolean[] = [];
  private readonly tokens: Token[] = [];
  private readonly problems: Problem[] = [];
  private readonly oddSpaces: number[] = [];
  private readonly unseen: number[] = [];
  private readonly lastStraightQuote: number;

  constructor(private readonly line: string) {
    this.lastStraightQuote = line.lastIndexOf('"');
  }

  run(): Tokens {
    let comment: Span | null = null;
    while (this.at < this.line.length) {
      if (this.skipBlank()) continue;
      if (this.line[this.at] === '#') {
        comment = { start: this.at, end: this.line.length };
        break;
      }
      this.tokens.push(this.next());
    }
    this.reportSpaces();
    this.problems.push(...hiddenCharacters(this.line, this.unseen));
    return { tokens: this.tokens, comment, problems: this.problems };
  }

  private skipBlank(): boolean {
    if (this.match(blanks) !== undefined) return true;
    if (!lookAlikeSpace.has(this.line[this.at] ?? '')) return false;
    this.oddSpaces.push(this.at);
    this.at += 1;
    return true;
  }

  /** Notes the look-alike spaces between a number and its unit. */
  private noteSpaces(from: number, to: number): void {
    for (let at = from; at < to; at += 1)
      if (lookAlikeSpace.has(this.line[at] ?? '')) this.oddSpaces.push(at);
  }

  private next(): Token {
    const start = this.at;
    const character = this.line[start] ?? '';
    if (character === '"' || lookAlikeQuote.has(character)) return this.text(start);
    const date = this.match(dates);
    if (date !== undefined) return { kind: 'date', text: date, start, end: this.at };
    const number = readNumber(this.line, start, this.open.at(-1) ?? false);
    if (number !== undefined) {
      this.problems.push(...number.problems);
      this.at = number.token.end;
      this.noteSpaces(number.token.digitsEnd, number.token.unit?.start ?? 0);
      return number.token;
    }
    const name = this.match(names);
    if (name !== undefined) return this.name(start, name);
    return this.sign(start) ?? this.stray(start);
  }

  /** A name; below `own` its steps may be texts in quotes. */
  private name(start: number, text: string): Token {
    const isOwn = text === ownGroup || isOwnPath(text);
    const { path, problems } =
      isOwn && this.line.startsWith('."', this.at)
        ? readPath(this.line, start)
        : { path: null, problems: [] };
    if (path === null) return { kind: 'name', text, names: namesIn(text, start), start, end: this.at };
    this.problems.push(...problems);
    this.at = path.end;
    return { kind: 'name', ...path };
  }

  private sign(start: number): Token | undefined {
    const text = lookAlikeMinus.has(this.line[start] ?? '') ? this.oddMinus(start) : this.match(signs);
    if (text === undefined) return undefined;
    if (text === '[') this.open.push(true);
    if (text === '(') this.open.push(this.open.at(-1) === true || this.tokens.at(-1)?.kind === 'name');
    if (text === ']' || text === ')') this.open.pop();
    return {
      kind: 'sign',
      text: text as Sign,
      start,
      end: this.at,
      spaceBefore: start === 0 || isBlank(this.line[start - 1]),
      spaceAfter: this.at === this.line.length || isBlank(this.line[this.at]),
    };
  }

  private oddMinus(start: number): string {
    this.at += 1;
    const span = { start, end: this.at };
    this.problems.push(
      problem('line/odd-minus', span, { character: characterPhrase(this.line[start] ?? '') }, [
        replacement('Write a plain minus', span, '-'),
      ]),
    );
    return '-';
  }

  /** A text in double quotes. Curly quotes are understood and reported. */
  private text(start: number): Token {
    let value = '';
    const odd: number[] = lookAlikeQuote.has(this.line[start] ?? '') ? [start] : [];
    for (let at = start + 1; at < this.line.length; at += 1) {
      const character = this.line[at] ?? '';
      const isOdd = lookAlikeQuote.has(character) && (odd.length > 0 || this.lastStraightQuote <= at);
      if (character === '"' || isOdd) {
        if (isOdd) odd.push(at);
        this.at = at + 1;
        this.reportQuotes(odd, { start, end: this.at });
        return { kind: 'text', value, start, end: this.at };
      }
      if (unseenInText.has(character)) this.unseen.push(at);
      const escaped = character === '\\' && /["\\]/.test(this.line[at + 1] ?? '');
      if (escaped) at += 1;
      value += this.line[at] ?? '';
    }
    return this.unclosed(start, value);
  }

  private unclosed(start: number, value: string): Token {
    this.at = this.line.length;
    const end = this.line.trimEnd().length;
    const closing = { start: end, end, newText: '"' };
    // A curly quote that opens it would be one again beside a straight one that closes it.
    const isOdd = lookAlikeQuote.has(this.line[start] ?? '');
    const edits = isOdd ? [{ start, end: start + 1, newText: '"' }, closing] : [closing];
    this.problems.push(
      problem('line/text-not-closed', { start, end: this.at }, {}, [{ title: 'Close the text', edits }]),
    );
    return { kind: 'text', value, start, end: this.at };
  }

  private reportQuotes(odd: readonly number[], span: Span): void {
    const first = odd[0];
    if (first === undefined) return;
    const edits = odd.map((at) => ({ start: at, end: at + 1, newText: '"' }));
    const character = characterName(this.line[first] ?? '');
    this.problems.push(
      problem('line/odd-quotes', span, { character }, [{ title: 'Write straight quotes', edits }]),
    );
  }

  /** One finding a line for all its look-alike spaces, so that a pasted line isn't buried. */
  private reportSpaces(): void {
    const first = this.oddSpaces[0];
    if (first === undefined) return;
    const invisible = (at: number) => lookAlikeSpace.get(this.line[at] ?? '') === 'nothing';
    const fix: LineFix = {
      title: this.oddSpaces.every(invisible) ? 'Take out what shows nothing' : 'Write plain spaces',
      edits: this.oddSpaces.map((at) => ({ start: at, end: at + 1, newText: invisible(at) ? '' : ' ' })),
    };
    const character = characterPhrase(this.line[first] ?? '');
    this.problems.push(problem('line/odd-space', { start: first, end: first + 1 }, { character }, [fix]));
  }

  private stray(start: number): Token {
    const text = String.fromCodePoint(this.line.codePointAt(start) ?? 0);
    this.at = start + text.length;
    return { kind: 'stray', text, start, end: this.at };
  }

  private match(pattern: RegExp): string | undefined {
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.line)?.[0];
    if (found !== undefined) this.at += found.length;
    return found;
  }
}

function isBlank(character: string | undefined): boolean {
  return character === ' ' || character === '\t' || lookAlikeSpace.has(character ?? '');
}

/** The names of a path without quotes, by its dots. */
function namesIn(text: string, from: number): readonly Name[] {
  let start = from;
  return text.split('.').map((name) => {
    const one = { text: name, start, end: start + name.length };
    start = one.end + 1;
    return one;
  });
}
