import { brokenJoints } from './broken-joints';
import type { Collection } from './model/collection';
import type { Match, PathPatterns, Pattern, PatternSet, Slot } from './path-patterns';
import { takes } from './path-tree';
import { isSmallSlip, wordDistance, wordOf } from './word-distance';

/** What each kind of slip costs against one wrong letter. */
const costs = { order: 1, wordMissing: 1.5, wordExtra: 2 };

/** Bounds the work that one unknown name can cause. */
const longestPath = 100;
const mostWords = 7;

type NearWords = readonly ReadonlyMap<string, number>[];

/** The patterns that a path is near to, word by word, in no order; empty when nothing is near. */
export function nearPatterns(index: PathPatterns, set: PatternSet, path: string): readonly Match[] {
  const words = path.split('.');
  if (path.length > longestPath || words.length > mostWords) return [];
  const lower = words.map((word) => word.toLowerCase());
  const near = lower.map((word) => nearWords(index, word));
  const matches = set.patterns.flatMap((pattern) => matchOne(pattern, words, lower, near) ?? []);
  return matches.length > 0 ? matches : brokenJoints(set, path);
}

function nearWords(index: PathPatterns, text: string): ReadonlyMap<string, number> {
  const near = new Map<string, number>();
  const written = wordOf(text);
  for (const known of index.words) {
    const far = wordDistance(written, known);
    if (far < Number.POSITIVE_INFINITY) near.set(known.text, far);
  }
  return near;
}

function matchOne(
  pattern: Pattern,
  words: readonly string[],
  lower: readonly string[],
  near: NearWords,
): Match | undefined {
  switch (pattern.slots.length - words.length) {
    case 0:
      return wordByWord(pattern, words, near) ?? otherOrder(pattern, words, lower);
    case 1:
      return oneMissing(pattern, words, lower);
    case -1:
      return oneExtra(pattern, words, lower);
    default:
      return undefined;
  }
}

/** Every word is near the one in its place, and at least one is right. */
function wordByWord(pattern: Pattern, words: readonly string[], near: NearWords): Match | undefined {
  const path: string[] = [];
  const wrong: { readonly cost: number; readonly word: string }[] = [];
  let right = 0;
  for (const [at, slot] of pattern.slots.entries()) {
    const found = nearestIn(slot, words[at] ?? '', near[at]);
    if (found === undefined) return undefined;
    path.push(found.word);
    if (found.cost > 0) wrong.push(found);
    else if (!isOpen(slot)) right += 1;
  }
  if (right === 0 && pattern.slots.filter((slot) => !isOpen(slot)).length > 1) return undefined;
  if (wrong.length > 1 && !wrong.every(({ cost, word }) => isSmallSlip(cost, word))) return undefined;
  const cost = wrong.reduce((sum, one) => sum + one.cost, 0);
  return { pattern, path: path.join('.'), why: 'spelling', cost };
}

function nearestIn(
  slot: Slot,
  written: string,
  near: ReadonlyMap<string, number> | undefined,
): { readonly word: string; readonly cost: number } | undefined {
  if (typeof slot === 'string') {
    const cost = near?.get(slot);
    return cost === undefined ? undefined : { word: slot, cost };
  }
  if (takes(slot, written)) return { word: written, cost: 0 };
  return slot.keys.kind === 'closed' ? nearestMember(slot, near) : nearestNumber(slot, written);
}

function nearestMember(slot: Collection, near: ReadonlyMap<string, number> | undefined) {
  if (slot.keys.kind !== 'closed') return undefined;
  let best: { readonly word: string; readonly cost: number } | undefined;
  for (const { name } of slot.keys.members) {
    const cost = near?.get(name);
    if (cost !== undefined && cost < (best?.cost ?? Number.POSITIVE_INFINITY)) best = { word: name, cost };
  }
  return best;
}

/** `1x` for `1`; a whole number outside is no slip of the finger, and has a sentence of its own. */
function nearestNumber(slot: Collection, written: string) {
  const digits = written.replace(/\D/g, '');
  if (digits === written || written.length > digits.length + 1 || !takes(slot, digits)) return undefined;
  return { word: digits, cost: 1 };
}

/** The right words in another order: `throttle.stick.curve`. */
function otherOrder(pattern: Pattern, words: readonly string[], lower: readonly string[]): Match | undefined {
  const left = [...lower.keys()];
  for (const slot of pattern.slots) {
    if (typeof slot !== 'string') continue;
    const at = left.findIndex((index) => lower[index] === slot);
    if (at < 0) return undefined;
    left.splice(at, 1);
  }
  if (pattern.slots.length - left.length < 2) return undefined;
  const path: string[] = [];
  for (const slot of pattern.slots) {
    const word = typeof slot === 'string' ? slot : (words[left.shift() ?? -1] ?? '');
    if (typeof slot !== 'string' && !takes(slot, word)) return undefined;
    path.push(word);
  }
  return { pattern, path: path.join('.'), why: 'order', cost: costs.order };
}

/** `stick.hover-point` for `stick.throttle.hover-point`; the last word must be right. */
function oneMissing(pattern: Pattern, words: readonly string[], lower: readonly string[]): Match | undefined {
  const { slots } = pattern;
  if (words.length < 2 || slots.at(-1) !== lower.at(-1)) return undefined;
  const mismatch = slots.findIndex((slot, at) => !isRight(slot, words[at], lower[at]));
  const skipped = Math.min(mismatch, slots.length - 2);
  const rest = slots.slice(skipped + 1);
  // A free name means nothing without the collection's own word before it.
  if (rest[0] !== undefined && isOpen(rest[0])) return undefined;
  if (!rest.every((slot, at) => isRight(slot, words[skipped + at], lower[skipped + at]))) return undefined;
  const path = slots.map((slot, at) => {
    if (at === skipped) return slotSpelling(slot);
    return typeof slot === 'string' ? slot : (words[at < skipped ? at : at - 1] ?? '');
  });
  return { pattern, path: path.join('.'), why: 'word-missing', cost: costs.wordMissing };
}

/** `gyro.filter.1.filter.cutoff` for `gyro.filter.1.cutoff` */
function oneExtra(pattern: Pattern, words: readonly string[], lower: readonly string[]): Match | undefined {
  const { slots } = pattern;
  if (slots.filter((slot) => typeof slot === 'string').length < 2) return undefined;
  const mismatch = slots.findIndex((slot, at) => !isRight(slot, words[at], lower[at]));
  const extra = mismatch < 0 ? slots.length : mismatch;
  const kept = words.filter((_, at) => at !== extra);
  if (!slots.every((slot, at) => isRight(slot, kept[at], kept[at]?.toLowerCase()))) return undefined;
  const path = slots.map((slot, at) => (typeof slot === 'string' ? slot : (kept[at] ?? '')));
  return { pattern, path: path.join('.'), why: 'word-extra', cost: costs.wordExtra };
}

export function isRight(slot: Slot, word: string | undefined, lower: string | undefined): boolean {
  if (word === undefined) return false;
  return typeof slot === 'string' ? slot === lower : takes(slot, word);
}

function isOpen(slot: Slot): boolean {
  return typeof slot !== 'string' && slot.keys.kind === 'open';
}

/** A slot as the catalogue spells it. */
export function slotSpelling(slot: Slot): string {
  return typeof slot === 'string' ? slot : `<${slot.placeholder}>`;
}
