import type { Forms } from '../../../catalog/model/board-forms';
import { type CompiledForms, compiled, formsOf, noForms } from '../forms/compiled';
import { isAloneAbove, readHeading } from '../forms/heading';
import { indentOf } from '../forms/indent';
import { partsOfLine } from '../forms/parts-of-line';
import type { PartRead } from '../forms/read-part';
import { saysOf } from '../forms/said-between';
import type { DecimalMark } from '../number-look';
import { cutAtBlocks } from '../text/blocks';
import { beginsWithAny } from '../text/characters';
import { joinedAt } from '../text/joined';
import type { ListingLine } from '../text/line';
import { besideForms } from './beside';
import { blocksIn } from './blocks';
import { closersIn } from './closers';
import { commented } from './comments';
import { countLines } from './frames';
import {
  type CommentLine,
  type HeadingLine,
  headingsAmong,
  headingsInComments,
  isSurelyHeading,
} from './headings';
import { type IndentedLine, indentIn } from './indents';
import { lineFormsIn, moreFormsIn } from './line-forms';
import { markedAmong } from './marked';
import { pathIn } from './path';
import { type Sample, sampleOf } from './sample';
import { sentencesIn } from './sentences';
import { type TableFound, tableIn } from './table';

/** Finds from lines how a listing writes its settings. */
export function findForms(written: readonly ListingLine[]): Forms {
  const continued = continuedIn(written);
  const whole = continued === null ? written : joinedAt(written, continued);
  const blocks = blocksIn(whole);
  const found = formsIn(blocks === undefined ? whole : cutAtBlocks(whole, blocks, marksIn(whole)).pieces);
  const isRead = found.container === 'lines' && found.headings.length > 0;
  return {
    ...(blocks === undefined || isRead ? found : formsIn(whole)),
    ...(continued === null ? {} : { continued }),
    ...(blocks === undefined || !isRead ? {} : { blocks }),
  };
}

/** The comment marks of lines. */
function marksIn(lines: readonly ListingLine[]): readonly string[] {
  return commented(sampleOf(lines, [...lines.keys()])).marks;
}

/** Finds how lines write settings, each of which says one thing. */
function formsIn(lines: readonly ListingLine[]): Forms {
  const indices = lines.flatMap(({ text }, index) => (text.trim() === '' ? [] : [index]));
  const { marks: before, lines: all, comments } = commented(sampleOf(lines, indices));
  const { opening, closing, body } = framesAround(lines, all, indices.length);
  const table = tableIn(
    body.filter(({ text }) => !isSurelyHeading(text)),
    '.',
  );
  if (table !== null)
    return { ...tableForms(lines, body, table, before), opening: [...opening], closing: [...closing] };
  const { forms: main, beside, isKeyed } = lineFormsIn(body, before);
  const marked = markedAmong(comments, before, main);
  const marks = before.filter((mark) => marked.every((one) => one.mark !== mark));
  const headings = headingsAmong(headingLines(lines, body, formsOf(main)));
  const isHeading = headingTest(headings, formsOf(main));
  const settings = body.filter((line) => !isHeading(line));
  const found = moreFormsIn(withoutContinued(lines, settings, formsOf(main), isHeading), main, marks);
  const forms = formsOf([...marked.map(({ form }) => form), ...found]);
  const markedLines = comments.filter(({ text }) => marked.some(({ mark }) => text.startsWith(mark)));
  const read = partsIn([...settings, ...markedLines], forms);
  const values = valuesOf(read);
  const decimal = decimalIn(values);
  // Where headings group, and in keys with values, marks in a name are part of it.
  const path = headings.length > 0 || isKeyed ? undefined : pathIn(namesOf(read));
  const saysBetween = !isKeyed && areSaid(read, decimal);
  const closers = closersIn(lines, body.filter(isHeading).length);
  const indent = closers.length > 0 ? 'none' : indentIn(indentedLines(lines, body, forms, isHeading));
  // Where other lines group, comments are what they look like.
  const titles =
    headings.length > 0 || indent !== 'none'
      ? []
      : headingsInComments(commentLines(lines, comments, marks, forms));
  return {
    ...noForms,
    lines: [...marked.map(({ form }) => form), ...found],
    beside: [...new Set([...beside, ...besideForms(values, marks, decimal)])],
    ...(saysBetween ? { saysBetween } : {}),
    headings: [...headings, ...titles],
    closers: [...closers],
    indent,
    ...(path === undefined ? {} : { path }),
    comments: [...marks],
    opening: [...opening],
    closing: [...closing],
    decimal,
  };
}

