import type { FoundParameter } from '../../catalog/catalog';
import { anything } from '../../units/interval';
import { parseQuantity } from '../../units/quantity';
import type { SpellingManner } from '../profile/profile';
import { type Counting, countingOf, withinNamed, withinStated } from './counting';
import type { Meaning } from './meanings';
import { NumberSpelling } from './number-spelling';
import { wordOfPart } from './part-parameter';

/** What one part of a meaning says for whichever value. */
interface PartSpelling {
  readonly spelled: ReadonlyMap<string, string>;
  readonly words: ReadonlyMap<string, string>;
  readonly counting: Counting;
}

/** Read once, for a script's every setting asks. */
interface OfMeaning {
  readonly parameter: FoundParameter['parameter'];
  readonly parts: readonly PartSpelling[];
}

const known = new WeakMap<Meaning, OfMeaning>();

function ofMeaning(
  meaning: Meaning,
  parameter: FoundParameter['parameter'],
  { decimal }: SpellingManner,
): OfMeaning {
  const before = known.get(meaning);
  if (before?.parameter === parameter) return before;
  const parts = meaning.parts.map(({ setting }): PartSpelling => {
    const words = Object.entries(setting.spelled ?? {});
    return {
      spelled: new Map(words),
      words: new Map(words.map(([word, spelled]) => [spelled, word])),
      counting: withinNamed(
        withinStated(countingOf(setting.counts, parameter), setting.range, decimal),
        setting.words,
        decimal,
      ),
    };
  });
  const made: OfMeaning = { parameter, parts };
  known.set(meaning, made);
  return made;
}

/** What the parts of a meaning say of words, flags and numbers, for writing and for reading alike. */
export class MeaningSpelling {
  readonly parts: readonly PartSpelling[];

  constructor(
    readonly meaning: Meaning,
    readonly found: FoundParameter,
    readonly manner: SpellingManner,
  ) {
    this.parts = ofMeaning(meaning, found.parameter, manner).parts;
  }

  part(index: number): PartSpelling {
    return this.parts[index] ?? nothingSaid;
  }

  number(part: number): NumberSpelling {
    return new NumberSpelling(this.part(part).counting, this.found, this.manner.decimal);
  }

  /** On or off as a part that says so is spelled. */
  flagText(value: boolean, part = 0): string {
    const word = value ? 'on' : 'off';
    return this.part(part).spelled.get(word) ?? this.manner.flags[word];
  }

  /** The word that each part says something of, in the order of the parts. */
  wordsHeld(): readonly string[] {
    return this.meaning.parts.map(({ setting }) => wordOfPart(setting.as) ?? '');
  }

  /** Of a grid whose places are counted through. */
  get columns(): number {
    const as = this.meaning.parts[0]?.setting.as;
    return typeof as === 'object' && 'cell' in as ? as.cell : 1;
  }

  /** Where along a curve each part has its point. */
  across(): readonly number[] {
    return this.meaning.parts.map(({ setting: { as } }) => {
      const at = typeof as === 'object' && 'at' in as ? as.at : '';
      return parseQuantity(at)?.value ?? Number.NaN;
    });
  }
}

const nothingSaid: PartSpelling = {
  spelled: new Map(),
  words: new Map(),
  counting: {
    unit: '',
    scale: 1,
    offset: 0,
    isReciprocal: false,
    base: 10,
    behind: '',
    table: null,
    grain: null,
    ...anything,
    limitText: '',
    choices: null,
  },
};
/** Rows, columns and cells are read with four digits. */
export const mostCells = 10_000;
