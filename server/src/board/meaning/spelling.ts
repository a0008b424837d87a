import type { FoundParameter } from '../../catalog/catalog';
import type { Value } from '../../craft/value';
import type { SpellingManner } from '../profile/profile';
import { holdsNumbers } from './counting';
import { MeaningSpelling } from './meaning-spelling';
import type { Meaning } from './meanings';
import type { Spelled, Understood } from './spelled';
import { understandValue } from './understand-value';
import { writeValue } from './write-value';

/** Turns values of one parameter into the board's spelling and back, as the rows of its profile say. */
export class Speller {
  private readonly spelling: MeaningSpelling;

  constructor(meaning: Meaning, found: FoundParameter, manner: SpellingManner) {
    this.spelling = new MeaningSpelling(meaning, found, manner);
  }

  write(value: Value): Spelled {
    return writeValue(this.spelling, value);
  }

  read(written: readonly string[]): Understood {
    return understandValue(this.spelling, written);
  }

  /** The board's step of a part in its own numbers; null where it keeps what it is told. */
  grain(part: number): number | null {
    return this.spelling.part(part).counting.grain;
  }

  /** What the board takes that is nearest to a value that it does not; null where nobody can tell. */
  nearest(value: Value): Value | null {
    if (value.kind !== 'quantity' && value.kind !== 'count') return null;
    const nearest = this.spelling.number(0).nearest(value.value);
    return nearest === null || (value.kind === 'count' && !Number.isInteger(nearest))
      ? null
      : { ...value, value: nearest };
  }

  /** Whether two texts of the board say the same of a part that is a number. */
  isSameNumber(part: number, one: string, other: string): boolean {
    return this.spelling.number(part).isSame(one, other);
  }

  /** What a text of the board says of a part that is a number, in SI; null for no number of it. */
  numberOf(part: number, text: string): number | null {
    return this.spelling.number(part).read(text);
  }

  /** A number as the board counts it, whatever its step and limits; null where it writes no such number. */
  shownNumber(part: number, base: number): string | null {
    return this.spelling.number(part).shown(base);
  }

  /** Our word in the board's spelling; null where it has no other for it. */
  shownWord(word: string): string | null {
    return this.spelling.part(0).spelled.get(word) ?? null;
  }

  /** Whether its parts are numbers, or come to some. */
  get isNumber(): boolean {
    return holdsNumbers(this.spelling.found.parameter) || this.spelling.meaning.by === 'numbers';
  }

  /** On or off as a part that says so is spelled. */
  flagText(value: boolean, part = 0): string {
    return this.spelling.flagText(value, part);
  }
}
