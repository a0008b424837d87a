import { type CST, Parser } from 'yaml';
import type { Stretch, Style } from '../listing';
import type { ListingLine } from '../text/line';
import { type DocumentEntry, deepest, settingOf, settingOfRecord, type Uncounted } from './document';
import type { DocumentRead } from './json';

/**
 * Reads YAML from its tokens: no value is parsed, no tag and no alias is followed. Null where the text nests too deep
 * to be looked through.
 */
export function readYaml(document: ListingLine, most: number): DocumentRead {
  const reader = new YamlReader(document, most);
  if (nestsTooDeep(document.text)) return reader.result(true);
  for (const token of new Parser().parse(document.text)) reader.take(token);
  return reader.result(false);
}

/** Brackets within each other, whatever they stand in. */
function nestsTooDeep(text: string): boolean {
  let depth = 0;
  for (let at = 0; at < text.length; at += 1) {
    const character = text[at];
    if (character === '[' || character === '{') depth += 1;
    else if ((character === ']' || character === '}') && depth > 0) depth -= 1;
    if (depth > 4 * deepest) return true;
  }
  return false;
}

interface Written {
  readonly value: string;
  readonly at: Stretch;
  readonly style: Style;
}

class YamlReader {
  private readonly settings: Uncounted[] = [];
  private readonly groups: { readonly groups: readonly string[]; readonly at: Stretch }[] = [];
  private readonly comments: Stretch[] = [];
  private readonly wrong: Stretch[] = [];
  private isTooDeep = false;

  constructor(
    private readonly document: ListingLine,
    private readonly most: number,
  ) {}

  result(isTooDeep: boolean): DocumentRead {
    const { settings, groups, comments, wrong } = this;
    return {
      settings,
      groups,
      comments,
      wrong,
      end: this.document.text.length,
      isClosed: true,
      isTooDeep: isTooDeep || this.isTooDeep,
    };
  }

  take(token: CST.Token): void {
    if (token.type === 'document') {
      this.takeTrivia(token.start);
      if (token.value !== undefined) this.collection(token.value, [], 0, null);
      this.takeTrivia(token.end ?? []);
    } else if (token.type === 'comment') this.takeTrivia([token]);
    else if (token.type === 'error')
      this.wrong.push(this.document.at(token.offset, token.offset + token.source.length));
  }

  private takeTrivia(tokens: readonly CST.SourceToken[]): void {
    for (const { type, offset, source } of tokens)
      if (type === 'comment') this.comments.push(this.document.at(offset, offset + source.length));
  }

  /** A map or a list; `record`: where its own values are gathered while it may be a record. */
  private collection(
    token: CST.Token,
    groups: readonly string[],
    depth: number,
    record: DocumentEntry[] | null,
  ): void {
    if (depth > deepest) this.isTooDeep = true;
    if (this.isTooDeep || this.settings.length > this.most) return;
    if (token.type === 'block-map') for (const item of token.items) this.item(item, groups, depth, record);
    else if (token.type === 'block-seq') this.list(token.items, groups, depth);
    else if (token.type === 'flow-collection') {
      if (token.start.type === 'flow-seq-start') this.list(token.items, groups, depth);
      else for (const item of token.items) this.item(item, groups, depth, record);
      this.takeTrivia(token.end);
    } else this.left(token);
  }

  private left(token: CST.Token): void {
    const { offset } = token;
    const length = 'source' in token ? token.source.length : 0;
    this.wrong.push(this.document.at(offset, offset + length));
  }

  private item(
    item: CST.CollectionItem,
    groups: readonly string[],
    depth: number,
    record: DocumentEntry[] | null,
  ): void {
    this.takeTrivia(item.start);
    this.takeTrivia(item.sep ?? []);
    const { key, value } = item;
    if (key == null) return;
    const name = scalar(key);
    if (name === null || item.sep?.some(({ type }) => type === 'map-value-ind') !== true) this.left(key);
    else this.value(name, item.sep, value, groups, depth, record);
  }

  private value(
    name: Written,
    sep: readonly CST.SourceToken[],
    value: CST.Token | undefined,
    groups: readonly string[],
    depth: number,
    record: DocumentEntry[] | null,
  ): void {
    const written = value === undefined ? this.emptyBehind(sep) : this.written(value);
    if (written !== null) {
      this.add({ name: name.value, nameAt: name.at }, written, groups, remarkBehind(value), record);
    } else if (value !== undefined) {
      const inner = [...groups, name.value];
      this.giveUp(record);
      this.groups.push({ groups: inner, at: this.document.at(name.at.start, name.at.end) });
      this.collection(value, inner, depth + 1, null);
    }
  }

