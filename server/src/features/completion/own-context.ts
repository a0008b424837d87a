import { setsOwn } from '../../language/own-line';
import { readPath } from '../../language/quoted-path';
import type { ScriptLine } from '../../language/script-line';
import { type Range, rangeInLine } from '../range';

/** The name of a setting that only the board knows. */
export interface OwnNameContext {
  readonly kind: 'own-name';
  /** All that stands for the name, with its quotes. */
  readonly range: Range;
  readonly typed: string;
  readonly isAlone: boolean;
  readonly hasEquals: boolean;
}

/** The value of such a setting. `lead`: the blank that is missing before it. */
export interface OwnValueContext {
  readonly kind: 'own-value';
  readonly range: Range;
  readonly lead: string;
}

/** What is being typed where only the board knows what can stand; null where a line says something else. */
export function ownContext(
  { section }: ScriptLine,
  said: string,
  line: number,
  character: number,
): OwnNameContext | OwnValueContext | null {
  const isEmpty = section.isOwn && said.trim() === '';
  if (!isEmpty && !setsOwn(said, section)) return null;
  const start = Math.min(said.length - said.trimStart().length, character);
  const equals = said.indexOf('=', readPath(said, start).end);
  if (equals < 0 || character <= equals) {
    const end = Math.max(said.slice(0, equals < 0 ? undefined : equals).trimEnd().length, character);
    return {
      kind: 'own-name',
      range: rangeInLine(line, { start, end }),
      typed: said.slice(start, character),
      isAlone: said.trim() === said.slice(start, character),
      hasEquals: equals >= 0,
    };
  }
  const value = said.slice(equals + 1);
  const from = equals + 1 + (value.length - value.trimStart().length);
  const range = rangeInLine(line, {
    start: Math.min(from, character),
    end: Math.max(said.trimEnd().length, character),
  });
  return { kind: 'own-value', range, lead: character === equals + 1 ? ' ' : '' };
}

/** The path in a header around a place, where part of it is in quotes; null where none is. */
export function quotedHeaderPath(
  said: string,
  character: number,
): { readonly start: number; readonly end: number } | null {
  const open = said.indexOf('[') + 1;
  const start = open + (said.slice(open).length - said.slice(open).trimStart().length);
  if (!said.slice(start, character).includes('"')) return null;
  const { end, problems } = readPath(said, start);
  if (problems.length === 0) return character <= end ? { start, end } : null;
  // A quote that is still open holds all of the line, and the bracket that the editor put there.
  const closing = said.lastIndexOf(']');
  return { start, end: closing >= character ? closing : Math.max(said.trimEnd().length, character) };
}
