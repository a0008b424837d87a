import type { DirtKind } from './dirt';
import { blankLine, commentLine } from './lines';
import type { Item, Line, StatedTruth } from './listing';
import type { Lot } from './lot';
import type { NameStyle } from './names';
import type { House, Look } from './values';

/** One way to print settings, with every choice of it made. */
export interface Shape {
  readonly styles: readonly NameStyle[];
  /** Which groups its settings have. */
  readonly groups: 'none' | 'one' | 'nested';
  /** How many of the groups stand in headings; the rest stands in the line itself. */
  readonly headed: 'all' | 'none';
  /** Whether nothing that is written allows two readings of where a name begins and a group ends. */
  readonly isExact: boolean;
  /** Looks of values that would not be told apart from something else. */
  readonly without: readonly Look[];
  /** Looks that only this shape has. */
  readonly own?: readonly Look[];
  /** What a printed value can't hold, such as the mark between two of them. */
  readonly badValue: RegExp | null;
  /** Dirt in which a person would lose the shape. */
  readonly spared: readonly DirtKind[];
  /** Begins a comment line; null where comments can't stand. */
  readonly comment: string | null;
  /** What it prints of a setting beside its value. */
  readonly states: readonly (keyof StatedTruth)[];
  /** Whether the same name comes again and again. */
  readonly repeats: boolean;
  /** What else belongs to a name, such as the number of a member. */
  readonly dressed?: (name: string, lot: Lot) => string;
  readonly print: (items: readonly Item[]) => readonly Line[];
}

export type ShapeMaker = (lot: Lot, house: House) => Shape;

/** What most shapes have. */
export const usual = {
  groups: 'none',
  headed: 'none',
  isExact: true,
  without: [],
  badValue: null,
  spared: [],
  comment: '#',
  states: [],
  repeats: false,
} as const satisfies Partial<Shape>;

/** Names of one word, of letters alone. */
export const oneWord: readonly NameStyle[] = ['plain', 'abbreviated', 'german', 'greek'];

type Write = (item: Item, index: number) => readonly Line[];

/** One setting after the other, each with the comment above it. */
export function inTurn(items: readonly Item[], comment: string | null, write: Write): readonly Line[] {
  return items.flatMap((item, index) => [...above(item, comment), ...write(item, index)]);
}

function above(item: Item, comment: string | null): readonly Line[] {
  return item.above === null || comment === null ? [] : [commentLine(`${comment} ${item.above}`)];
}

/** Headings where the groups change, a blank line before each but the first. */
export function underHeadings(
  items: readonly Item[],
  comment: string | null,
  heading: (group: string, depth: number) => readonly Line[],
  write: Write,
): readonly Line[] {
  let before: readonly string[] = [];
  return items.flatMap((item, index) => {
    const shared = sharedSteps(before, item.groups);
    const headings = item.groups
      .slice(shared)
      .flatMap((group, step) => [
        ...(index > 0 && step === 0 ? [blankLine] : []),
        ...heading(group, shared + step),
      ]);
    before = item.groups;
    return [...headings, ...above(item, comment), ...write(item, index)];
  });
}

function sharedSteps(one: readonly string[], other: readonly string[]): number {
  const different = other.findIndex((group, index) => group !== one[index]);
  return different === -1 ? other.length : different;
}
