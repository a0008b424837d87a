import { lex } from '../../language/lexer';
import type { NumberToken, Sign, Token } from '../../language/token';
import { type Range, rangeInLine } from '../range';

/** A place in a value where an operand or a word can stand, or the unit of a number. */
export interface ValueContext {
  readonly kind: 'value' | 'unit';
  /** What an operand, an item of a list or a unit replaces: the whole of the one that stands at the cursor or next. */
  readonly range: Range;
  /** What a whole value replaces: all from there to the end of the value. */
  readonly valueRange: Range;
  /** What the name of a function replaces; what it is called with stays. */
  readonly nameRange: Range;
  /** Whether that name is called. */
  readonly isCalled: boolean;
  /** What stands before the cursor. */
  readonly typed: string;
  /** The blank that is missing in front. */
  readonly lead: string;
  /** Whether nothing of the value stands before. */
  readonly isFirst: boolean;
  readonly isInList: boolean;
  /** Right of an arrow, or left of one and anywhere else. */
  readonly side: 'across' | 'up';
  /** Whether the low end of a range stands before. */
  readonly isHighEnd: boolean;
  /** Names in the value, but for what is replaced. */
  readonly otherNames: readonly string[];
}

type Nothing = { readonly kind: 'none' };
const nothing: Nothing = { kind: 'none' };

