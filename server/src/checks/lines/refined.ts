import type { Craft } from '../../craft/craft';
import type { Problem } from '../../language/ast';
import { problem } from '../../language/problem';
import type { ScriptLine } from '../../language/script-line';
import { spacedMinus } from './minus';
import { memberNumber } from './names';
import { quotedText, unquoted } from './quotes';
import { letterForDigit, possibleUnit, saidRange } from './slips';
import { reciprocal, singleWord } from './values';

/** Says more of a problem with the craft at hand; null where it has nothing to add. */
export type Refiner = (craft: Craft, line: ScriptLine, found: Problem) => Problem | null;

/** By the id of what was found: the first that has something to say counts. */
const refiners: ReadonlyMap<string, readonly Refiner[]> = new Map<string, readonly Refiner[]>([
  ['line/not-understood', [spacedMinus, quotedText, letterForDigit]],
  ['line/not-a-number', [quotedText]],
  ['line/unknown-unit', [quotedText, saidRange, possibleUnit]],
  ['line/unknown-constant', [spacedMinus]],
  ['line/wrong-shape', [quotedText, unquoted, singleWord]],
  ['line/wrong-dimension', [reciprocal]],
  ['line/unknown-section', [memberNumber]],
  ['line/unknown-name', [memberNumber]],
  ['line/include-refused', [emptyInclude]],
]);

/**
 * A line is read by itself first, by what stands in it and what its parameter takes. With the craft around it
 * more can be said of what is wrong, and more be offered.
 */
export function refined(craft: Craft, line: ScriptLine, found: Problem): Problem {
  for (const refine of refiners.get(found.id) ?? []) {
    const better = refine(craft, line, found);
    if (better !== null) return better;
  }
  return found;
}

function emptyInclude(_: Craft, __: ScriptLine, found: Problem): Problem | null {
  if (found.values.path !== '') return null;
  return problem(found.id, found, { path: 'An empty text', why: 'it names no script' });
}
