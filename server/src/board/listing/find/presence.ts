import type { LineFormData } from '../forms/compiled';
import { isPresenceName } from '../forms/read-part';

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
  for (const negation of negations) {
    const found = sample.filter(({ text }) => isNegated(text, negation));
    if (found.length === 0) continue;
    const isSeveral = !negation.endsWith(' ') && found.some(({ text }) => text.includes(' '));
    const least = isSeveral ? 1 : 2;
    const lines = sample.filter(({ text }) =>
      areNames(text, negation, isSeveral ? Number.POSITIVE_INFINITY : 1),
    );
    // Alone among lines of another kind, one negated name may as well be a value.
    if (lines.length < least) continue;
    const form = { form: '{name}', negation, ...(isSeveral ? { between: ' ' } : {}) };
    return { form, lines: new Set(lines.map(({ index }) => index)) };
  }
  return null;
}

/** Whether all of a line is names, at least a third of them negated. */
function isNegated(text: string, negation: string): boolean {
  if (negation.endsWith(' '))
    return text.startsWith(negation) && isPresenceName(text.slice(negation.length).trim());
  const words = text.split(/\s+/);
  const negated = words.filter(
    (word) => word.startsWith(negation) && /^\p{L}/u.test(word.slice(negation.length)),
  );
  const isEnough =
    words.length === 1 ? negated.length === 1 : 3 * negated.length >= words.length && words.length !== 2;
  return isEnough && areNames(text, negation, Number.POSITIVE_INFINITY);
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
