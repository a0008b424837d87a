import type { Catalog } from '../../catalog/catalog';
import type { KnownParameter } from '../../catalog/known-parameter';
import { staticWords } from '../../craft/line-check';

/** What a parameter can be said in; null: any word or text, an order of letters, or what only the craft's board tells. */
export function wordsToSpell(
  known: Pick<KnownParameter, 'parameter'>,
  catalog: Catalog,
): readonly string[] | null {
  const { parameter } = known;
  switch (parameter.kind) {
    case 'flag':
      return ['on', 'off'];
    case 'quantity':
    case 'count':
      return (parameter.orWords ?? []).map(({ name }) => name);
    default: {
      const words = staticWords(known, catalog);
      return words === null || words.length === 0 ? null : words;
    }
  }
}