/** A part of a line that writes a setting, with the line's text. */
interface ReadSetting {
  readonly text: string;
  readonly part: PartRead;
}

function partsIn(lines: readonly Sample[], forms: CompiledForms): readonly ReadSetting[] {
  return lines.flatMap(({ text }) => partsOfLine(forms, text).map((part) => ({ text, part })));
}

function namesOf(settings: readonly ReadSetting[]): readonly string[] {
  return settings.map(({ text, part: { name } }) => text.slice(name.start, name.end));
}

/** Their values with all that stands behind them. */
function valuesOf(settings: readonly ReadSetting[]): readonly string[] {
  return settings.flatMap(({ text, part: { rest, style } }) =>
    style.kind === 'plain' ? [text.slice(rest.start, rest.end)] : [],
  );
}

interface Framed {
  readonly opening: readonly string[];
  readonly closing: readonly string[];
  /** All other lines. */
  readonly body: readonly Sample[];
}

const mostSaid = 4;

/** What stands before and after the settings: how many there are, and sentences. */
function framesAround(lines: readonly ListingLine[], all: readonly Sample[], count: number): Framed {
  const counted = countLines(all, count);
  const rest = all.filter(({ index }) => !counted.indices.has(index));
  const said = sentencesIn(rest, {
    indentOf: ({ index }) => indentOf(lines[index]?.text ?? ''),
    isApart: ({ index }) => index > 0 && lines[index - 1]?.text.trim() === '',
  });
  const around = new Set([...said.opening, ...said.closing]);
  const textsOf = (sentences: readonly Sample[]) => sentences.map(({ text }) => text).slice(0, mostSaid);
  return {
    opening: [...counted.opening, ...textsOf(said.opening)],
    closing: [...counted.closing, ...textsOf(said.closing)],
    body: rest.filter((line) => !around.has(line)),
  };
}

/** A table, with what stands around its rows. */
function tableForms(
  lines: readonly ListingLine[],
  body: readonly Sample[],
  { table, heading }: TableFound,
  comments: readonly string[],
): Forms {
  const forms: Forms = { ...noForms, container: 'table', table, comments: [...comments] };
  const names = body.find(({ index }) => index === heading)?.text;
  const rows = body.filter(({ text }) => text !== names);
  const headings = headingsAmong(headingLines(lines, rows, compiled(forms)));
  return { ...forms, headings: [...headings] };
}

/** What lines end with that go on in the next: a backslash, where the last one has none. */
function continuedIn(lines: readonly ListingLine[]): string | null {
  const mark = '\\';
  const ends = lines.filter(({ text }) => text.trimEnd().endsWith(mark)).length;
  const said = lines.filter(({ text }) => text.trim() !== '').length;
  return ends > 0 && 2 * ends < said && lines.at(-1)?.text.trimEnd().endsWith(mark) !== true ? mark : null;
}

/** The lines but those that go on with a value: they are of no form, however much some look like one. */
function withoutContinued(
  lines: readonly ListingLine[],
  body: readonly Sample[],
  forms: CompiledForms,
  isHeading: Test,
): readonly Sample[] {
  const indented = indentedLines(lines, body, forms, isHeading);
  if (indentIn(indented) !== 'continues') return body;
  let anchor = 0;
  return body.filter((_, at) => {
    const { indent = 0, kind } = indented[at] ?? {};
    if (kind === 'setting' || indent <= anchor) anchor = indent;
    return kind === 'setting' || indent <= anchor;
  });
}

type Test = (line: Sample) => boolean;

