import { distinctTexts, type Roundable } from '../../units/distinct-texts';
import { fewestOfTail, withoutTails } from '../../units/number-text';
import { filledTemplate, slotsIn } from '../data/data-template';
import type { Finding, Fix, Related } from './finding';

/** The sentence that says what is wrong, with the pack in front where only some are concerned. */
export function messageOf(finding: Finding): string {
  const sentence = sentenceOf(finding.check.message, finding.values);
  return finding.pack === null ? sentence : `With pack ${finding.pack}: ${sentence}`;
}

/** The sentence that says what to do. */
export function adviceOf(finding: Finding): string {
  return sentenceOf(finding.check.advice, finding.values);
}

/** In whose words findings are told. */
export interface Renderer {
  message(finding: Finding): string;
  advice(finding: Finding): string;
}

/** In those of a script. */
export const asScript: Renderer = { message: messageOf, advice: adviceOf };

/** What is said of another place. */
export function relatedText({ message, values = {} }: Pick<Related, 'message' | 'values'>): string {
  return filledTemplate(message, values);
}

/** What a fix does, as a script says it. */
export function fixTitle({ title, values }: Pick<Fix, 'title' | 'values'>): string {
  return filledTemplate(title, values);
}

/**
 * Fills a check's words. A part in double brackets is left out where a value in it is empty:
 * `[[Did you mean {suggestion}?]]` says nothing when nothing was near.
 */
export function sentenceOf(template: string, values: Readonly<Record<string, string>>): string {
  const words = template.replace(/ ?\[\[([^[\]]*)\]\]/g, (whole, part: string) =>
    slotsIn(part).every((slot) => (values[slot] ?? '') !== '')
      ? whole.replace('[[', '').replace(']]', '')
      : '',
  );
  const shown = distinctTexts(Object.values(values).map(withTail));
  return filledTemplate(
    words,
    Object.fromEntries(Object.keys(values).map((name, index) => [name, shown[index] ?? ''])),
  );
}

/** A value whose long tail is cut as far as it can be told from the others. */
function withTail(value: string): Roundable {
  const text = shortened(value);
  return { fewest: fewestOfTail, write: (digits) => withoutTails(text, digits) };
}

/** Longer than any list of choices; a pasted text of thousands of characters would bury the sentence. */
const longestValue = 300;

function shortened(value: string): string {
  if (value.length <= longestValue) return value;
  // No half of a character is left at the cut.
  return `${value.slice(0, longestValue).replace(/[\ud800-\udbff]$/, '')}…`;
}
