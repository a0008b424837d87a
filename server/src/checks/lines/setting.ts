import type { FoundParameter } from '../../catalog/catalog';
import type { Craft } from '../../craft/craft';
import { interpret } from '../../craft/interpret';
import type { SettingStatement, Span, ValueNode } from '../../language/ast';
import { parseLine } from '../../language/parser';
import type { ScriptLine } from '../../language/script-line';
import { childNodes } from '../../language/value-nodes';

/** A line that sets a known parameter. */
export interface KnownSetting {
  readonly statement: SettingStatement;
  readonly found: FoundParameter;
}

export function knownSetting(craft: Craft, { statement, settingPath }: ScriptLine): KnownSetting | null {
  const found = settingPath === null ? undefined : craft.catalog.parameter(settingPath);
  return statement.kind === 'setting' && found !== undefined ? { statement, found } : null;
}

/** The part of a value that fills a span; the outermost one. */
export function nodeAt(value: ValueNode | null, { start, end }: Span): ValueNode | null {
  if (value === null || (value.start === start && value.end === end)) return value;
  for (const child of childNodes(value)) {
    if (child.start <= start && end <= child.end) return nodeAt(child, { start, end });
  }
  return null;
}

/** Whether a text could stand as the parameter's value. */
export function couldHold(craft: Craft, found: FoundParameter, text: string): boolean {
  const statement = parseLine(`value = ${text}`);
  if (statement.kind !== 'setting' || statement.value === null || statement.comment !== null) return false;
  if (statement.problems.length > 0) return false;
  const { value, problems } = interpret(statement.value, found, craft.scope(null), craft.words(found));
  return value !== null && problems.length === 0;
}
