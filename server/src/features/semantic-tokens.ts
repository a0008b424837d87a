import type { Name, Span, Statement } from '../language/ast';
import type { ScriptLine } from '../language/script-line';
import type { Range } from './range';
import type { Snapshot } from './snapshot';
import { valueMarks } from './value-marks';

/** What a stretch of a script is; the order is that of the legend. */
export const semanticTokenTypes = [
  'namespace',
  'property',
  'number',
  'unit',
  'keyword',
  'enumMember',
  'variable',
  'string',
  'comment',
  'acceptance',
] as const;

type SemanticTokenType = (typeof semanticTokenTypes)[number];

interface MarkedSpan {
  readonly type: SemanticTokenType;
  readonly span: Span;
}

/** A stretch of one line, 0-based and in UTF-16 units. */
export interface SemanticToken {
  readonly line: number;
  readonly start: number;
  readonly length: number;
  readonly type: SemanticTokenType;
}

/** All tokens, or those of a range's lines: sorted, none over another, each within its line. */
export function semanticTokens(snapshot: Snapshot, range?: Range): readonly SemanticToken[] {
  const { document } = snapshot.script;
  const first = Math.max(0, range?.start.line ?? 0);
  const last = Math.min(document.lineCount - 1, range?.end.line ?? document.lineCount - 1);
  const tokens: SemanticToken[] = [];
  for (let number = first; number <= last; number += 1) {
    const line = document.lineAt(number);
    if (line !== undefined) tokens.push(...lineTokens(snapshot, line, number));
  }
  return tokens;
}

function lineTokens(snapshot: Snapshot, line: ScriptLine, number: number): readonly SemanticToken[] {
  return [...marksOf(snapshot, line), ...commentMarks(line.statement)]
    .filter(({ span }) => span.end > span.start)
    .sort((one, other) => one.span.start - other.span.start)
    .map(({ span, type }) => ({ line: number, start: span.start, length: span.end - span.start, type }));
}

function marksOf(snapshot: Snapshot, line: ScriptLine): readonly MarkedSpan[] {
  const { statement } = line;
  switch (statement.kind) {
    case 'include':
      return [keyword(line, 'include'), marked('string', statement.path)];
    case 'section': {
      const section = marked('namespace', statement.path);
      return statement.pack === null ? [section] : [section, marked('namespace', statement.pack)];
    }
    case 'constant':
      return [
        keyword(line, 'let'),
        marked('variable', statement.name),
        ...valueMarks(snapshot, line, statement.value),
      ];
    case 'setting':
      return [marked('property', statement.path), ...valueMarks(snapshot, line, statement.value)];
    default:
      return [];
  }
}

function commentMarks({ comment, acceptance }: Statement): readonly MarkedSpan[] {
  if (acceptance !== null) return [marked('acceptance', acceptance)];
  return comment === null ? [] : [marked('comment', comment)];
}

function keyword({ text }: ScriptLine, word: string): MarkedSpan {
  const start = Math.max(0, text.indexOf(word));
  return { type: 'keyword', span: { start, end: start + word.length } };
}

function marked(type: SemanticTokenType, { start, end }: Span | Name): MarkedSpan {
  return { type, span: { start, end } };
}
