import type { FoundParameter } from '../../catalog/catalog';
import { readPath } from '../../language/quoted-path';
import type { ScriptLine } from '../../language/script-line';
import { type Position, type Range, rangeInLine } from '../range';
import type { Snapshot } from '../snapshot';
import { type IncludedFileContext, includedFileContext } from './included-files';
import { type OwnNameContext, type OwnValueContext, ownContext, quotedHeaderPath } from './own-context';
import { type ValueContext, valueContext } from './value-context';

/** A parameter's name. */
export interface NameContext {
  readonly kind: 'name';
  readonly range: Range;
  /** What stands before the cursor. */
  readonly typed: string;
  /** Whether the line holds nothing else, so that it can become any statement. */
  readonly isAlone: boolean;
  readonly hasEquals: boolean;
  /** Whether something stands behind it that is to be its value. */
  readonly hasValue: boolean;
}

/** The path of a section, between its brackets. */
export interface SectionContext {
  readonly kind: 'section';
  readonly range: Range;
  /** What stands before the cursor. */
  readonly typed: string;
  readonly isClosed: boolean;
}

/** The pack of a section, behind its `@`. `lead`: the blank that is missing before it. */
export interface SectionPackContext {
  readonly kind: 'section-pack';
  readonly range: Range;
  readonly path: string;
  readonly isClosed: boolean;
  readonly lead: string;
}

/** A comment that accepts a risk: from its beginning, or behind `accept`. */
export interface AcceptanceContext {
  readonly kind: 'acceptance';
  readonly range: Range;
  /** What is missing before the check's id. */
  readonly lead: string;
  readonly hasReason: boolean;
}

/** What is being typed at a position. `range` covers the whole word around it, which an item replaces. */
export type TypingContext =
  | NameContext
  | SectionContext
  | SectionPackContext
  | AcceptanceContext
  | ValueContext
  | IncludedFileContext
  | OwnNameContext
  | OwnValueContext
  | { readonly kind: 'none' };

const nothing = { kind: 'none' } as const;

export function typingContext(on: ScriptLine, { line, character }: Position): TypingContext {
  const { text, statement } = on;
  if (statement.comment !== null && character > statement.comment.start) {
    return commentContext(text, statement.comment.start, line, character);
  }
  const said = text.slice(0, statement.comment?.start);
  if (/^\s*\[[^\]]*$/.test(said.slice(0, character))) return headerContext(said, line, character);
  const file = includedFileContext(said, line, character);
  if (file !== null) return file;
  const own = ownContext(on, said, line, character);
  if (own !== null) return own;
  const equals = 'equals' in statement ? statement.equals : -1;
  if (equals >= 0 && character > equals) return valueContext(said, equals, line, character);
  return nameContext(said, equals, line, character);
}

function nameContext(said: string, equals: number, line: number, character: number): TypingContext {
  const typed = nameBefore(said.slice(0, character));
  const start = character - typed.length;
  if (said.slice(0, start).trim() !== '' || isOther(said)) return nothing;
  const end = nameEnd(said, character, typed === '');
  const range = rangeInLine(line, { start, end });
  return {
    kind: 'name',
    range,
    typed,
    isAlone: said.trim() === typed,
    hasEquals: equals >= 0,
    hasValue: said.slice(end).trim() !== '',
  };
}

/** Whether a line is another statement than a setting: a name in front of it would make two of one. */
function isOther(said: string): boolean {
  const content = said.trimStart();
  if (content.startsWith('[')) return true;
  const word = /^(?:let|include)\b/.exec(content)?.[0];
  if (word === undefined) return false;
  const rest = content.slice(word.length).trimStart();
  return rest !== '' && !/^[=.-]/.test(rest);
}

/** Where the name ends around a place, or the next one behind it. */
function nameEnd(said: string, at: number, isNext: boolean): number {
  const rest = (isNext ? /^\s*[A-Za-z0-9_.-]*/ : /^[A-Za-z0-9_.-]*/).exec(said.slice(at))?.[0] ?? '';
  return at + rest.trimEnd().length;
}

function headerContext(said: string, line: number, character: number): TypingContext {
  const before = said.slice(0, character);
  const after = said.slice(character);
  const quoted = quotedHeaderPath(said, character);
  if (quoted !== null) {
    const isClosed = /[\]@]/.test(said.slice(quoted.end));
    const typed = said.slice(quoted.start, character);
    return { kind: 'section', range: rangeInLine(line, quoted), typed, isClosed };
  }
  const typed = nameBefore(before);
  // Behind a name and a blank nothing more can stand.
  if (typed === '' && /[A-Za-z0-9_.-]\s*$/.test(before)) return nothing;
  const end = nameEnd(said, character, typed === '');
  const range = rangeInLine(line, { start: character - typed.length, end });
  const isClosed = after.includes(']');
  const open = before.slice(before.indexOf('[') + 1);
  const { path, end: pathEnd } = readPath(before, character - open.trimStart().length);
  const at = before.indexOf('@', pathEnd);
  if (at < 0) return { kind: 'section', range, typed, isClosed: isClosed || after.includes('@') };
  return {
    kind: 'section-pack',
    range,
    path: path?.text ?? '',
    isClosed,
    lead: before.endsWith('@') ? ' ' : '',
  };
}

function commentContext(text: string, start: number, line: number, character: number): TypingContext {
  const before = text.slice(start, character);
  const after = text.slice(character);
  const behind = /^#\s*accept\s+([a-z/-]*)$/.exec(before);
  if (behind !== null) {
    const typed = behind[1] ?? '';
    const rest = /^[a-z/-]*/.exec(after)?.[0] ?? '';
    const range = rangeInLine(line, { start: character - typed.length, end: character + rest.length });
    return { kind: 'acceptance', range, lead: '', hasReason: /^\s*:/.test(after.slice(rest.length)) };
  }
  const word = /^#\s*([a-z]*)$/.exec(before)?.[1];
  if (word === undefined || !'accept'.startsWith(word) || after.trim() !== '') return nothing;
  const range = rangeInLine(line, { start: character - word.length, end: text.length });
  const lead = before === '#' ? ' accept ' : 'accept ';
  return { kind: 'acceptance', range, lead, hasReason: false };
}

const namePart = /[A-Za-z0-9_.-]/;

/** The end of a text that is made of the characters of names only. Looked for from the end, so that it costs no more. */
function nameBefore(text: string): string {
  let from = text.length;
  while (from > 0 && namePart.test(text.charAt(from - 1))) from -= 1;
  return text.slice(from);
}

/** The parameter that a line sets, if it is known. */
export function parameterOf({ catalog }: Snapshot, line: ScriptLine): FoundParameter | undefined {
  return line.settingPath === null ? undefined : catalog.parameter(line.settingPath);
}
