import type { KnownParameter } from '../../catalog/known-parameter';
import type { PartHeld } from '../../catalog/model/board-profile';

/**
 * What one part of a parameter is, as a parameter of its own: whether a list has a word is on or off, and where a word
 * stands in it is a number. Other parts are counted and spelled as the whole is.
 */
export function partParameter<K extends KnownParameter>(known: K, as: PartHeld | undefined): K {
  const { parameter } = known;
  if (parameter.kind !== 'words' || typeof as !== 'object') return known;
  const { choices: _, choicesFrom: __, most, mayBeEmpty: ___, ...about } = parameter;
  const told = { ...about, higher: '', lower: '' };
  if ('has' in as) return { ...known, parameter: { ...told, kind: 'flag' } };
  if (!('numberOf' in as)) return known;
  const ends = { low: 1, high: most };
  return {
    ...known,
    parameter: { ...told, kind: 'count', range: [1, most], usual: [1, most] },
    range: ends,
    usual: ends,
  };
}

/** The word of a list that a part is about; null for any other part. */
export function wordOfPart(as: PartHeld | null | undefined): string | null {
  if (typeof as !== 'object' || as === null) return null;
  if ('has' in as) return as.has;
  return 'numberOf' in as ? as.numberOf : null;
}
