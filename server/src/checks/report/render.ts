import { distinctTexts, type Roundable } from '../../units/distinct-texts';
import { fewestOfTail, withoutTails } from '../../units/number-text';
import { filledTemplate, slotsIn } from '../data/data-template';
import type { Finding } from './finding';

/** The sentence that says what is wrong, with the pack in front where only some are concerned. */
export function messageOf(finding: Finding): string {
  const sentence = sentenceOf(finding.check.message, finding.values);
  return finding.pack === null ? sentence : `With pack ${finding.pack}: ${sentence}`;
}

/** The sentence that says what to do. */
export function adviceOf(finding: Finding): string {
  return sentenceOf(finding.check.advice, finding.values);
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

/** "988 us, 1500 us and 2012 us" */
export function listed(texts: readonly string[]): string {
  const last = texts.at(-1) ?? '';
  return texts.length < 2 ? last : `${texts.slice(0, -1).join(', ')} and ${last}`;
}
