import type { Catalog } from '../../catalog/catalog';
import type { KnownParameter } from '../../catalog/known-parameter';

/** Words of other languages by what a part of a path is called: `grenzfrequenz` by `cutoff`. */
type ForeignWords = ReadonlyMap<string, readonly string[]>;

const made = new WeakMap<Catalog, ForeignWords>();

/** What pilots of other languages call a parameter, or what its section is about. */
export function foreignWordsFor({ words }: KnownParameter, catalog: Catalog): readonly string[] {
  const known = made.get(catalog) ?? foreignWords(catalog);
  made.set(catalog, known);
  return words.flatMap((word) => known.get(word) ?? []);
}

function foreignWords({ tradeWords }: Catalog): ForeignWords {
  const all = new Map<string, string[]>();
  for (const { words } of tradeWords.concepts) {
    const { en: ours = [], ...others } = words;
    const foreign = Object.values(others)
      .flat()
      .filter((word) => !ours.some((own) => beginAlike(own, word)));
    for (const own of ours) {
      const path = own.replaceAll(' ', '-');
      all.set(path, [...(all.get(path) ?? []), ...foreign]);
    }
  }
  return all;
}

/** Who begins to type such a word is offered the English one anyway. */
function beginAlike(one: string, other: string): boolean {
  return one.slice(0, sharedStart) === other.slice(0, sharedStart);
}

const sharedStart = 3;
