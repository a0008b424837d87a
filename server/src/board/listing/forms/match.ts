import type { Stretch } from '../listing';
import { afterBlanks, closing, isBlank, quotedAt, trimmed } from '../text/characters';
import { afterLooseRow, type Field, type Literal, type Template } from './template';

/** What stands at the fields of a line, without blanks around it. */
export type Matched = ReadonlyMap<Field, Stretch>;

/**
 * The fields of a line; null when it is not of this form. A field before the value ends at the first place where
 * what follows it can stand, one behind it begins at the last: one pass over the line. Marks in quotes or in
 * brackets end no field.
 */
export function match(template: Template, text: string, from = 0, to = text.length): Matched | null {
  const { fields, literals } = template;
  let [start, end] = trimmed(text, from, to);
  const first = literalAt(text, literals[0], start, end);
  if (first < 0) return null;
  start = first;
  const last = beforeLast(text, literals.at(-1), start, end);
  if (last < 0) return null;
  end = last;
  const found = new Map<Field, Stretch>();
  const turn = turnOf(fields);
  for (let index = 0; index < turn; index += 1) {
    const at = firstPlace(text, literals[index + 1], start, end);
    if (at === null) return null;
    put(found, fields[index], text, start, at.start);
    start = at.end;
  }
  for (let index = fields.length - 1; index > turn; index -= 1) {
    const at = lastPlace(text, literals[index], start, end);
    if (at === null) return null;
    put(found, fields[index], text, at.end, end);
    end = at.start;
  }
  put(found, fields[turn], text, start, end);
  return found;
}

/** The field that takes what the others leave: the value, else the last. */
function turnOf(fields: readonly Field[]): number {
  const value = fields.indexOf('value');
  return value < 0 ? fields.length - 1 : value;
}

function put(
  found: Map<Field, Stretch>,
  field: Field | undefined,
  text: string,
  from: number,
  to: number,
): void {
  if (field === undefined) return;
  const [start, end] = trimmed(text, from, to);
  found.set(field, { start, end });
}

/** Where a literal that begins at `at` ends, blanks behind it included; -1 where it does not stand there. */
export function literalAt(text: string, literal: Literal | undefined, at: number, to: number): number {
  if (literal === undefined || literal.pieces.length === 0) return at;
  const end = coreAt(text, literal, at, to);
  return end >= 0 && isGap(text, end, to, literal.after) ? end : -1;
}

/**
 * The first place from `from` on where a literal can stand, behind a field that is not empty. `isQuoteEnd`: a quote at
 * `from` closes one.
 */
export function firstPlace(
  text: string,
  literal: Literal | undefined,
  from: number,
  to: number,
  isQuoteEnd = false,
): Stretch | null {
  if (literal === undefined) return null;
  const start = afterBlanks(text, from, to);
  const isOnlyGap = literal.pieces.length === 0;
  const steps = new Steps(text, start, to, isQuoteEnd);
  for (let at = steps.next(start); at < to; at = steps.next(at + 1)) {
    if (isOnlyGap) {
      if (isBlank(text[at]) && isGapFrom(text, at, to, literal.before))
        return { start: at, end: afterBlanks(text, at, to) };
      continue;
    }
    if (!isRowStart(text, literal, at, start) || !hasGapBefore(text, at, start, literal.before)) continue;
    const end = coreAt(text, literal, at, to);
    if (end >= 0 && isGap(text, end, to, literal.after)) return { start: at, end };
  }
  return null;
}

/** Where the last literal of a line begins; a mark that closes a line may be missing there. */
function beforeLast(text: string, literal: Literal | undefined, from: number, to: number): number {
  if (literal === undefined || literal.pieces.length === 0) return to;
  const at = lastPlace(text, literal, from - 1, to, true);
  if (at !== null) return at.start;
  const [piece] = literal.pieces;
  const isCloser = literal.pieces.length === 1 && piece?.kind === 'text' && /^[;,]$/.test(piece.text);
  return isCloser && literal.before === 'none' ? to : -1;
}

