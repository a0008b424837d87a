import { nearestUnits } from '../units/nearest-unit';
import { parseUnit, type Unit } from '../units/unit';
import type { ExpressionNode, NumberNode, ProductNode, SumNode } from './ast';
import { problem, replacement } from './problem';
import type { NumberToken, SignToken, Token } from './token';
import type { TokenReader } from './token-reader';

/** Deepest nesting of parentheses and function calls. */
const deepest = 16;

/** Reads sums and products of quantities. null: refused, and the reader has said why. */
export function readExpression(reader: TokenReader, depth = 0): ExpressionNode | null {
  const first = readProduct(reader, depth);
  if (first === null) return null;
  const terms: SumNode['terms'][number][] = [{ sign: '+', node: first }];
  for (let sign = takeOneOf(reader, '+', '-'); sign !== null; sign = takeOneOf(reader, '+', '-')) {
    checkSpacing(reader, sign);
    const node = readProduct(reader, depth);
    if (node === null) return null;
    terms.push({ sign: sign.text as '+' | '-', node });
  }
  return terms.length === 1 ? first : { kind: 'sum', terms, start: first.start, end: reader.lastEnd };
}

function readProduct(reader: TokenReader, depth: number): ExpressionNode | null {
  const first = readSigned(reader, depth);
  if (first === null) return null;
  const factors: ProductNode['factors'][number][] = [{ sign: '*', node: first }];
  for (let sign = takeOneOf(reader, '*', '/'); sign !== null; sign = takeOneOf(reader, '*', '/')) {
    const node = readSigned(reader, depth);
    if (node === null) return null;
    factors.push({ sign: sign.text as '*' | '/', node });
  }
  return factors.length === 1 ? first : { kind: 'product', factors, start: first.start, end: reader.lastEnd };
}

function readSigned(reader: TokenReader, depth: number): ExpressionNode | null {
  const token = reader.peek();
  if (token?.kind === 'sign' && token.text === '-') {
    reader.next();
    const of = readAtom(reader, depth);
    return of && negated(of, token.start);
  }
  if (token?.kind === 'sign' && token.text === '+') {
    reader.next();
    reader.fail(problem('line/plus-sign', token, {}, [replacement('Leave out the plus', token, '')]));
    return null;
  }
  return readAtom(reader, depth);
}

/** The minus of a number belongs to it: -40 degC is no negated 40 degC. */
function negated(of: ExpressionNode, start: number): ExpressionNode {
  if (of.kind !== 'number') return { kind: 'negative', of, start, end: of.end };
  return { ...of, value: -of.value, digits: `-${of.digits}`, start };
}

function readAtom(reader: TokenReader, depth: number): ExpressionNode | null {
  const token = reader.peek();
  if (depth > deepest) {
    reader.refuse(`at most ${deepest} parentheses inside each other`);
    return null;
  }
  if (token?.kind === 'number') {
    reader.next();
    return numberNode(reader, token);
  }
  if (token?.kind === 'name') return readNamed(reader, token, depth);
  if (reader.takeSign('(')) {
    const inside = readExpression(reader, depth + 1);
    if (inside !== null && !reader.takeSign(')')) reader.refuse('`)`');
    return reader.isUnderstood ? inside : null;
  }
  reader.refuse('a value');
  return null;
}

function readNamed(
  reader: TokenReader,
  token: Extract<Token, { kind: 'name' }>,
  depth: number,
): ExpressionNode | null {
  reader.next();
  const { start, end, text, names } = token;
  if (!reader.peekSign('(')) return { kind: 'reference', path: { text, names, start, end }, start, end };
  reader.next();
  const args: ExpressionNode[] = [];
  do {
    const argument = readExpression(reader, depth + 1);
    if (argument === null) return null;
    args.push(argument);
  } while (reader.takeSign(','));
  if (!reader.takeSign(')')) {
    reader.refuse('`,` or `)`');
    return null;
  }
  return { kind: 'call', name: { text, start, end }, args, start, end: reader.lastEnd };
}

function takeOneOf(reader: TokenReader, ...texts: readonly ('+' | '-' | '*' | '/')[]): SignToken | null {
  const token = reader.peek();
  if (token?.kind !== 'sign' || !texts.some((text) => text === token.text)) return null;
  reader.next();
  return token;
}

/** A binary minus has a space on both sides, since names hold hyphens. */
function checkSpacing(reader: TokenReader, sign: SignToken): void {
  if (sign.text !== '-' || (sign.spaceBefore && sign.spaceAfter)) return;
  const spaced = `${sign.spaceBefore ? '' : ' '}-${sign.spaceAfter ? '' : ' '}`;
  reader.report(
    problem('line/minus-spacing', sign, {}, [replacement('Put a space on both sides', sign, spaced)]),
  );
}

function numberNode(reader: TokenReader, token: NumberToken): NumberNode | null {
  const unit = token.unit === null ? null : unitNode(reader, token.unit);
  if (token.value === null) {
    reader.giveUp(); // the lexer has said why
    return null;
  }
  const { start, end, value, digits, unit: unitSpan } = token;
  return { kind: 'number', start, end, value, digits, unit, unitSpan };
}

function unitNode(reader: TokenReader, { text, start, end }: NonNullable<NumberToken['unit']>): Unit | null {
  const { unit, error } = parseUnit(text);
  if (unit !== undefined) return unit;
  const span = { start, end };
  if (error.reason === 'whole-only') {
    reader.fail(problem('line/unit-in-product', span, { unit: error.text }));
    return null;
  }
  const near = nearestUnits(text);
  const fixes = near.map((name) => replacement('Write {to}', span, name));
  reader.fail(problem('line/unknown-unit', span, { unit: text, suggestion: near.join(', ') }, fixes));
  return null;
}
