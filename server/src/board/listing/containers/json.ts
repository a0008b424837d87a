import { createScanner } from 'jsonc-parser';
import type { Stretch } from '../listing';
import type { ListingLine } from '../text/line';
import { type DocumentEntry, deepest, settingOf, settingOfRecord, type Uncounted } from './document';

/** What a document says. */
export interface DocumentRead {
  readonly settings: readonly Uncounted[];
  readonly groups: readonly { readonly groups: readonly string[]; readonly at: Stretch }[];
  readonly comments: readonly Stretch[];
  /** Places of what is no JSON. */
  readonly wrong: readonly Stretch[];
  /** Where the document ends, in its text. */
  readonly end: number;
  readonly isClosed: boolean;
  readonly isTooDeep: boolean;
}

/** Whether a line begins a JSON text; a heading in brackets does not. */
export function isJsonAt(line: string): boolean {
  const open = line[0];
  if (open !== '{' && open !== '[') return false;
  const next = line.slice(1, 200).trimStart();
  if (next === '' || /^\/[/*]/.test(next)) return true;
  return open === '{' ? /^["}]/.test(next) : /^(?:[{"[\]]|-?[\d.eE]+\s*(?:,|$))/.test(next);
}

/** Reads the JSON that begins at `from`: token by token, so that no value is parsed and no depth goes on the stack. */
export function readJsonDocument(document: ListingLine, from: number, most: number): DocumentRead {
  return new DocumentReader(document, from, most).read();
}

/** What the scanner says of a token: its own names are for the compiler alone, and not there when this runs. */
const kinds = {
  openObject: 1,
  closeObject: 2,
  openList: 3,
  closeList: 4,
  comma: 5,
  colon: 6,
  text: 10,
  lineComment: 12,
  blockComment: 13,
  lineEnd: 14,
  blanks: 15,
  end: 17,
} as const;

/** An object or a list that is open. */
interface OpenContainer {
  readonly isList: boolean;
  readonly groups: readonly string[];
  /** Its own values so far, while it may be a record: an entry of a list may. */
  entries: DocumentEntry[] | null;
  count: number;
  key: { readonly name: string; readonly at: Stretch } | null;
}

const quoted = { kind: 'quoted', mark: '"' } as const;
const plain = { kind: 'plain' } as const;

class DocumentReader {
  private readonly settings: Uncounted[] = [];
  private readonly groups: { readonly groups: readonly string[]; readonly at: Stretch }[] = [];
  private readonly comments: Stretch[] = [];
  private readonly wrong: Stretch[] = [];
  private readonly open: OpenContainer[] = [];
  private readonly scanner;
  private last: { entry: DocumentEntry; line: number } | null = null;
  private line = 0;
  private end: number;
  private isTooDeep = false;

  constructor(
    private readonly document: ListingLine,
    from: number,
    private readonly most: number,
  ) {
    this.scanner = createScanner(document.text, false);
    this.scanner.setPosition(from);
    this.end = from;
  }

  read(): DocumentRead {
    while (!this.isTooDeep && this.settings.length <= this.most) {
      const kind: number = this.scanner.scan();
      if (kind === kinds.end) break;
      this.take(kind);
      if (this.open.length === 0 && !this.goesOn()) break;
    }
    this.flush();
    const { settings, groups, comments, wrong, end, isTooDeep } = this;
    return { settings, groups, comments, wrong, end, isTooDeep, isClosed: this.open.length === 0 };
  }

  /** Whether another document follows at once, as in a file of one record a line. */
  private goesOn(): boolean {
    const { text } = this.document;
    let at = this.scanner.getPosition();
    while (at < text.length && /[\s,]/.test(text[at] ?? '')) at += 1;
    return text[at] === '{' || text.startsWith('//', at) || text.startsWith('/*', at);
  }

  private take(kind: number): void {
    const at = this.place();
    if (kind === kinds.lineEnd) this.line += 1;
    else if (kind === kinds.lineComment || kind === kinds.blockComment) this.takeComment(at);
    else if (kind !== kinds.blanks) {
      this.end = at.end;
      this.takeToken(kind, at);
    }
  }

  private place(): Stretch {
    const start = this.scanner.getTokenOffset();
    return { start, end: start + this.scanner.getTokenLength() };
  }

  private takeToken(kind: number, at: Stretch): void {
    if (kind === kinds.openObject || kind === kinds.openList) this.begin(kind === kinds.openList, at);
    else if (kind === kinds.closeObject || kind === kinds.closeList) this.close(kind === kinds.closeList, at);
    else if (kind === kinds.text) this.takeText(at);
    else if (kind !== kinds.comma && kind !== kinds.colon && !this.growsTo(at)) this.value(at, plain);
  }

  /** What stands right behind a plain value is part of it: `012` is two tokens. */
  private growsTo({ start, end }: Stretch): boolean {
    const list = this.open.at(-1)?.entries ?? null;
    const entry = list === null ? this.last?.entry : list.at(-1);
    if (entry?.style !== plain || entry.valueAt.end !== start) return false;
    const valueAt = { start: entry.valueAt.start, end };
    const grown = { ...entry, value: this.textAt(valueAt), valueAt };
    if (list !== null) list[list.length - 1] = grown;
    else this.last = { entry: grown, line: this.line };
    return true;
  }

  private takeText({ start, end }: Stretch): void {
    const isWhole = end - start > 1 && this.document.text[end - 1] === '"';
    const at = { start: start + 1, end: isWhole ? end - 1 : end };
    if (!isWhole) this.wrong.push(this.document.at(start, end));
    const top = this.open.at(-1);
    if (top !== undefined && !top.isList && top.key === null) top.key = { name: this.textAt(at), at };
    else this.value(at, quoted);
  }

  private textAt({ start, end }: Stretch): string {
    return this.document.text.slice(start, end);
  }

  private value(at: Stretch, style: typeof quoted | typeof plain): void {
    const top = this.open.at(-1);
    if (top === undefined) return;
    top.count += 1;
    const key = top.isList ? { name: String(top.count), at: { start: at.start, end: at.start } } : top.key;
    top.key = null;
    if (key === null) {
      this.wrong.push(this.document.at(at.start, at.end));
      return;
    }
    const { name, at: nameAt } = key;
    this.add({ groups: top.groups, name, nameAt, value: this.textAt(at), valueAt: at, style, remark: null });
  }

  private add(entry: DocumentEntry): void {
    this.flush();
    const top = this.open.at(-1);
    if (top?.entries != null) top.entries.push(entry);
    else this.last = { entry, line: this.line };
  }

  /** The last value is one for sure once no comment can follow on its line. */
  private flush(): void {
    if (this.last !== null) this.settings.push(settingOf(this.last.entry, this.document));
    this.last = null;
  }

  private takeComment({ start, end }: Stretch): void {
    this.comments.push(this.document.at(start, end));
    if (this.last === null || this.last.line !== this.line) return;
    const text = this.document.text.slice(start, end);
    const close = text.startsWith('/*') && text.endsWith('*/') ? 2 : 0;
    this.last = {
      ...this.last,
      entry: { ...this.last.entry, remark: { start: start + 2, end: end - close } },
    };
    this.flush();
  }

  private begin(isList: boolean, at: Stretch): void {
    const whole = isList || this.open.length > 0 ? this.shortList(at, isList) : null;
    if (whole !== null && this.open.length > 0) {
      this.scanner.setPosition(whole);
      this.end = whole;
      this.value({ start: at.start, end: whole }, plain);
      return;
    }
    if (this.open.length >= deepest) {
      this.isTooDeep = true;
      return;
    }
    this.flush();
    const top = this.open.at(-1);
    // What holds others is no record.
    if (top !== undefined && !top.isList) this.giveUpRecord(top);
    const step = this.stepInto(top);
    const groups = step === null ? (top?.groups ?? []) : [...(top?.groups ?? []), step.name];
    if (step !== null && step.at.end > step.at.start)
      this.groups.push({ groups, at: this.document.at(step.at.start, step.at.end) });
    const isEntry = !isList && top?.isList === true;
    this.open.push({ isList, groups, entries: isEntry ? [] : null, count: 0, key: null });
  }

  private stepInto(top: OpenContainer | undefined): { readonly name: string; readonly at: Stretch } | null {
    if (top === undefined) return null;
    top.count += 1;
    const { key } = top;
    top.key = null;
    return top.isList ? { name: String(top.count), at: { start: 0, end: 0 } } : key;
  }

  /** Where a list of plain values ends that stands in one line, or an empty object: it is one value. */
  private shortList({ start }: Stretch, isList: boolean): number | null {
    const { text } = this.document;
    const limit = Math.min(text.length, start + longestList);
    for (let at = start + 1; at < limit; at += 1) {
      const character = text[at] ?? '';
      if (character === (isList ? ']' : '}')) return at + 1;
      if (character === '"') {
        at = closingQuote(text, at, limit);
        if (at < 0) return null;
      } else if (/[[{\n\r/]/.test(character) || (!isList && !/\s/.test(character))) return null;
    }
    return null;
  }

  private close(isList: boolean, at: Stretch): void {
    const top = this.open.at(-1);
    if (top === undefined || top.isList !== isList) {
      this.wrong.push(this.document.at(at.start, at.end));
      return;
    }
    this.flush();
    this.open.pop();
    if (top.entries === null) return;
    const outer = this.open.at(-1)?.groups ?? [];
    const record = settingOfRecord(outer, top.entries, this.document);
    if (record !== null) this.settings.push(record);
    else this.giveUpRecord(top);
  }

  private giveUpRecord(top: OpenContainer): void {
    for (const entry of top.entries ?? []) this.settings.push(settingOf(entry, this.document));
    top.entries = null;
  }
}

const longestList = 4000;

function closingQuote(text: string, at: number, limit: number): number {
  for (let end = at + 1; end < limit; end += 1) {
    if (text[end] === '\\') end += 1;
    else if (text[end] === '"') return end;
    else if (text[end] === '\n') return -1;
  }
  return -1;
}