/** The last place before `to` where a literal can stand. `atEnd`: only at the very end. */
function lastPlace(
  text: string,
  literal: Literal | undefined,
  from: number,
  to: number,
  atEnd = false,
): Stretch | null {
  if (literal === undefined) return null;
  if (literal.pieces.length === 0) return lastGap(text, literal, from, to);
  for (let at = to - 1; at > from; at -= 1) {
    if (!isRowStart(text, literal, at, from)) continue;
    const end = coreAt(text, literal, at, to);
    if (end < 0 || (atEnd && end !== to)) {
      if (atEnd && to - at > longestLiteral) return null;
      continue;
    }
    if (hasGapBefore(text, at, from, literal.before) && isGap(text, end, to, literal.after))
      return { start: at, end };
  }
  return null;
}

/** Rows of marks may be longer than they are written in a template, but not without end. */
const longestLiteral = 400;

function lastGap(text: string, { before }: Literal, from: number, to: number): Stretch | null {
  for (let at = to - 1; at > from; at -= 1) {
    if (isBlank(text[at]) && !isBlank(text[at - 1]) && isGapFrom(text, at, to, before))
      return { start: at, end: afterBlanks(text, at, to) };
  }
  return null;
}

/** A row of marks is looked at from its first one only: one pass, however long it is. */
function isRowStart(text: string, { pieces }: Literal, at: number, from: number): boolean {
  const [first] = pieces;
  if (first?.kind !== 'row' || at === from) return true;
  return text[at - 1] !== first.character && !(isBlank(text[at - 1]) && text[at - 2] === first.character);
}

function coreAt(text: string, { pieces }: Literal, at: number, to: number): number {
  let place = at;
  for (const piece of pieces) {
    if (piece.kind === 'text') {
      if (place + piece.text.length > to || !text.startsWith(piece.text, place)) return -1;
      place += piece.text.length;
    } else if (piece.kind === 'row') {
      if (text[place] !== piece.character) return -1;
      const end = afterLooseRow(text, place, to);
      if (end - place < 2) return -1;
      place = end;
    } else {
      const end = afterBlanks(text, place, to);
      if (end === place) return -1;
      place = end;
    }
  }
  return place;
}

/** Whether such a gap begins at `at`, or nothing more stands there. */
function isGap(text: string, at: number, to: number, gap: Literal['after']): boolean {
  return gap === 'none' || at >= to || isGapFrom(text, at, to, gap);
}

function isGapFrom(text: string, at: number, to: number, gap: Literal['after']): boolean {
  const end = afterBlanks(text, at, to);
  return isWide(text, at, end, gap);
}

function hasGapBefore(text: string, at: number, from: number, gap: Literal['before']): boolean {
  if (gap === 'none') return true;
  let start = at;
  while (start > from && isBlank(text[start - 1])) start -= 1;
  return isWide(text, start, at, gap);
}

function isWide(text: string, from: number, to: number, gap: Literal['before']): boolean {
  if (gap === 'none') return true;
  if (gap !== 'tab' && to - from >= (gap === 'wide' ? 2 : 1)) return true;
  for (let at = from; at < to; at += 1) if (text[at] === '\t') return true;
  return false;
}

/** Goes through the characters of a field, over what stands in quotes at its start and over brackets. */
class Steps {
  private readonly quoteEnd: number;
  /** Brackets that nothing closes are looked for once. */
  private readonly unclosed = new Set<string>();

  constructor(
    private readonly text: string,
    start: number,
    private readonly to: number,
    isQuoteEnd: boolean,
  ) {
    this.quoteEnd = (isQuoteEnd ? null : quotedAt(text, start, to)?.after) ?? start + 1;
  }

  /** The next place from `at` on that may end the field. */
  next(at: number): number {
    let place = Math.max(at, this.quoteEnd);
    for (;;) {
      const character = this.text[place - 1] ?? '';
      const closer = place > this.quoteEnd || this.quoteEnd > 1 ? this.closer(character) : null;
      if (closer === null) return place;
      const end = this.text.indexOf(closer, place);
      if (end < 0 || end >= this.to) {
        this.unclosed.add(character);
        return place;
      }
      place = end + 1;
    }
  }

  private closer(character: string): string | null {
    if ((character !== '(' && character !== '[') || this.unclosed.has(character)) return null;
    return closing.get(character) ?? null;
  }
}
