import type { DecimalMark } from '../listing/number-look';
import { amountIn, lookOf } from '../listing/value-look';

/** What is stated of a setting's value. */
export interface StatedOf {
  readonly range: { readonly low: string; readonly high: string } | null;
  readonly words: readonly string[] | null;
}

/** Whether a value is one of the words, or lies in the range, that are stated of it. */
export function isAsStated(value: string, { range, words }: StatedOf, mark: DecimalMark): boolean {
  if (value === '') return true;
  if (words?.includes(value) === true) return true;
  const look = lookOf(value, mark);
  const items = look.kind === 'list' || look.kind === 'tuple' ? look.items : [value];
  return items.every((item) => words?.includes(item) === true || isInRange(item, range, mark));
}

function isInRange(value: string, range: StatedOf['range'], mark: DecimalMark): boolean {
  if (range === null) return false;
  const [given, low, high] = [value, range.low, range.high].map((text) => amountIn(text, mark));
  // Ends that are no numbers say nothing that could be compared.
  if (low === null || high === null || low === undefined || high === undefined) return true;
  if (given === null || given === undefined) return false;
  return given >= Math.min(low, high) && given <= Math.max(low, high);
}
