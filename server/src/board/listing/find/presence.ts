import type { LineFormData } from '../forms/compiled';
import { isBox, isNameBehind, isPresenceName, type PresenceMarks } from '../forms/presence-name';
import type { Sample } from './sample';

/** What stands before a name that is off, such as the minus of `-echo`. */
const negations = ['-', '!', '~', 'no ', 'not ', 'kein ', 'non '] as const;

/** Lines of bare and negated names, and how they are written. */
export interface Presence {
  readonly form: LineFormData;
  readonly lines: ReadonlySet<number>;
}

/** Finds lines that hold nothing but names, some of them negated; null where no name is. */
export function presenceIn(sample: readonly Sample[]): Presence | null {
  const marked = markedBoth(sample);
  if (marked !== null) return marked;
  for (const negation of negations) {
    const negated = sample.filter(({ text }) => isNegated(text, negation));
    // Of two words with a minus, the second may be the value of the first: `-depth full`, `flags -m64`.
    const found = negation === '-' ? negated.filter(({ text }) => !isPair(text)) : negated;
    if (found.length === 0 || isOfNames(sample, negation, found.length)) continue;
    const isSeveral = !negation.endsWith(' ') && found.some(({ text }) => text.includes(' '));
    const lines = sample.filter(({ text }) =>
      areNames(text, negation, isSeveral ? Number.POSITIVE_INFINITY : 1),
    );
    const form = { form: '{name}', negation, ...(isSeveral ? { between: ' ' } : {}) };
    return { form, lines: new Set(lines.map(({ index }) => index)) };
  }
  return null;
}

/** Names behind a mark for on and another for off: `+echo`, `-log`, `+ echo`; without a blank there may be several in a line. */
function markedBoth(sample: readonly Sample[]): Presence | null {
  return (
    markedWith(sample, ['+', '-'], /\s+/) ??
    [['+ ', '- '] as const, ...boxes]
      .map((marks) => markedWith(sample, marks, null))
      .find((one) => one !== null) ??
    null
  );
}

type Marks = readonly [on: string, off: string];

/** What is ticked, and what is not. */
const boxes: readonly Marks[] = [
  ['[x] ', '[ ] '],
  ['[X] ', '[ ] '],
  ['[*] ', '[ ] '],
  ['[+] ', '[-] '],
  ['(x) ', '( ) '],
  ['(X) ', '( ) '],
  ['(*) ', '( ) '],
  ['(o) ', '( ) '],
  ['\u2611 ', '\u2610 '],
  ['\u2612 ', '\u2610 '],
  ['\u2713 ', '\u2717 '],
  ['\u2714 ', '\u2718 '],
  ['\u25cf ', '\u25cb '],
];

/** `between`: what parts several names of a line; null: a line has one. */
function markedWith(sample: readonly Sample[], [on, off]: Marks, between: RegExp | null): Presence | null {
  const namesOf = ({ text }: Sample) => (between === null ? [text] : text.split(between));
  const mark: PresenceMarks = { affirmation: on, negation: off };
  const isMarked = (word: string) => {
    const own = [on, off].find((one) => word.startsWith(one));
    const name = own === undefined ? '' : word.slice(own.length);
    return /^\p{L}/u.test(name) && isNameBehind(name, mark);
  };
  const lines = sample.filter((line) => namesOf(line).every(isMarked));
  const names = lines.flatMap(namesOf);
  const count = names.filter((name) => name.startsWith(on)).length;
  // What is ticked shows in one line; of other marks, only both together say it.
  const isSure = isBox(mark) && names.length >= leastTicked;
  if (names.length === 0 || ((count === 0 || count === names.length) && !isSure)) return null;
  const several = names.length > lines.length ? { between: ' ' } : {};
  return {
    form: { form: `${on}{name}`, negation: off, ...several },
    lines: new Set(lines.map(({ index }) => index)),
  };
}

const leastTicked = 2;

/** Whether more lines begin with it that hold values: then it is a part of names. */
function isOfNames(sample: readonly Sample[], negation: string, negated: number): boolean {
  const mark = negation.trim();
  const valued = sample.filter(
    ({ text }) => text.startsWith(mark) && !areNames(text, negation, Number.POSITIVE_INFINITY),
  );
  return valued.length > negated;
}

/** Whether all of a line is names, at least a third of them negated. */
function isNegated(text: string, negation: string): boolean {
  if (negation.endsWith(' '))
    return text.startsWith(negation) && isPresenceName(text.slice(negation.length).trim());
  const words = text.split(/\s+/);
  const negated = words.filter(
    (word) => word.startsWith(negation) && /^\p{L}/u.test(word.slice(negation.length)),
  );
  const isEnough = negated.length > 0 && 3 * negated.length >= words.length;
  return isEnough && areNames(text, negation, Number.POSITIVE_INFINITY);
}

function isPair(text: string): boolean {
  return text.split(/\s+/).length === 2;
}

function areNames(text: string, negation: string, most: number): boolean {
  const mark = negation.trim();
  if (negation.endsWith(' ') && text.startsWith(negation))
    return isPresenceName(text.slice(negation.length).trim());
  const words = text.split(/\s+/);
  return (
    words.length <= most &&
    words.every((word) =>
      isPresenceName(!negation.endsWith(' ') && word.startsWith(mark) ? word.slice(mark.length) : word),
    )
  );
}
