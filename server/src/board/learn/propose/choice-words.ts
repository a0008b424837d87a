import type { Catalog } from '../../../catalog/catalog';
import { isPermutation } from '../../../catalog/permutation';
import { lexiconOf } from '../words/lexicon';
import { nameWords } from '../words/name-words';
import type { KnownTarget } from './targets';

/** The words that a parameter takes, to be looked up in a board's spelling. */
export interface ChoiceWords {
  readonly isOne: (word: string) => boolean;
  /** Whether only the craft can tell which words there are. */
  readonly isOpen: boolean;
}

const kept = new WeakMap<Catalog, Map<string, ChoiceWords>>();

export function choiceWords({ known }: KnownTarget, catalog: Catalog): ChoiceWords {
  const all = kept.get(catalog) ?? new Map<string, ChoiceWords>();
  kept.set(catalog, all);
  const before = all.get(known.name);
  if (before !== undefined) return before;
  const made = fresh(known.parameter, catalog);
  all.set(known.name, made);
  return made;
}

function fresh(parameter: KnownTarget['known']['parameter'], catalog: Catalog): ChoiceWords {
  if ('choicesFrom' in parameter && (parameter.choicesFrom === 'ports' || parameter.choicesFrom === 'packs'))
    return { isOne: parameter.choicesFrom === 'ports' ? isPort : () => false, isOpen: true };
  if ('permutationOf' in parameter && parameter.permutationOf !== undefined) {
    const letters = parameter.permutationOf.toLowerCase();
    return { isOne: (word) => isPermutation(word.toLowerCase(), letters), isOpen: false };
  }
  const lexicon = lexiconOf(catalog);
  const keys = (text: string) =>
    lexicon.understand(text, false).map(({ senses, text: own }) => senses[0]?.concept ?? own);
  const choices = catalog.choices(parameter);
  const whole = new Set(choices.map(({ name }) => nameWords(name).join('')));
  const concepts = new Set(
    choices.map(({ name }) => keys(name).sort().join(' ')).filter((key) => key !== ''),
  );
  return {
    isOne: (word) => whole.has(nameWords(word).join('')) || concepts.has(keys(word).sort().join(' ')),
    isOpen: choices.length === 0,
  };
}

function isPort(word: string): boolean {
  return /^(?:uart|serial|port|ser|com|usart)[ _-]?\d+$/i.test(word);
}
