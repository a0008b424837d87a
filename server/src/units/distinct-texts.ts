import { shortText } from './quantity';

/** What a sentence shows: a number with as many significant digits as it is asked for, or a text. */
export interface Roundable {
  /** The fewest digits that read well. */
  readonly fewest: number;
  write(digits: number): string;
}

/** A quantity for a sentence. By itself it has three digits; beside one that is nearly the same it has more. */
export class Amount implements Roundable {
  readonly fewest = 3;

  constructor(
    private readonly base: number,
    private readonly unit: string,
  ) {}

  write(digits: number): string {
    return shortText(this.base, this.unit, digits);
  }

  toString(): string {
    return this.write(this.fewest);
  }
}

/** More than any value of a craft has: what still looks alike then is alike. */
const mostDigits = 12;

/**
 * Texts for all that one sentence shows, each with the fewest digits that keep it apart from what it is not: a
 * value a hair above its limit never reads like the limit.
 */
export function distinctTexts(all: readonly Roundable[]): readonly string[] {
  const exact = all.map((one) => one.write(mostDigits));
  const texts = all.map((one) => one.write(one.fewest));
  for (let digits = 1; digits <= mostDigits; digits += 1) {
    const alike = texts.map((text, index) => isMistaken(index, text, texts, exact));
    if (!alike.includes(true)) break;
    for (const [index, one] of all.entries()) {
      if (alike[index] === true && digits > one.fewest) texts[index] = one.write(digits);
    }
  }
  return texts;
}

/** Whether a text can be taken for another one, or for a part of it, that says something else in full. */
function isMistaken(
  index: number,
  text: string,
  texts: readonly string[],
  exact: readonly string[],
): boolean {
  const full = exact[index] ?? text;
  return texts.some((other, at) => at !== index && holds(other, text) && !holds(exact[at] ?? other, full));
}

/** Whether a text stands in another one by itself: not as the end of a longer number or word. */
function holds(whole: string, text: string): boolean {
  if (whole === text) return true;
  if (text === '') return false;
  for (let at = whole.indexOf(text); at >= 0; at = whole.indexOf(text, at + 1)) {
    if (!isPartOfWord(whole[at - 1]) && !isPartOfWord(whole[at + text.length])) return true;
  }
  return false;
}

function isPartOfWord(character: string | undefined): boolean {
  return character !== undefined && /[\w.]/.test(character);
}
