import type { Span, ValueNode } from '../../language/ast';
import type { ScriptLine } from '../../language/script-line';
import { type Position, type Range, rangeInLine } from '../range';
import type { Snapshot } from '../snapshot';
import { sectionAround } from './section-extents';
import { insideQuotes, spanHolds, valueSpansAt } from './value-spans';

/**
 * What to select step by step around a position, the smallest first: a name or number, what it is part of,
 * the value, the statement, the line, the section, the script. Each holds the one before and is larger.
 */
export function selectionRanges({ script }: Pick<Snapshot, 'script'>, wanted: Position): readonly Range[] {
  const { document } = script;
  const position = document.clamp(wanted);
  const line = document.lineAt(position.line);
  if (line === undefined) return [];
  const spans = spansAt(line, position.character);
  const ranges = spans.map((span) => rangeInLine(position.line, span));
  const extent = sectionAround(document, position.line);
  const end = (number: number) => ({
    line: number,
    character: document.lineAt(number)?.text.length ?? 0,
  });
  if (extent !== undefined) {
    ranges.push({ start: { line: extent.first, character: 0 }, end: end(extent.last) });
  }
  ranges.push({ start: { line: 0, character: 0 }, end: end(document.lineCount - 1) });
  return growing(ranges);
}

/** Leaves out what does not hold all before it and more, such as a statement whose text runs to the line's end. */
function growing(ranges: readonly Range[]): readonly Range[] {
  const kept: Range[] = [];
  for (const range of ranges) {
    const before = kept.at(-1);
    if (before === undefined || isLarger(range, before)) kept.push(range);
  }
  return kept;
}

function spansAt(line: ScriptLine, at: number): readonly Span[] {
  const { text, statement } = line;
  const { comment } = statement;
  const content = contentSpan(text, comment);
  const all = { start: 0, end: text.length };
  const written = { start: content.start, end: text.trimEnd().length };
  if (comment !== null && at >= comment.start) {
    return [wordsOf(text, comment), { start: comment.start, end: written.end }, written, all].filter((span) =>
      spanHolds(span, at),
    );
  }
  const parts = partsOf(line, at);
  return [...parts, content, written, all].filter((span) => span.end > span.start && spanHolds(span, at));
}

function partsOf({ text, statement }: ScriptLine, at: number): readonly Span[] {
  switch (statement.kind) {
    case 'include':
      return [insideQuotes(text, statement.path), statement.path];
    case 'section':
      return statement.pack === null ? [statement.path] : [statement.pack, statement.path];
    case 'constant':
      return spanHolds(statement.name, at) ? [statement.name] : inValue(text, statement.value, at);
    case 'setting':
      return spanHolds(statement.path, at) ? [statement.path] : inValue(text, statement.value, at);
    default:
      return [];
  }
}

function inValue(text: string, value: ValueNode | null, at: number): readonly Span[] {
  return value === null ? [] : valueSpansAt(text, value, at);
}

/** The statement without its comment and the blanks around it. */
function contentSpan(text: string, comment: Span | null): Span {
  const code = text.slice(0, comment?.start);
  const end = code.trimEnd().length;
  return { start: Math.min(end, code.length - code.trimStart().length), end };
}

/** A comment without its mark. */
function wordsOf(text: string, { start, end }: Span): Span {
  const words = text.slice(start, end).replace(/^#+\s*/, '');
  return { start: end - words.length, end: start + text.slice(start, end).trimEnd().length };
}

function isLarger(outer: Range, inner: Range): boolean {
  const before = compare(outer.start, inner.start);
  const after = compare(inner.end, outer.end);
  return before <= 0 && after <= 0 && (before < 0 || after < 0);
}

function compare(one: Position, other: Position): number {
  return one.line - other.line || one.character - other.character;
}
