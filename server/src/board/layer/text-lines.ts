import { splitLines } from '../../language/split-lines';
import type { Stretch } from '../listing/listing';

/** From 0, in UTF-16 units. */
export interface TextPlace {
  readonly line: number;
  readonly character: number;
}

export interface TextRange {
  readonly start: TextPlace;
  readonly end: TextPlace;
}

/** A text by lines: a line's edit leaves the places of all others as they are. */
export class TextLines {
  /** Without their ends. */
  readonly texts: readonly string[];
  private readonly starts: readonly number[];

  constructor(text: string) {
    const texts: string[] = [];
    const starts: number[] = [];
    let start = 0;
    for (const line of splitLines(text)) {
      texts.push(line.text);
      starts.push(start);
      start += line.text.length + line.end.length;
    }
    this.texts = texts;
    this.starts = starts;
  }

  placeAt(offset: number): TextPlace {
    let [low, high] = [0, this.starts.length - 1];
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if ((this.starts[middle] ?? 0) <= offset) low = middle;
      else high = middle - 1;
    }
    const length = this.texts[low]?.length ?? 0;
    return { line: low, character: Math.min(offset - (this.starts[low] ?? 0), length) };
  }

  rangeOf({ start, end }: Stretch): TextRange {
    return { start: this.placeAt(start), end: this.placeAt(end) };
  }
}
