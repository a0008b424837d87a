import type { Forms } from '../../../catalog/model/board-forms';
import { noForms } from '../forms/compiled';
import type { LinesRead } from '../forms/read-lines';
import { SettingList } from '../forms/setting-list';
import type { Frame, LeftLine } from '../listing';
import { ListingLine } from '../text/line';
import { type DocumentRead, isJsonAt, readJsonDocument } from './json';
import { looksLikeYaml } from './looks-like-yaml';
import { isXmlAt, readXmlDocument } from './xml';

/** Lines of a text, with the text that their places are in. */
export interface DocumentSource {
  readonly text: string;
  readonly lines: readonly ListingLine[];
}

/** A text that is a document, with its forms. */
export interface DocumentFound {
  readonly known: Forms;
  readonly read: LinesRead;
}

const mostWrong = 0.05;

/** Reads a text that is JSON, XML or YAML; null for one that is none of them. */
export function documentIn(source: DocumentSource, most: number): DocumentFound | null {
  const json = jsonIn(source, most);
  if (json !== null) return { known: { ...noForms, container: 'json' }, read: json };
  const xml = xmlIn(source, most);
  if (xml !== null) return { known: { ...noForms, container: 'xml' }, read: xml };
  if (!looksLikeYaml(source.lines)) return null;
  const yaml = yamlIn(source, most);
  const isGood = yaml.settings.length > 0 && yaml.left.length <= mostWrong * yaml.settings.length;
  return isGood ? { known: { ...noForms, container: 'yaml' }, read: yaml } : null;
}

/** Reads a text by forms that say what document it is. */
export function readDocument(source: DocumentSource, { container }: Forms, most: number): LinesRead {
  const nothing = {
    settings: [],
    groups: [],
    comments: [],
    wrong: [],
    end: 0,
    isClosed: true,
    isTooDeep: false,
  };
  if (container === 'yaml') return yamlIn(source, most);
  const read = container === 'xml' ? xmlIn(source, most) : jsonIn(source, most);
  return read ?? readOf(nothing, source.lines, 0, 0);
}

const mostLinesAround = 20;
const longestBehind = 200;

function linesIn(lines: readonly ListingLine[], from: number, to: number): number {
  return lines.slice(from, to).filter(({ text }) => text.trim() !== '').length;
}

function jsonIn({ text, lines }: DocumentSource, most: number): LinesRead | null {
  const first = lines.findIndex((line) => isJsonAt(line.text.trimStart()));
  if (first < 0 || linesIn(lines, 0, first) > mostLinesAround) return null;
  const document = documentOf(text, lines.slice(first));
  const read = readJsonDocument(document, 0, most);
  const isGood = read.settings.length > 0 && read.wrong.length <= mostWrong * read.settings.length;
  if (!isGood && !read.isTooDeep) return null;
  // `[1, 2] -> gain` only begins like one.
  if (/^[^\r\n]*[\p{L}\p{N}]/u.test(document.text.slice(read.end, read.end + longestBehind))) return null;
  const end = document.at(read.end, read.end).start;
  const next = lines.findIndex((line, index) => index > first && line.at(0, 0).start >= end);
  const after = next < 0 ? lines.length : next;
  const around = [...lines.slice(0, first), ...lines.slice(after)];
  if (linesIn(lines, after, lines.length) > mostLinesAround || isLessThan(read, around)) return null;
  return readOf(read, lines, first, after);
}

/** Whether more settings stand around a document than in it: then it is a heading or a value of theirs, `[gyro]`. */
function isLessThan({ settings }: DocumentRead, around: readonly ListingLine[]): boolean {
  return around.filter(({ text }) => isLikeSetting(text.trim())).length > settings.length;
}

const longestName = 80;

/** A name, a mark, and something behind it. */
function isLikeSetting(text: string): boolean {
  const mark = text.search(/[=:]/);
  return mark > 0 && mark <= longestName && mark < text.length - 1 && /^[\p{L}_"'@]/u.test(text);
}

function xmlIn({ text, lines }: DocumentSource, most: number): LinesRead | null {
  const first = lines.findIndex((line) => isXmlAt(line.text.trimStart()));
  if (first < 0 || linesIn(lines, 0, first) > mostLinesAround) return null;
  const document = documentOf(text, lines.slice(first));
  const read = readXmlDocument(document, most);
  if (read === null) return null;
  const isGood = read.settings.length > 0 && read.wrong.length <= mostWrong * read.settings.length;
  if (!isGood && !read.isTooDeep) return null;
  const end = document.at(read.end, read.end).start;
  const next = lines.findIndex((line, index) => index > first && line.at(0, 0).start >= end);
  return readOf(read, lines, first, next < 0 ? lines.length : next);
}

/** Its library is a part of the bundle of its own: loaded with the first text that is YAML. */
function yamlIn({ text, lines }: DocumentSource, most: number): LinesRead {
  const { readYaml }: typeof import('./yaml') = require('./yaml');
  return readOf(readYaml(documentOf(text, lines), most), lines, 0, lines.length);
}

/** The lines as one text: as they stand where nothing was taken out of them. */
function documentOf(text: string, lines: readonly ListingLine[]): ListingLine {
  const [first, ...rest] = lines;
  if (first === undefined) return ListingLine.plain(0, '', 0, 'line');
  const start = first.at(0, 0).start;
  const last = rest.at(-1) ?? first;
  const end = last.at(0, last.text.length).end;
  // Between two lines at most two characters end the first.
  const hasOldEnds = rest.length > 0 && lines.some((line) => line.end === 'return');
  const isWhole =
    !hasOldEnds &&
    lines.every((line, at) => {
      const next = lines[at + 1];
      const lineEnd = line.at(0, line.text.length).end;
      return line.isUntouched && (next === undefined || next.at(0, 0).start - lineEnd <= 2);
    });
  return isWhole
    ? ListingLine.plain(first.number, text.slice(start, end), start, 'line')
    : ListingLine.joined([first, ...rest], '\n');
}

function readOf(read: DocumentRead, lines: readonly ListingLine[], from: number, to: number): LinesRead {
  const list = new SettingList();
  for (const setting of read.settings) list.add(setting);
  const last = lines[to - 1];
  const left: LeftLine[] = read.wrong.map((at) => ({
    number: numberAt(lines, at.start),
    at,
    reason: 'This is no part of the document.',
  }));
  if (!read.isClosed && last !== undefined)
    left.push({ number: last.number, at: last.whole(), reason: 'The document ends before it is closed.' });
  return {
    settings: list.settings,
    headings: read.groups,
    comments: read.comments,
    openings: framesIn(lines.slice(0, from)),
    closings: framesIn(lines.slice(to)),
    left,
    lines: [],
    settingLines: list.size,
    unread: [],
    refused: read.isTooDeep ? 'The document nests deeper than 64 levels.' : null,
  };
}

function framesIn(lines: readonly ListingLine[]): readonly Frame[] {
  return lines
    .filter(({ text }) => text.trim() !== '')
    .map((line) => ({ at: line.whole(), board: null, count: null }));
}

/** The number of the line in which a place is. */
function numberAt(lines: readonly ListingLine[], place: number): number {
  let [low, high] = [0, lines.length - 1];
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if ((lines[middle]?.at(0, 0).start ?? 0) <= place) low = middle;
    else high = middle - 1;
  }
  return lines[low]?.number ?? 0;
}
