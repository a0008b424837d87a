import type { Catalog } from './catalog';
import type { KnownParameter } from './known-parameter';
import { isRight, nearPatterns, slotSpelling } from './path-match';
import { bareText, type Likeness, type Match, type Pattern } from './path-patterns';
import { wordDistance, wordOf } from './word-distance';

/** What an unknown name was probably meant to be. */
export interface Suggestion {
  readonly known: KnownParameter;
  /** The whole path to write; `pack.<name>.cells` where the writer has named no member. */
  readonly path: string;
  /** What to write in place of the setting's name under the open section; null where it can't stand there. */
  readonly written: string | null;
  readonly why: Likeness;
}

const most = 3;
/** A match this much worse than the best is not worth a line. */
const spread = 1;
const costs = { ownSynonym: 0.5, wholeName: 0.5, synonym: 2.5, section: 2.5 };

/**
 * The parameters that an unknown path may stand for, best first, at most three; none when nothing is near.
 * `path` is whole, `section` the open section (empty before the first): the rest is what was written.
 */
export function suggestParameters(catalog: Catalog, path: string, section: string): readonly Suggestion[] {
  const { patterns } = catalog;
  const written = writtenPart(path, section);
  const matches = [
    ...nearPatterns(patterns, patterns.parameters, path),
    ...bySynonym(catalog, written, section),
    ...underOtherSection(catalog, written),
  ].filter((match) => match.path.includes('<') || catalog.parameter(match.path) !== undefined);
  return bestFew(matches).flatMap((match) => {
    const known = catalog.parameters.get(match.pattern.name);
    if (known === undefined) return [];
    return { known, path: match.path, written: relativeTo(section, match.path), why: match.why };
  });
}

/** The sections that an unknown one may stand for, as whole paths, best first, at most three. */
export function suggestSections(catalog: Catalog, path: string): readonly string[] {
  const { patterns } = catalog;
  return bestFew(nearPatterns(patterns, patterns.sections, path)).map((match) => match.path);
}

/** The words of a list that a wrong one may stand for, best first, at most three; none when nothing is near. */
export function suggestWord(candidates: Iterable<string>, given: string): readonly string[] {
  if (given.length > 60) return [];
  const written = wordOf(given.toLowerCase());
  const near = [...new Set(candidates)]
    .map((word) => ({ word, far: wordDistance(written, wordOf(word.toLowerCase())) }))
    .filter(({ far }) => far < Number.POSITIVE_INFINITY)
    .sort((one, other) => one.far - other.far);
  return near
    .filter(({ far }) => far <= (near[0]?.far ?? 0) + spread)
    .slice(0, most)
    .map(({ word }) => word);
}

function writtenPart(path: string, section: string): string {
  return section !== '' && path.startsWith(`${section}.`) ? path.slice(section.length + 1) : path;
}

/** Null for a path that can't be written there: another section, or a member that is not named yet. */
function relativeTo(section: string, path: string): string | null {
  if (path.includes('<')) return null;
  if (section === '') return path;
  return path.startsWith(`${section}.`) ? path.slice(section.length + 1) : null;
}

/** Each pattern once, by its cheapest match. */
function bestFew(matches: readonly Match[]): readonly Match[] {
  const sorted = [...matches].sort((one, other) => one.cost - other.cost);
  const seen = new Set<string>();
  const worst = (sorted[0]?.cost ?? 0) + spread;
  return sorted.filter(({ path, cost }) => cost <= worst && !seen.has(path) && seen.add(path)).slice(0, most);
}

/** What the trade says for it: written whole, or as the last words under a section. */
function bySynonym(catalog: Catalog, written: string, section: string): readonly Match[] {
  const found = catalog.patterns.synonyms.get(bareText(written)) ?? [];
  const under = found.filter((pattern) => keysUnder(pattern, section) !== undefined);
  if (section !== '' && under.length > 0) return under.map((pattern) => said(pattern, section, 'own'));
  // A word that ends names of ours is meant as it is ours, not as another word for something else.
  if (endingIn(catalog, written).length > 0) return [];
  return found.length > most ? [] : found.map((pattern) => said(pattern, section, 'other'));
}

function said(pattern: Pattern, section: string, place: 'own' | 'other'): Match {
  const cost = place === 'own' ? costs.ownSynonym : costs.synonym;
  const start = keysUnder(pattern, section) ?? [];
  const path = pattern.slots.map((slot, at) => start[at] ?? slotSpelling(slot)).join('.');
  return { pattern, path, why: 'synonym', cost };
}

/** The section's words, where a pattern lies below the section. */
function keysUnder(pattern: Pattern, section: string): readonly string[] | undefined {
  const words = section === '' ? [] : section.split('.');
  if (words.length >= pattern.slots.length) return undefined;
  const fits = words.every((word, at) => {
    const slot = pattern.slots[at];
    return slot !== undefined && isRight(slot, word, word);
  });
  return fits ? words : undefined;
}

/** A name that is right, under a section that has none such. Too common a name says nothing. */
function underOtherSection(catalog: Catalog, written: string): readonly Match[] {
  const words = written.split('.');
  const { patterns } = catalog.patterns.parameters;
  const exact = endingIn(catalog, written);
  const found = exact.length > 0 ? exact : patterns.filter((pattern) => endsNear(pattern, words));
  if (found.length > most) return [];
  return found.map((pattern) => {
    const before = pattern.slots.length - words.length;
    const path = pattern.slots.map((slot, at) =>
      typeof slot === 'string' ? slot : (words[at - before] ?? slotSpelling(slot)),
    );
    const cost = before === 0 ? costs.wholeName : costs.section;
    return { pattern, path: path.join('.'), why: 'section', cost };
  });
}

/** The patterns whose last words are these. */
function endingIn(catalog: Catalog, written: string): readonly Pattern[] {
  const words = written.split('.');
  const lower = words.map((word) => word.toLowerCase());
  return catalog.patterns.parameters.patterns.filter((pattern) => endsWith(pattern, words, lower));
}

/** A single long word, slightly misspelt, that ends a name: `tilt-limt` before any section. */
function endsNear(pattern: Pattern, words: readonly string[]): boolean {
  const [word = ''] = words;
  const tail = pattern.slots.at(-1);
  if (words.length > 1 || word.length < 6 || typeof tail !== 'string') return false;
  return wordDistance(wordOf(word), wordOf(tail)) <= 1;
}

function endsWith(pattern: Pattern, words: readonly string[], lower: readonly string[]): boolean {
  const from = pattern.slots.length - words.length;
  if (from < 0) return false;
  const tail = pattern.slots.slice(from);
  // A tail that begins with a free name would fit anything.
  if (typeof tail[0] !== 'string' || typeof tail.at(-1) !== 'string') return false;
  return tail.every((slot, at) => isRight(slot, words[at], lower[at]));
}
