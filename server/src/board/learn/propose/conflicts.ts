import type { Catalog } from '../../../catalog/catalog';
import type { Asked, AskedWord } from './asked';
import type { KnownTarget } from './targets';

/** What speaks against a target: a name that says one of two opposites does not mean the other. */
const against = 0.25;

/** 1, or less for each opposite of what the target is that the words say. */
export function opposition(asked: Asked, { about, part }: KnownTarget, catalog: Catalog): number {
  let factor = 1;
  for (const set of catalog.tradeWords.opposites) {
    const said = saidOf(set, asked);
    if (said === null || set.every((concept) => (about.get(concept) ?? 0) < 0.9)) continue;
    const isMeant = said.some((concept) => (about.get(concept) ?? 0) >= 0.7);
    if (!isMeant && part === null) factor *= against;
  }
  return factor;
}

/** Which of a set of opposites the name says, or else its groups. */
function saidOf(set: readonly string[], { own, around }: Asked): readonly string[] | null {
  for (const words of [own, around]) {
    const said = set.filter((concept) => words.some((word) => surely(word, concept)));
    if (said.length > 0) return said;
  }
  return null;
}

function surely({ senses }: AskedWord, concept: string): boolean {
  return senses.some((one) => one.concept === concept && one.trust >= 0.7);
}
