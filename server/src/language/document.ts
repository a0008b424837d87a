import { setsOwn } from './own-line';
import { type Chunk, noSection, ScriptLine, type Section, sameSection, sectionOpened } from './script-line';
import { type LineEnd, type SplitLine, splitLines } from './split-lines';
import { type LineContent, StatementCache } from './statement-cache';

/** 0-based, in UTF-16 units, as in the protocol. */
export interface Position {
  readonly line: number;
  readonly character: number;
}

export interface DocumentEdit {
  readonly start: Position;
  readonly end: Position;
  readonly text: string;
}

/** Lines that an edit took out and put in, in the order of the document. */
export interface LineChange {
  readonly removed: readonly ScriptLine[];
  readonly added: readonly ScriptLine[];
}

const chunkSize = 256;

const noLines: readonly ScriptLine[] = [];

/** Where the chunks of a document begin. */
interface ChunkLayout {
  /** The number of each chunk's first line. */
  readonly starts: readonly number[];
  readonly lineCount: number;
}

/** A text as lines. Immutable: an edit gives a new document that shares all lines that stayed the same. */
export class Document {
  private constructor(
    private readonly chunks: readonly Chunk[],
    private readonly layout: ChunkLayout,
    private readonly cache: StatementCache,
  ) {}

  static of(text: string, cache = new StatementCache()): Document {
    const lines = openLines(splitLines(text), noSection, cache, true);
    const chunks = chunked(lines);
    return new Document(chunks, laidOut(chunks), cache);
  }

  get lineCount(): number {
    return this.layout.lineCount;
  }

  /** The line with this number; undefined past the end. */
  lineAt(number: number): ScriptLine | undefined {
    const place = this.find(number);
    return place && this.chunks[place.chunk]?.lines[place.offset];
  }

  /** The number of a line of this document; -1 for a line that is not, or no longer, in it. */
  lineNumberOf(line: ScriptLine): number {
    const { chunk } = line;
    const offset = chunk?.lines.indexOf(line) ?? -1;
    const before = chunk === null ? undefined : this.layout.starts[this.indexOf(chunk)];
    return before === undefined || offset < 0 ? -1 : before + offset;
  }

  /** -1 for a chunk that is not in this document. */
  private indexOf(chunk: Chunk): number {
    return this.chunks[chunk.index] === chunk ? chunk.index : this.chunks.indexOf(chunk);
  }

  *lines(): Iterable<ScriptLine> {
    for (const chunk of this.chunks) yield* chunk.lines;
  }

  /** The whole text; costs as much as the document is long, so it has no place on a keystroke's way. */
  text(): string {
    return this.chunks.map((chunk) => chunk.lines.map((line) => line.text + line.end).join('')).join('');
  }

  /** The line end that a new line should have: that of the first line. */
  get lineEnd(): Exclude<LineEnd, ''> {
    return this.lineAt(0)?.end || '\n';
  }

  /** A position moved into the document and out of surrogate pairs. */
  clamp({ line, character }: Position): Position {
    const number = Math.max(0, Math.min(line, this.lineCount - 1));
    const text = this.lineAt(number)?.text ?? '';
    if (line >= this.lineCount) return { line: number, character: text.length };
    const at = Math.max(0, Math.min(character, text.length));
    return { line: number, character: isInsidePair(text, at) ? at - 1 : at };
  }

  /** Applies one edit. Positions outside the document are clamped. */
  edit(edit: DocumentEdit): { readonly document: Document; readonly change: LineChange } {
    const [start, end] = inOrder(this.clamp(edit.start), this.clamp(edit.end));
    const { first, lines: split } = this.respliced(start, end, edit.text);
    const before = first === 0 ? noSection : (this.lineAt(first - 1)?.section ?? noSection);
    const added = openLines(split, before, this.cache, first === 0);
    let last = end.line;
    let section = added.at(-1)?.section ?? before;
    // An edit may open or close a section for the lines below, down to the next header.
    for (let line = this.lineAt(last + 1); line !== undefined; line = this.lineAt(last + 1)) {
      if (sectionOpened(line.statement) !== null || sameSection(line.section, section)) break;
      const moved = new ScriptLine(contentUnder(line, section, this.cache), line.end, section);
      added.push(moved);
      section = moved.section;
      last += 1;
    }
    return this.replaced(first, last, added);
  }

