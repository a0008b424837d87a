import type { FoundParameter } from '../catalog/catalog';
import type { ScriptLine } from '../language/script-line';
import { type Position, type Range, rangeInLine } from './range';
import type { Snapshot } from './snapshot';

/** What is being typed at a position. `range` covers the whole word around it, which an item replaces. */
export type TypingContext =
  | {
      readonly kind: 'name';
      readonly range: Range;
      readonly typed: string;
      readonly isAlone: boolean;
      readonly hasValue: boolean;
    }
  | { readonly kind: 'section'; readonly range: Range; readonly isClosed: boolean }
  | { readonly kind: 'section-pack'; readonly range: Range }
  | { readonly kind: 'value'; readonly range: Range; readonly before: string }
  | { readonly kind: 'unit'; readonly range: Range }
  | { readonly kind: 'acceptance'; readonly range: Range }
  | { readonly kind: 'none' };

const wordBefore = /[A-Za-z0-9_.-]*$/;
const wordAfter = /^[A-Za-z0-9_.-]*/;
const numberBefore = /(?:^|[\s=,[(>.*/+-])-?\d[\d_]*(?:\.\d+)?(\s*)([A-Za-zµ%°/^*()\d]*)$/;

export function typingContext(line: ScriptLine, { line: number, character }: Position): TypingContext {
  const { text, statement } = line;
  const before = text.slice(0, character);
  const after = text.slice(character);
  const around = (left: string, right: string): Range =>
    rangeInLine(number, { start: character - left.length, end: character + right.length });
  if (statement.comment !== null && character > statement.comment.start) {
    return /#\s*accept\s+[a-z/-]*$/.test(before)
      ? {
          kind: 'acceptance',
          range: around(/[a-z/-]*$/.exec(before)?.[0] ?? '', /^[a-z/-]*/.exec(after)?.[0] ?? ''),
        }
      : { kind: 'none' };
  }
  const word = around(wordBefore.exec(before)?.[0] ?? '', wordAfter.exec(after)?.[0] ?? '');
  if (/^\s*\[[^\]]*$/.test(before)) {
    const isPack = before.includes('@');
    return isPack
      ? { kind: 'section-pack', range: word }
      : { kind: 'section', range: word, isClosed: after.includes(']') };
  }
  const equals = 'equals' in statement ? statement.equals : -1;
  if (equals >= 0 && character > equals)
    return valueContext(text.slice(equals + 1, character), word, around, after);
  const typed = wordBefore.exec(before)?.[0] ?? '';
  const lead = before.slice(0, before.length - typed.length);
  if (lead.trim() !== '') return { kind: 'none' };
  return { kind: 'name', range: word, typed, isAlone: text.trim() === typed, hasValue: equals >= 0 };
}

function valueContext(
  before: string,
  word: Range,
  around: (left: string, right: string) => Range,
  after: string,
): TypingContext {
  if ((before.match(/"/g) ?? []).length % 2 === 1) return { kind: 'none' };
  const unit = numberBefore.exec(before);
  if (unit !== null && !before.endsWith('..')) {
    return { kind: 'unit', range: around(unit[2] ?? '', /^[A-Za-zµ%°/^*()]*/.exec(after)?.[0] ?? '') };
  }
  return { kind: 'value', range: word, before };
}

/** The parameter that a line sets, if it is known. */
export function parameterOf({ catalog }: Snapshot, line: ScriptLine): FoundParameter | undefined {
  return line.settingPath === null ? undefined : catalog.parameter(line.settingPath);
}