/** Lines that are headings by these forms, and hold no value. */
function headingTest(headings: readonly string[], forms: CompiledForms): Test {
  const templates = compiled({ ...noForms, headings: [...headings] }).headings;
  return ({ text }) =>
    readHeading(templates, text) !== null && (isSurelyHeading(text) || !holdsValue(forms, text));
}

/** Whether a line is a setting for sure: only a colon, or nothing, may end a heading as well. */
function holdsValue(forms: CompiledForms, text: string): boolean {
  return partsOfLine(forms, text).some(
    ({ rest, style }) => rest.end > rest.start || style.kind === 'presence' || !text.endsWith(':'),
  );
}

/** Lines that hold no value, with what follows each. */
function headingLines(
  lines: readonly ListingLine[],
  body: readonly Sample[],
  forms: CompiledForms,
): readonly HeadingLine[] {
  const holds = body.map(({ text }) => holdsValue(forms, text) && !isSurelyHeading(text));
  return body.flatMap(({ text, index }, at) => {
    const next = body[at + 1];
    if (holds[at] === true || next === undefined) return [];
    const isDeeper = indentOf(lines[next.index]?.text ?? '') > indentOf(lines[index]?.text ?? '');
    const leads = isDeeper || holds[at + 1] === true || holds[at + 2] === true;
    const isBelowBlank = index > 0 && lines[index - 1]?.text.trim() === '';
    const apart = isDeeper ? 'deeper' : isBelowBlank ? 'below-blank' : index === 0 ? 'first' : null;
    const isEmpty = partsOfLine(forms, text).length > 0 && !isSurelyHeading(text);
    return [{ text, leads, apart, isEmpty }];
  });
}

function indentedLines(
  lines: readonly ListingLine[],
  body: readonly Sample[],
  forms: CompiledForms,
  isHeading: Test,
): readonly IndentedLine[] {
  return body.map((line) => {
    const indent = indentOf(lines[line.index]?.text ?? '');
    if (isHeading(line)) return { indent, kind: 'heading', column: null };
    const [part] = partsOfLine(forms, line.text);
    return part === undefined
      ? { indent, kind: 'unread', column: null }
      : { indent, kind: 'setting', column: indent + part.name.end };
  });
}

/** Comments with what stands around each. */
function commentLines(
  lines: readonly ListingLine[],
  comments: readonly Sample[],
  marks: readonly string[],
  forms: CompiledForms,
): readonly CommentLine[] {
  const textOf = (index: number) => lines[index]?.text ?? '';
  const isSaid = (index: number) => {
    const text = textOf(index);
    return text.trim() !== '' && !beginsWithAny(text, marks);
  };
  return comments.flatMap(({ text, index }) => {
    const mark = marks.find((one) => text.startsWith(one));
    let next = index + 1;
    while (next < lines.length && next - index <= mostBetween && !isSaid(next)) next += 1;
    if (mark === undefined || !isSaid(next)) return [];
    const leads = partsOfLine(forms, textOf(next)).length > 0;
    return [{ text, mark, leads, isAlone: isAloneAbove(index, next, textOf) }];
  });
}

/** So many comments and blank lines stand at most between a heading and its settings. */
const mostBetween = 24;

/** Whether what stands in brackets between names and values is all said of the values. */
function areSaid(read: readonly ReadSetting[], decimal: DecimalMark): boolean {
  const said = read.flatMap(({ text, part: { value, said } }) =>
    said
      .filter(([, at]) => at.end <= value.start)
      .map(([, at]) =>
        saysOf(text.slice(at.start, at.end).trim(), text.slice(value.start, value.end), decimal),
      ),
  );
  return said.length > 0 && said.every((one) => one);
}

/** A comma where values have decimals behind commas and none behind points. */
function decimalIn(values: readonly string[]): DecimalMark {
  const first = values.map((value) => value.split(/\s/)[0] ?? '');
  const commas = first.filter((value) => /^[+-]?\d{1,15},\d{1,12}[%\p{L}]{0,8}$/u.test(value)).length;
  const points = first.filter((value) => /^[+-]?\d{0,15}\.\d{1,12}[%\p{L}]{0,8}$/u.test(value)).length;
  return commas > points && (commas > 1 || values.length < 10) ? ',' : '.';
}