  private list(items: readonly CST.CollectionItem[], groups: readonly string[], depth: number): void {
    let count = 0;
    for (const { start, key, value, sep } of items) {
      this.takeTrivia(start);
      const entry = value ?? key;
      if (entry == null) continue;
      count += 1;
      const written = sep === undefined ? this.written(entry) : null;
      const name = { name: String(count), nameAt: { start: entry.offset, end: entry.offset } };
      if (written !== null) this.add(name, written, groups, remarkBehind(entry), null);
      else this.entry(entry, groups, count, depth);
    }
  }

  /** A map or list in a list: a record where it says a name and a value. */
  private entry(token: CST.Token, groups: readonly string[], count: number, depth: number): void {
    const record: DocumentEntry[] = [];
    const before = this.settings.length;
    this.collection(token, [...groups, String(count)], depth + 1, record);
    const setting = this.settings.length === before ? settingOfRecord(groups, record, this.document) : null;
    if (setting === null) this.giveUp(record);
    else this.settings.push(setting);
  }

  private add(
    named: Pick<DocumentEntry, 'name' | 'nameAt'>,
    { value, at, style }: Written,
    groups: readonly string[],
    remark: Stretch | null,
    record: DocumentEntry[] | null,
  ): void {
    if (remark !== null) this.comments.push(this.document.at(remark.start - 1, remark.end));
    const entry = { ...named, groups, value, valueAt: at, style, remark };
    if (record === null) this.settings.push(settingOf(entry, this.document));
    else record.push(entry);
  }

  private giveUp(record: DocumentEntry[] | null): void {
    for (const entry of record ?? []) this.settings.push(settingOf(entry, this.document));
    record?.splice(0);
  }

  /** A value that holds no others: a scalar, a list in one line, nothing. */
  private written(token: CST.Token): Written | null {
    const value = scalar(token);
    if (value !== null) return value;
    if (token.type === 'block-scalar') return this.block(token);
    if (token.type !== 'flow-collection') return null;
    const end = endOfFlow(token);
    const text = this.document.text.slice(token.offset, end);
    const isPlain = token.items.every(
      ({ value: one, key }) => (one ?? key) == null || scalar((one ?? key) as CST.Token) !== null,
    );
    const isList = token.start.type === 'flow-seq-start' || token.items.length === 0;
    if (!isList || !isPlain || text.includes('\n')) return null;
    return { value: text, at: { start: token.offset, end }, style: { kind: 'plain' } };
  }

  private block(token: CST.BlockScalar): Written {
    const start =
      token.offset + token.props.reduce((sum, prop) => sum + ('source' in prop ? prop.source.length : 0), 0);
    const text = token.source.trimEnd();
    const value = text
      .split(/\r\n|\r|\n/)
      .map((line) => line.trim())
      .filter((line) => line !== '')
      .join(' ');
    const from = start + text.length - text.trimStart().length;
    return { value, at: { start: from, end: start + text.length }, style: { kind: 'plain' } };
  }

  private emptyBehind(sep: readonly CST.SourceToken[]): Written {
    const colon = sep.find(({ type }) => type === 'map-value-ind');
    const end = (colon?.offset ?? 0) + 1;
    const at = this.document.text[end] === ' ' ? end + 1 : end;
    return { value: '', at: { start: at, end: at }, style: { kind: 'plain' } };
  }
}

/** A plain or quoted scalar; one over several lines has a blank for each line end. */
function scalar(token: CST.Token): Written | null {
  if (token.type === 'scalar' || token.type === 'alias') {
    const { source, offset } = token;
    return {
      value: joined(source),
      at: { start: offset, end: offset + source.length },
      style: { kind: 'plain' },
    };
  }
  if (token.type !== 'single-quoted-scalar' && token.type !== 'double-quoted-scalar') return null;
  const mark = token.type === 'single-quoted-scalar' ? "'" : '"';
  const isClosed = token.source.length > 1 && token.source.endsWith(mark);
  const at = { start: token.offset + 1, end: token.offset + token.source.length - (isClosed ? 1 : 0) };
  return {
    value: joined(token.source.slice(1, isClosed ? -1 : undefined)),
    at,
    style: { kind: 'quoted', mark },
  };
}

function joined(source: string): string {
  if (!/[\r\n]/.test(source)) return source;
  return source
    .split(/\r\n|\r|\n/)
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .join(' ');
}

function endOfFlow({ end, start }: CST.FlowCollection): number {
  const close = end.find(({ type }) => type === 'flow-seq-end' || type === 'flow-map-end');
  return close === undefined ? start.offset + start.source.length : close.offset + close.source.length;
}

/** What a comment behind a value says, on its line, without its mark. */
function remarkBehind(token: CST.Token | undefined): Stretch | null {
  if (token === undefined || !('end' in token)) return null;
  for (const { type, offset, source } of token.end ?? []) {
    if (type === 'newline') return null;
    if (type === 'comment') return { start: offset + 1, end: offset + source.length };
  }
  return null;
}
