import type { Catalog } from '../../../catalog/catalog';
import type { AskedSetting, AskedWord } from './asked';
import type { KnownTarget } from './targets';

/** A set of opposites of which a setting's words say some. */
export interface SaidOpposites {
  readonly set: readonly string[];
  readonly said: readonly string[];
}

/** What speaks against a target: a name that says one of two opposites does not mean the other. */
const against = 0.25;

/** The opposites that the name says, or else its groups. */
export function oppositesIn({ own, around }: AskedSetting, catalog: Catalog): readonly SaidOpposites[] {
  return catalog.tradeWords.opposites.flatMap((set) => {
    const byName = set.filter((concept) => own.some((word) => surely(word, concept)));
    const said =
      byName.length > 0 ? byName : set.filter((concept) => around.some((word) => surely(word, concept)));
    return said.length === 0 ? [] : [{ set, said }];
  });
}

function surely({ senses }: AskedWord, concept: string): boolean {
  return senses.some((one) => one.concept === concept && one.trust >= 0.7);
}

/** 1, or less for each opposite of what the target is that the words say. */
export function opposition(opposites: readonly SaidOpposites[], { about, part }: KnownTarget): number {
  let factor = 1;
  for (const { set, said } of opposites) {
    const isAbout = set.some((concept) => (about.get(concept) ?? 0) >= 0.9);
    const isMeant = said.some((concept) => (about.get(concept) ?? 0) >= 0.7);
    if (isAbout && !isMeant && part === null) factor *= against;
  }
  return factor;
}
