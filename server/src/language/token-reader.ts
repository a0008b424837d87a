import type { LineFix, Problem, Span } from './ast';
import { problem } from './problem';
import type { Sign, Token } from './token';

/** Walks over the tokens of one line and gathers what is wrong. After the first refusal the rest is skipped. */
export class TokenReader {
  private at = 0;
  private refused = false;
  readonly problems: Problem[] = [];

  constructor(
    private readonly tokens: readonly Token[],
    /** Where the content of the line ends. */
    readonly end: number,
  ) {}

  /** False as soon as something had to be refused: the value must then count as unknown. */
  get isUnderstood(): boolean {
    return !this.refused;
  }

  /** Where the last token that was taken ends. */
  get lastEnd(): number {
    return this.tokens[this.at - 1]?.end ?? 0;
  }

  peek(ahead = 0): Token | undefined {
    return this.tokens[this.at + ahead];
  }

  next(): Token | undefined {
    const token = this.tokens[this.at];
    if (token !== undefined) this.at += 1;
    return token;
  }

  peekSign(text: Sign, ahead = 0): boolean {
    const token = this.peek(ahead);
    return token?.kind === 'sign' && token.text === text;
  }

  takeSign(text: Sign): boolean {
    const found = this.peekSign(text);
    if (found) this.at += 1;
    return found;
  }

  report(found: Problem): void {
    this.problems.push(found);
  }

  /** Refuses the next token, or the end of the line, and skips the rest. */
  refuse(expected: string, fixes: readonly LineFix[] = []): void {
    this.refuseAt(this.peek(), expected, fixes);
  }

  refuseAt(token: Token | undefined, expected: string, fixes: readonly LineFix[] = []): void {
    const start = Math.max(0, this.end - 1);
    const span: Span = token ?? { start, end: Math.max(this.end, start + 1) };
    const found = token === undefined ? 'the end of the line' : `\`${describe(token)}\``;
    const { end } = span;
    this.fail(problem('line/not-understood', { start: span.start, end }, { expected, found }, fixes));
  }

  /** Reports a problem that leaves the value unknown and skips the rest. Only the first one counts. */
  fail(found: Problem): void {
    if (!this.refused) this.report(found);
    this.refused = true;
    this.skipAll();
  }

  /** Leaves the value unknown without a further word: something else has reported the reason. */
  giveUp(): void {
    this.refused = true;
    this.skipAll();
  }

  skipAll(): void {
    this.at = this.tokens.length;
  }

  expectEnd(): void {
    if (this.peek() !== undefined) this.refuse('the end of the line, or a comment after `#`');
  }
}

function describe(token: Token): string {
  switch (token.kind) {
    case 'number':
      return token.unit === null ? token.digits : `${token.digits} ${token.unit.text}`;
    case 'text':
      return `"${token.value}"`;
    default:
      return token.text;
  }
}
