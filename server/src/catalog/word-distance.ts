import { distance } from 'fastest-levenshtein';

/** A word made ready for many comparisons. */
export interface Word {
  readonly text: string;
  /** One bit for each letter that occurs: words that differ in many letters are told apart without counting. */
  readonly letters: number;
  /** The parts between hyphens. */
  readonly parts: readonly string[];
}

export function wordOf(text: string): Word {
  return { text, letters: lettersOf(text), parts: text.split('-') };
}

/**
 * How far a written word is from a known one: 0 the same, otherwise about the number of slips of the finger
 * (two neighbouring letters swapped are one slip). Infinity when the known word can hardly be meant.
 * Words in parts are compared part by part, so that a long part in common does not make up for a part
 * that says something else.
 */
export function wordDistance(written: Word, known: Word): number {
  if (written.text === known.text) return 0;
  const most = forgiven(Math.min(written.text.length, known.text.length));
  if (Math.abs(written.text.length - known.text.length) > most) return Number.POSITIVE_INFINITY;
  if (bitCount(written.letters ^ known.letters) > 2 * most) return Number.POSITIVE_INFINITY;
  if (written.parts.length !== known.parts.length)
    return isOneSlip(written.text, known.text) ? 1 : Number.POSITIVE_INFINITY;
  if (known.parts.length === 1) return within(slips(written.text, known.text), most);
  return Math.min(partDistance(written.parts, known.parts, most), otherOrder(written.parts, known.parts));
}

function partDistance(written: readonly string[], known: readonly string[], most: number): number {
  let sum = 0;
  for (const [index, part] of known.entries()) {
    const other = written[index] ?? '';
    sum += within(slips(other, part), forgiven(Math.max(other.length, part.length)));
  }
  return within(sum, most);
}

/** `limit-tilt` for `tilt-limit` */
function otherOrder(written: readonly string[], known: readonly string[]): number {
  return [...written].sort().join() === [...known].sort().join() ? 1 : Number.POSITIVE_INFINITY;
}

/** Slips that a word of this length is forgiven when all around it is right. */
function forgiven(length: number): number {
  if (length < 2) return 0;
  if (length < 6) return 1;
  return length < 10 ? 2 : 3;
}

/** Whether a distance is small enough for a word that is not the only wrong one. */
export function isSmallSlip(distanceToKnown: number, known: string): boolean {
  return distanceToKnown <= (known.length < 4 ? 0 : known.length < 8 ? 1 : 2);
}

/** Whether exactly one slip lies between them: told by one look along both, which most pairs end early. */
export function isOneSlip(one: string, other: string): boolean {
  const longer = one.length - other.length;
  if (Math.abs(longer) > 1 || one === other) return false;
  let at = 0;
  while (one[at] === other[at]) at += 1;
  if (longer > 0) return one.slice(at + 1) === other.slice(at);
  if (longer < 0) return one.slice(at) === other.slice(at + 1);
  return one.slice(at + 1) === other.slice(at + 1) || isSwap(one, other);
}

/** Edit distance in which two neighbouring letters swapped count as one. */
function slips(one: string, other: string): number {
  const edits = distance(one, other);
  return edits === 2 && isSwap(one, other) ? 1 : edits;
}

function isSwap(one: string, other: string): boolean {
  if (one.length !== other.length) return false;
  let at = 0;
  while (one[at] === other[at]) at += 1;
  const swapped = one.slice(0, at) + (one[at + 1] ?? '') + (one[at] ?? '') + one.slice(at + 2);
  return swapped === other;
}

function within(value: number, most: number): number {
  return value <= most ? value : Number.POSITIVE_INFINITY;
}

function lettersOf(text: string): number {
  let bits = 0;
  for (let at = 0; at < text.length; at += 1) bits |= 1 << (text.charCodeAt(at) & 31);
  return bits;
}

function bitCount(bits: number): number {
  let count = 0;
  for (let rest = bits; rest !== 0; rest &= rest - 1) count += 1;
  return count;
}
