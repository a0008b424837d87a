import type { KnownParameter } from './known-parameter';
import type { Collection } from './model/collection';
import { isPlaceholder } from './path-tree';
import { type Word, wordOf } from './word-distance';

/** One place in a name: a fixed word, or a collection whose members may stand there. */
export type Slot = string | Collection;

/** The shape of a path. */
export interface Pattern {
  /** As the catalogue spells it. */
  readonly name: string;
  readonly slots: readonly Slot[];
}

/** A pattern with its closed collections filled in: all of it but open parts is written out. */
export interface Spelling {
  readonly pattern: Pattern;
  readonly path: string;
  /** The path without dots and hyphens. */
  readonly bare: string;
}

/** A pattern with one open part, as the text before and after it: `pack.` and `.cells`. */
export interface OpenPattern {
  readonly pattern: Pattern;
  readonly before: string;
  readonly after: string;
}

/** Patterns with what is needed to compare a path with all of them quickly. */
export interface PatternSet {
  readonly patterns: readonly Pattern[];
  readonly spellings: readonly Spelling[];
  readonly frames: readonly OpenPattern[];
}

export interface PathPatterns {
  readonly parameters: PatternSet;
  readonly sections: PatternSet;
  /** Every fixed word and every member of a closed collection. */
  readonly words: readonly Word[];
  /** What the trade calls a parameter, without spaces and hyphens. */
  readonly synonyms: ReadonlyMap<string, readonly Pattern[]>;
}

export function pathPatterns(
  known: Iterable<KnownParameter>,
  collections: ReadonlyMap<string, Collection>,
): PathPatterns {
  const list = [...known];
  const toPattern = (name: string): Pattern => ({ name, slots: slotsOf(name, collections) });
  const parameters = new Map(list.map((one) => [one.name, toPattern(one.name)]));
  const sections = [...new Set(list.flatMap((one) => sectionsOf(one.words)))].map(toPattern);
  return {
    parameters: patternSet([...parameters.values()]),
    sections: patternSet(sections),
    words: wordsOf([...parameters.values()]),
    synonyms: synonymsOf(list, parameters),
  };
}

/** Text with nothing but its letters and digits: names that differ only in how they are joined become one. */
export function bareText(text: string): string {
  return text.toLowerCase().replace(/[^a-z0-9]/g, '');
}

function slotsOf(name: string, collections: ReadonlyMap<string, Collection>): readonly Slot[] {
  const words = name.split('.');
  return words.map((word, index) => {
    if (!isPlaceholder(word)) return word;
    return collections.get(words.slice(0, index).join('.')) ?? word;
  });
}

function sectionsOf(words: readonly string[]): readonly string[] {
  return words.slice(1).map((_, index) => words.slice(0, index + 1).join('.'));
}

function patternSet(patterns: readonly Pattern[]): PatternSet {
  const spelt = patterns.flatMap((pattern) =>
    spellingsOf(pattern.slots).map((path) => ({ pattern, path, bare: bareText(path) })),
  );
  return {
    patterns,
    spellings: spelt.filter(({ path }) => !path.includes('<')),
    frames: spelt.flatMap(({ pattern, path }) => frameOf(pattern, path)),
  };
}

function spellingsOf(slots: readonly Slot[]): readonly string[] {
  let paths = [''];
  for (const slot of slots) {
    const words = spelledWords(slot);
    paths = paths.flatMap((path) => words.map((word) => (path === '' ? word : `${path}.${word}`)));
  }
  return paths;
}

function spelledWords(slot: Slot): readonly string[] {
  if (typeof slot === 'string') return [slot];
  const { keys } = slot;
  if (keys.kind === 'open') return [`<${slot.placeholder}>`];
  if (keys.kind === 'closed') return keys.members.map((member) => member.name);
  return Array.from({ length: keys.to - keys.from + 1 }, (_, index) => String(keys.from + index));
}

function frameOf(pattern: Pattern, path: string): readonly OpenPattern[] {
  const parts = path.split(/<[a-z]+>/);
  const [before, after] = parts;
  if (parts.length !== 2 || before === undefined || after === undefined || after === '') return [];
  return [{ pattern, before, after }];
}

function wordsOf(patterns: readonly Pattern[]): readonly Word[] {
  const fixed = patterns
    .flatMap((pattern) => pattern.slots)
    .flatMap((slot) => {
      if (typeof slot === 'string') return [slot];
      return slot.keys.kind === 'closed' ? slot.keys.members.map((member) => member.name) : [];
    });
  return [...new Set(fixed)].map(wordOf);
}

function synonymsOf(
  known: readonly KnownParameter[],
  patterns: ReadonlyMap<string, Pattern>,
): ReadonlyMap<string, readonly Pattern[]> {
  const synonyms = new Map<string, Pattern[]>();
  for (const { name, parameter } of known) {
    const pattern = patterns.get(name);
    if (pattern === undefined) continue;
    for (const phrase of [...parameter.alsoCalled, parameter.title]) {
      const key = bareText(phrase);
      synonyms.set(key, [...(synonyms.get(key) ?? []), pattern]);
    }
  }
  return synonyms;
}

/** How a written path came to be taken for a pattern. */
export type Likeness = 'spelling' | 'order' | 'word-missing' | 'word-extra' | 'section' | 'synonym';

/** A pattern that a path probably means. */
export interface Match {
  readonly pattern: Pattern;
  /** The path to write; members that the writer has not named stand as placeholders. */
  readonly path: string;
  readonly why: Likeness;
  /** Smaller is nearer. */
  readonly cost: number;
}
