import { splitLines } from '../../language/split-lines';

/** Numbers of lines, from 0, for places of a text. */
export class LineNumbers {
  private readonly starts: readonly number[];

  constructor(text: string) {
    let start = 0;
    this.starts = splitLines(text).map((line) => {
      const own = start;
      start += line.text.length + line.end.length;
      return own;
    });
  }

  of(offset: number): number {
    let [low, high] = [0, this.starts.length - 1];
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if ((this.starts[middle] ?? 0) <= offset) low = middle;
      else high = middle - 1;
    }
    return low;
  }
}
