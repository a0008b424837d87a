import type { Catalog } from '../../../catalog/catalog';
import { lexiconOf } from '../words/lexicon';
import type { Weighed } from './candidates';

const mostWords = 4;

/** A sentence: what the names share, and what the value says. */
export function whyOf({ match, fit }: Weighed, catalog: Catalog): string {
  const lexicon = lexiconOf(catalog);
  const labels = [...new Set(match.shared.map((concept) => lexicon.labelOf(concept)))].slice(0, mostWords);
  const words = labels.length === 0 ? 'Its words are near' : `Its words say ${labels.join(', ')}`;
  const reason = fit.reason();
  const value = reason === '' ? '' : `; ${reason}`;
  return `${words}${value}.`;
}
