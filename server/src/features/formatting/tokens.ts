import { lex } from '../../language/lexer';
import type { Sign, Token } from '../../language/token';

/** Tokens of one line with the blanks between them as they ought to be; blanks within texts stay. */
export function spaced(line: string, tokens: readonly Token[]): string {
  return tokens
    .map((token, index) => {
      const before = tokens[index - 1];
      if (before === undefined) return tokenText(line, token);
      return gap(tokens, index) + tokenText(line, token);
    })
    .join('');
}

/** Whether two lines say the same, token by token. */
export function sameTokens(one: string, other: string): boolean {
  const meaning = (line: string) =>
    lex(line).tokens.map((token) => `${token.kind} ${tokenText(line, token)}`);
  return meaning(one).join('\n') === meaning(other).join('\n');
}

function tokenText(line: string, token: Token): string {
  if (token.kind !== 'number' || token.unit === null) return line.slice(token.start, token.end);
  const { start, digitsEnd, unit } = token;
  // A blank that is none of ours, such as a no-break space, is for a finding to change.
  if (/[^ \t]/.test(line.slice(digitsEnd, unit.start))) return line.slice(start, unit.end);
  return `${line.slice(start, digitsEnd)} ${line.slice(unit.start, unit.end)}`;
}

/** What belongs between the token at `index` and the one before it. */
function gap(tokens: readonly Token[], index: number): '' | ' ' {
  const before = tokens[index - 1];
  const after = tokens[index];
  if (before === undefined || after === undefined) return '';
  if (isSign(before, '[', '(', '..') || isSign(after, ']', ')', ',', '..')) return '';
  if (isSign(before, ',', '=', '->', '@') || isSign(after, '=', '->', '@')) return ' ';
  if (before.kind === 'name' && isSign(after, '(')) return '';
  if (before.kind === 'name' && after.kind === 'text') return ' ';
  // Around the signs of arithmetic the writer's choice stands: a minus without blanks can be part of a name.
  return after.start > before.end ? ' ' : '';
}

function isSign(token: Token, ...texts: readonly Sign[]): boolean {
  return token.kind === 'sign' && texts.includes(token.text);
}
