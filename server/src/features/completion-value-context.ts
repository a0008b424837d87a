import { lex } from '../language/lexer';
import type { NumberToken, Sign, Token } from '../language/token';
import { type Range, rangeInLine } from './range';

/** A place in a value where an operand or a word can stand, or the unit of a number. */
export interface ValueContext {
  readonly kind: 'value' | 'unit';
  readonly range: Range;
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
  /** Names in the value, but for the one that is typed. */
  readonly otherNames: readonly string[];
}

type Nothing = { readonly kind: 'none' };
const nothing: Nothing = { kind: 'none' };

const operandFollows: ReadonlySet<Sign> = new Set(['=', '[', '(', ',', '->', '..', '+', '-', '*', '/']);
/** Nothing that is longer can be completed; patterns that look for an end look no further back. */
const longestWord = 400;
const wordBefore = /[A-Za-z_][A-Za-z0-9_-]*(?:\.(?!\.)[A-Za-z0-9_-]*)*$/;
const wordAfter = /^[A-Za-z0-9_-]*(?:\.(?!\.)[A-Za-z0-9_-]+)*/;
/** A unit that is being put together, up to its last sign: `%/(de`. */
const growingUnit = /\d\s*([A-Za-zµμΩ°%]+[*/^](?:[A-Za-z0-9µμΩ°%*/^(])*)$/;
const restOfUnit = /^[A-Za-zµμΩ°%]*/;

/** `said`: the line without its comment. `equals`: where its value begins. */
export function valueContext(
  said: string,
  equals: number,
  line: number,
  character: number,
): ValueContext | Nothing {
  const tokens = lex(said).tokens.filter(({ start }) => start >= equals);
  const before = said.slice(0, character);
  const make = (kind: ValueContext['kind'], start: number, end: number, lead: string): ValueContext => {
    const earlier = tokens.filter((token) => token.end <= start);
    const others = tokens.filter((token) => token.end <= start || token.start >= end);
    const range = rangeInLine(line, { start, end });
    return { kind, range, typed: said.slice(start, character), lead, ...surroundings(earlier, others) };
  };
  const touched = tokens.find((token) => token.start < character && character <= token.end);
  if (touched !== undefined && isInText(touched, character)) return nothing;
  if (touched?.kind === 'date') return nothing;
  const growing = growingUnit.exec(before.slice(-longestWord))?.[1];
  if (growing !== undefined) {
    const rest = restOfUnit.exec(said.slice(character))?.[0] ?? '';
    const start = character - growing.length;
    return make('unit', start, character + rest.length, gapBefore(said, start));
  }
  if (touched?.kind === 'number') return atNumber(touched, said, character, make);
  return atWord(tokens, said, character, make);
}

type Make = (kind: ValueContext['kind'], start: number, end: number, lead: string) => ValueContext;

/** In or behind a number: only its unit is completed, never its digits. */
function atNumber(
  { unit, digits, digitsEnd }: NumberToken,
  said: string,
  at: number,
  make: Make,
): ValueContext | Nothing {
  if (at < digitsEnd || digits.endsWith('.')) return nothing;
  if (unit === null) return make('unit', at, at, gapBefore(said, at));
  if (at < unit.start) return nothing;
  return make('unit', unit.start, unit.end, gapBefore(said, unit.start));
}

function atWord(tokens: readonly Token[], said: string, at: number, make: Make): ValueContext | Nothing {
  const typed = wordBefore.exec(said.slice(0, at).slice(-longestWord))?.[0] ?? '';
  const rest = wordAfter.exec(said.slice(at))?.[0] ?? '';
  const start = at - typed.length;
  const previous = tokens.findLast((token) => token.end <= start);
  const range = [start, at + rest.length] as const;
  if (previous?.kind === 'number' && previous.unit === null && typed === '') {
    return make('unit', ...range, gapBefore(said, start));
  }
  if (previous?.kind !== 'sign' || !operandFollows.has(previous.text)) return nothing;
  return make('value', ...range, /[=,>]$/.test(said.slice(0, start)) ? ' ' : '');
}

function gapBefore(said: string, at: number): string {
  return /\s$/.test(said.slice(0, at)) ? '' : ' ';
}

function isInText(token: Token, at: number): boolean {
  return token.kind === 'text' && token.start < at;
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