  /** The new lines for the edited stretch, with the text before and after it on its first and last line. */
  private respliced(start: Position, end: Position, text: string): { first: number; lines: SplitLine[] } {
    const before = start.line > 0 && start.character === 0 ? this.lineAt(start.line - 1) : undefined;
    const joins = before?.end === '\r'; // a line feed put after a lone carriage return makes one line end
    const first = joins ? start.line - 1 : start.line;
    const head = joins
      ? before.text + before.end
      : (this.lineAt(start.line)?.text.slice(0, start.character) ?? '');
    const tail = this.lineAt(end.line);
    const lines = splitLines(head + text + (tail?.text.slice(end.character) ?? '') + (tail?.end ?? ''));
    if (tail !== undefined && tail.end !== '') lines.pop();
    return { first, lines };
  }

  private replaced(first: number, last: number, added: ScriptLine[]) {
    const from = this.find(first) ?? { chunk: 0, offset: 0 };
    const to = this.find(last) ?? from;
    const touched = this.chunks.slice(from.chunk, to.chunk + 1);
    const region = noLines.concat(...touched.map((chunk) => chunk.lines));
    const after = from.offset + last - first + 1;
    const removed = region.slice(from.offset, after);
    const lines = region.slice(0, from.offset).concat(added, region.slice(after));
    const renewed = chunked(lines, from.chunk);
    const chunks = this.chunks.slice();
    chunks.splice(from.chunk, touched.length, ...renewed);
    // Most edits leave as many lines as there were: then all that was counted still holds.
    const isAsBefore = renewed.length === 1 && touched.length === 1 && added.length === removed.length;
    const layout = isAsBefore ? this.layout : laidOut(chunks);
    return { document: new Document(chunks, layout, this.cache), change: { removed, added } };
  }

  private find(number: number): { chunk: number; offset: number } | undefined {
    if (number < 0 || number >= this.lineCount) return undefined;
    const { starts } = this.layout;
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if ((starts[middle] ?? 0) <= number) low = middle;
      else high = middle - 1;
    }
    return { chunk: low, offset: number - (starts[low] ?? 0) };
  }
}

/** Some clients send the ends of a selection that was made backwards. */
function inOrder(one: Position, other: Position): readonly [Position, Position] {
  const isBackwards = one.line > other.line || (one.line === other.line && one.character > other.character);
  return isBackwards ? [other, one] : [one, other];
}

function openLines(
  split: readonly SplitLine[],
  before: Section,
  cache: StatementCache,
  atStart: boolean,
): ScriptLine[] {
  let section = before;
  return split.map(({ text, end }, index) => {
    const isFirst = atStart && index === 0;
    const content = isFirst ? firstLineContent(text, cache) : cache.parse(text, setsOwn(text, section));
    section = sectionOpened(content.statement) ?? section;
    return new ScriptLine(content, end, section);
  });
}

/** What a line says once it stands in another section. */
function contentUnder(
  { content, section: before }: ScriptLine,
  section: Section,
  cache: StatementCache,
): LineContent {
  const isOwn = setsOwn(content.text, section);
  return isOwn === setsOwn(content.text, before) ? content : cache.parse(content.text, isOwn);
}

/** A byte order mark is a mark only in front of the first line. */
function firstLineContent(text: string, cache: StatementCache): LineContent {
  const marked = text.startsWith('\ufeff') ? ` ${text.slice(1)}` : text;
  const content = cache.parse(marked, setsOwn(marked, noSection));
  return marked === text ? content : { text, statement: content.statement };
}

/** Counts the lines, and tells each chunk its place. */
function laidOut(chunks: readonly Chunk[]): ChunkLayout {
  const starts: number[] = [];
  let lineCount = 0;
  for (const [index, chunk] of chunks.entries()) {
    chunk.index = index;
    starts.push(lineCount);
    lineCount += chunk.lines.length;
  }
  return { starts, lineCount };
}

/** `first`: the place of the first chunk. */
function chunked(lines: readonly ScriptLine[], first = 0): Chunk[] {
  const chunks: Chunk[] = [];
  for (let from = 0; from < lines.length; from += chunkSize) {
    // A last piece that would be tiny joins the one before it.
    const isNearEnd = lines.length - from < chunkSize * 1.5;
    const stretch = lines.slice(from, isNearEnd ? lines.length : from + chunkSize);
    const chunk = { lines: stretch, index: first + chunks.length };
    for (const line of chunk.lines) line.chunk = chunk;
    chunks.push(chunk);
    if (isNearEnd) break;
  }
  return chunks;
}

/** Whether a place lies between the two halves of one character. */
export function isInsidePair(text: string, at: number): boolean {
  const before = text.charCodeAt(at - 1);
  const after = text.charCodeAt(at);
  return before >= 0xd800 && before <= 0xdbff && after >= 0xdc00 && after <= 0xdfff;
}
