import type { BenchStep } from '../../catalog/model/bench-card';
import type { Target } from '../target';

/** What is done on the bench to prove a craft, step by step, as plain data. */
export interface BenchCard {
  readonly name: string;
  readonly about: readonly string[];
  /** The packs that it is for; empty: the script names none. */
  readonly packs: readonly string[];
  readonly cautions: readonly string[];
  /** How the card is to be read. */
  readonly note: string;
  /** What was not checked, since the script is no whole craft; null: all was. */
  readonly unchecked: string | null;
  /** What must be mended before anything is connected. */
  readonly first: readonly { readonly message: string; readonly advice: string }[];
  /** Risks that the pilot accepted, with the reason. */
  readonly accepted: readonly { readonly message: string; readonly reason: string }[];
  /** What files of the workspace have in place of what is built in, a sentence each. */
  readonly replaced: readonly string[];
  readonly parts: readonly CardPart[];
}

export interface CardPart {
  readonly stage: BenchStep['stage'];
  readonly title: string;
  readonly steps: readonly CardStep[];
  /** Who did it and when; it stays on the card. */
  readonly signed: readonly CardReading[];
  /** What else was seen. */
  readonly noticed: CardReading;
}

export interface CardStep {
  /** Unique on the card. */
  readonly id: string;
  readonly title: string;
  /** The only packs that it is done with; null: no pack is left out. */
  readonly only: readonly string[] | null;
  readonly do: string;
  readonly see: string;
  /** The same with every pack. */
  readonly expected: readonly CardFigure[];
  /** Read off once. */
  readonly readings: readonly CardReading[];
  /** What is another with each pack, or is done with each. */
  readonly withPacks: readonly WithPack[];
  /** Settings that the script leaves open, with room to write down what is found. */
  readonly asked: readonly CardReading[];
  /** Figures that can't be computed, each with what to write for it, a sentence each. */
  readonly unknown: readonly string[];
  /** Settings of which the script says nothing, with what then holds: "esc.lost-answers 1 %". */
  readonly assumed: readonly string[];
  /** Where the step comes from; null: common practice. */
  readonly source: string | null;
  /** The line that the step proves. */
  readonly target: Target | null;
}

export interface WithPack {
  readonly pack: string;
  readonly expected: readonly CardFigure[];
  readonly readings: readonly CardReading[];
}

export interface CardFigure {
  readonly words: string;
  readonly text: string;
  /** From low to high. */
  readonly span: string | null;
}

export interface CardReading {
  /** Unique on the card. */
  readonly id: string;
  readonly words: string;
  readonly unit: string;
  /** Whether words are wanted, which take a line of their own. */
  readonly isWords: boolean;
  /** The setting of a flight that keeps it; null: it goes into the flight's note. */
  readonly setting: string | null;
  /** The setting that the script leaves open and that is found out here; null: it is none. */
  readonly script: string | null;
}
