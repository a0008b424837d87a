import type { Stretch } from '../listing';

/** How a line ends: with a lone CR, a terminal goes on writing over it. */
type TerminalLineEnd = 'line' | 'return';

/**
 * A line of a listing as it was meant to be read. What was not meant (colours, a prompt, a time stamp) is gone from
 * `text`; each character that is left still knows its place in the whole text.
 */
export class ListingLine {
  private constructor(
    /** Of its first line in the text, from 0. */
    readonly number: number,
    readonly text: string,
    /** Where the text begins, or where each character stands and, last, where the line ends. */
    private readonly places: number | readonly number[],
    readonly end: TerminalLineEnd,
    /** Where several lines became one: those lines, parted by LF. */
    private readonly joinedFrom: string | null = null,
  ) {}

  static plain(number: number, text: string, start: number, end: TerminalLineEnd): ListingLine {
    return new ListingLine(number, text, start, end);
  }

  /** Its text before other lines were joined to it. */
  get asWritten(): string {
    return this.joinedFrom ?? this.text;
  }

  /** Whether all its characters stand side by side in the text. */
  get isUntouched(): boolean {
    return typeof this.places === 'number';
  }

  /** The place in the whole text of what stands from `from` to `to`. */
  at(from: number, to: number): Stretch {
    const start = this.place(from);
    return { start, end: to > from ? this.place(to - 1) + 1 : start };
  }

  /** All of it but blanks around it. */
  whole(): Stretch {
    const { text } = this;
    const start = text.length - text.trimStart().length;
    return this.at(start, Math.max(start, text.trimEnd().length));
  }

  /** The same with blanks in place of what stands before `to`. */
  blanked(to: number): ListingLine {
    if (to === 0) return this;
    return new ListingLine(
      this.number,
      ' '.repeat(to) + this.text.slice(to),
      this.places,
      this.end,
      this.joinedFrom,
    );
  }

  /** What is left from `from` on. */
  from(from: number): ListingLine {
    if (from === 0) return this;
    const { places } = this;
    return new ListingLine(
      this.number,
      this.text.slice(from),
      typeof places === 'number' ? places + from : places.slice(from),
      this.end,
    );
  }

  /** What stands before `to`, without blanks at its end. */
  upTo(to: number): ListingLine {
    const text = this.text.slice(0, to).trimEnd();
    const { places } = this;
    return new ListingLine(
      this.number,
      text,
      typeof places === 'number' ? places : places.slice(0, text.length + 1),
      this.end,
    );
  }

  /** The characters at these places of this line, in this order. */
  picked(indices: readonly number[]): ListingLine {
    const text = indices.map((index) => this.text[index] ?? ' ').join('');
    const last = this.place(this.text.length);
    return new ListingLine(this.number, text, [...indices.map((index) => this.place(index)), last], this.end);
  }

  /** These lines as one, with `between` where each but the last ends. `joinedFrom`: as they are to be written again. */
  static joined(
    lines: readonly [ListingLine, ...ListingLine[]],
    between: string,
    joinedFrom: string | null = null,
  ): ListingLine {
    const [first, ...others] = lines;
    if (others.length === 0) return first;
    const places = first.eachPlace();
    let before = first;
    for (const line of others) {
      for (const _ of between) places.push(before.place(before.text.length));
      for (const place of line.eachPlace()) places.push(place);
      before = line;
    }
    places.push(before.place(before.text.length));
    const text = lines.map((line) => line.text).join(between);
    return new ListingLine(first.number, text, places, before.end, joinedFrom);
  }

  private eachPlace(): number[] {
    return Array.from({ length: this.text.length }, (_, index) => this.place(index));
  }

  private place(index: number): number {
    const { places } = this;
    return typeof places === 'number' ? places + index : (places[index] ?? places.at(-1) ?? 0);
  }
}