const operandFollows: ReadonlySet<Sign> = new Set(['=', '[', '(', ',', '->', '..', '+', '-', '*', '/']);
/** Nothing that is longer can be completed; patterns that look for an end look no further back. */
const longestWord = 400;
const wordBefore = /[A-Za-z_][A-Za-z0-9_-]*(?:\.(?!\.)[A-Za-z0-9_-]*)*$/;
const nameAfter = /^[A-Za-z0-9_-]*(?:\.(?!\.)[A-Za-z0-9_-]+)*/;
/** A unit that is being put together, up to its last sign: `%/(de`. */
const growingUnit = /\d\s*([A-Za-zµμΩ°%]+[*/^](?:[A-Za-z0-9µμΩ°%*/^(])*)$/;
const restOfUnit = /^[A-Za-z0-9µμΩ°%*/^]*/;

/** `said`: the line without its comment. `equals`: where its value begins. */
export function valueContext(
  said: string,
  equals: number,
  line: number,
  character: number,
): ValueContext | Nothing {
  const tokens = lex(said).tokens.filter(({ start }) => start >= equals);
  const make: Make = (kind, { start, end, nameEnd }, lead) => {
    const earlier = tokens.filter((token) => token.end <= start);
    const others = tokens.filter((token) => token.end <= start || token.start >= end);
    const upTo = (to: number) => rangeInLine(line, { start, end: to });
    return {
      kind,
      range: upTo(end),
      valueRange: upTo(Math.max(end, tokens.at(-1)?.end ?? end)),
      nameRange: upTo(nameEnd),
      isCalled: said[nameEnd] === '(',
      typed: said.slice(start, character),
      lead,
      ...surroundings(earlier, others),
    };
  };
  const touched = tokens.find((token) => token.start < character && character <= token.end);
  if (touched?.kind === 'text' || touched?.kind === 'date') return nothing;
  // Between the dots of a range, or within an arrow.
  if (touched?.kind === 'sign' && character < touched.end) return nothing;
  if (touched?.kind === 'number') return atNumber(touched, said, character, make);
  const growing = growingUnit.exec(said.slice(0, character).slice(-longestWord))?.[1];
  if (growing !== undefined) return atGrowingUnit(growing, said, character, make);
  return atWord(tokens, said, character, make);
}

/** What is replaced; `nameEnd`: where its name ends, which may be called with something. */
interface Replaced {
  readonly start: number;
  readonly end: number;
  readonly nameEnd: number;
}

type Make = (kind: ValueContext['kind'], replaced: Replaced, lead: string) => ValueContext;

function plainly(start: number, end: number): Replaced {
  return { start, end, nameEnd: end };
}

/** In or behind a number: only its unit is completed, never its digits. */
function atNumber(
  { unit, digits, digitsEnd }: NumberToken,
  said: string,
  at: number,
  make: Make,
): ValueContext | Nothing {
  if (at < digitsEnd || digits.endsWith('.')) return nothing;
  const start = Math.min(at, unit?.start ?? at);
  return make('unit', plainly(start, unit?.end ?? at), gapBefore(said, start));
}

/** Up to the end of what is left of the unit. Of its brackets the one that closes is the unit's own if one is open. */
function atGrowingUnit(growing: string, said: string, at: number, make: Make): ValueContext {
  const start = at - growing.length;
  const end = at + (restOfUnit.exec(said.slice(at))?.[0].length ?? 0);
  const isOpen = said.slice(start, end).includes('(') && said[end] === ')';
  return make('unit', plainly(start, isOpen ? end + 1 : end), gapBefore(said, start));
}

function atWord(tokens: readonly Token[], said: string, at: number, make: Make): ValueContext | Nothing {
  const typed = wordBefore.exec(said.slice(0, at).slice(-longestWord))?.[0] ?? '';
  const start = at - typed.length;
  const previous = tokens.findLast((token) => token.end <= start);
  if (previous?.kind === 'number' && previous.unit === null && typed === '')
    return make('unit', plainly(at, at), gapBefore(said, at));
  if (previous?.kind !== 'sign' || !operandFollows.has(previous.text)) return nothing;
  const nameEnd = at + (typed === '' ? 0 : (nameAfter.exec(said.slice(at))?.[0].length ?? 0));
  const end = Math.max(nameEnd, operandEnd(tokens, start));
  return make('value', { start, end, nameEnd }, /[=,>]$/.test(said.slice(0, start)) ? ' ' : '');
}

/**
 * Where the operand ends that is the next one from a place on. Two operands never stand side by side, so what is put
 * there takes its place, however many blanks are between. The place itself where something else comes next.
 */
function operandEnd(tokens: readonly Token[], from: number): number {
  let index = tokens.findIndex(({ start }) => start >= from);
  while (signAt(tokens, index) === '-') index += 1;
  const first = tokens[index];
  if (first === undefined || first.kind === 'stray') return from;
  if (first.kind === 'sign') return isOpening(first.text) ? bracketEnd(tokens, index) : from;
  const isCall = first.kind === 'name' && signAt(tokens, index + 1) === '(';
  return isCall && tokens[index + 1]?.start === first.end ? bracketEnd(tokens, index + 1) : first.end;
}

/** Where the bracket ends that a token opens; the end of all where none closes it. */
function bracketEnd(tokens: readonly Token[], from: number): number {
  let depth = 0;
  for (let index = from; index < tokens.length; index += 1) {
    const sign = signAt(tokens, index);
    if (isOpening(sign)) depth += 1;
    else if (sign === ')' || sign === ']') depth -= 1;
    if (depth === 0) return tokens[index]?.end ?? 0;
  }
  return tokens.at(-1)?.end ?? 0;
}

function signAt(tokens: readonly Token[], index: number): Sign | undefined {
  const token = tokens[index];
  return token?.kind === 'sign' ? token.text : undefined;
}

function isOpening(sign: Sign | undefined): boolean {
  return sign === '(' || sign === '[';
}

function gapBefore(said: string, at: number): string {
  return /\s$/.test(said.slice(0, at)) ? '' : ' ';
}

function surroundings(
  earlier: readonly Token[],
  others: readonly Token[],
): Pick<ValueContext, 'isFirst' | 'isInList' | 'side' | 'isHighEnd' | 'otherNames'> {
  const signs = earlier.flatMap((token) => (token.kind === 'sign' ? [token.text] : []));
  const count = (sign: Sign) => signs.filter((one) => one === sign).length;
  const separator = signs.findLast((sign) => sign === '->' || sign === ',');
  return {
    isFirst: earlier.length <= 1,
    isInList: count('[') > count(']'),
    side: separator === '->' ? 'up' : 'across',
    isHighEnd: signs.at(-1) === '..',
    otherNames: others.flatMap((token) => (token.kind === 'name' ? [token.text] : [])),
  };
}
