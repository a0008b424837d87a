import { Document } from '../../language/document';
import type { ScriptLine } from '../../language/script-line';
import { opensSection } from '../navigation/section-extents';
import { type Range, rangeInLine, type TextEdit } from '../range';
import type { Snapshot } from '../snapshot';
import { withEdits } from '../text-edits';
import { type BlankLinePlan, planBlankLines } from './blank-lines';
import { alignedTexts } from './columns';
import { type FormattedLine, formOf } from './formatted-line';
import { blankEdits } from './line-edits';

/**
 * What makes a script tidy: edits of blanks alone, in order, none where nothing is to change. With a range
 * only its lines change, and they change as they would with the whole script.
 */
export function formatting({ script }: Pick<Snapshot, 'script'>, range?: Range): readonly TextEdit[] {
  const { document } = script;
  if (range === undefined) return editsFor(document, 0, document.lineCount - 1);
  const start = document.clamp(range.start);
  const end = document.clamp(range.end);
  const isBeforeLine = range.end.character === 0 && end.line > start.line && end.line === range.end.line;
  return editsFor(document, start.line, isBeforeLine ? end.line - 1 : end.line);
}

/** A whole text made tidy; line ends, and a mark at the start, stay as they are. */
export function formatText(text: string): string {
  const document = Document.of(text);
  return withEdits(document, editsFor(document, 0, document.lineCount - 1));
}

interface NumberedLine {
  readonly number: number;
  readonly line: ScriptLine;
  readonly form: FormattedLine;
}

function editsFor(document: Document, first: number, last: number): readonly TextEdit[] {
  const lines = linesAround(document, first, last);
  const forms = lines.map(({ form }) => form);
  const texts = alignedTexts(forms);
  const plan = planBlankLines(forms, {
    start: lines[0]?.number === 0,
    end: lines.at(-1)?.number === document.lineCount - 1,
  });
  return lines.flatMap((one, index) => {
    if (one.number < first || one.number > last) return [];
    const before = lines[index - 1]?.line;
    if (plan.removed.has(index)) return removal(document, lines, plan, index, { first, last });
    const inserted = plan.spacedBefore.has(index) ? insertion(one, before) : [];
    return [...inserted, ...inner(one, before, texts[index] ?? '')];
  });
}

/** The lines asked for, with those of their sections and the next header: they decide the columns. */
function linesAround(document: Document, first: number, last: number): readonly NumberedLine[] {
  const isHeader = (number: number) => {
    const line = document.lineAt(number);
    return line !== undefined && opensSection(line);
  };
  const lines: NumberedLine[] = [];
  let from = first;
  while (from > 0 && !(from < first && isHeader(from))) from -= 1;
  for (let number = from; ; number += 1) {
    const line = document.lineAt(number);
    if (line === undefined) return lines;
    lines.push({ number, line, form: formOf(line) });
    if (number > last && opensSection(line)) return lines;
  }
}

/** Takes out a run of lines with one edit, made at the first of them that was asked for. */
function removal(
  document: Document,
  lines: readonly NumberedLine[],
  { removed }: BlankLinePlan,
  index: number,
  { first, last }: { readonly first: number; readonly last: number },
): readonly TextEdit[] {
  const goes = (at: number) => {
    const number = lines[at]?.number ?? -1;
    return removed.has(at) && number >= first && number <= last;
  };
  if (goes(index - 1)) return [];
  const from = lines[index]?.number ?? 0;
  let count = 1;
  while (goes(index + count)) count += 1;
  const start = { line: from, character: 0 };
  if (from + count < document.lineCount) {
    return [{ range: { start, end: { line: from + count, character: 0 } }, newText: '' }];
  }
  const end = { line: from + count - 1, character: lines[index + count - 1]?.line.text.length ?? 0 };
  // What follows the last line end is no line when it is empty.
  return end.line === start.line && end.character === 0 ? [] : [{ range: { start, end }, newText: '' }];
}

function insertion({ number }: NumberedLine, before: ScriptLine | undefined): readonly TextEdit[] {
  return [{ range: rangeInLine(number, { start: 0, end: 0 }), newText: before?.end || '\n' }];
}

function inner({ number, line }: NumberedLine, before: ScriptLine | undefined, text: string) {
  // Without its blanks this line's end would join the carriage return before it into one line end.
  if (text === '' && before?.end === '\r' && line.end === '\n') return [];
  return blankEdits(number, line.text, text);
}
