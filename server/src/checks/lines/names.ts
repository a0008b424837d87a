import type { Craft } from '../../craft/craft';
import { inputKeys } from '../../craft/keys';
import type { Problem, Span } from '../../language/ast';
import { problem, replacement } from '../../language/problem';
import type { ScriptLine } from '../../language/script-line';
import type { Related } from '../report/finding';

/** `[gyro.filter.99]`: the lowest free number of those that there are. */
export function memberNumber(craft: Craft, line: ScriptLine, found: Problem): Problem | null {
  const { statement } = line;
  if (statement.kind !== 'section' && statement.kind !== 'setting') return null;
  const missing = craft.catalog.explainMissing(found.values.name ?? '');
  if (missing?.reason !== 'number-outside' || !/^\d+$/.test(missing.word)) return null;
  const { collection, word, from, to } = missing;
  const values = { name: found.values.name ?? '', from: String(from), to: String(to) };
  const span = statement.path.names.find(({ text }) => text === word);
  const number = span === undefined ? null : freeNumber(craft, collection.path, { from, to });
  if (span === undefined || number === null) return problem(found.id, found, values);
  const suggestion = `${collection.path}.${number}`;
  return problem(found.id, found, { ...values, suggestion }, [
    replacement(`Write ${suggestion}`, span, String(number)),
  ]);
}

interface NumberRange {
  readonly from: number;
  readonly to: number;
}

function freeNumber(craft: Craft, collection: string, { from, to }: NumberRange): number | null {
  const taken = new Set(craft.members(collection));
  for (let number = from; number <= to; number += 1) if (!taken.has(String(number))) return number;
  return null;
}

/** Where the parameter that an unknown name probably means is set already: then nothing is to be moved there. */
export function settingElsewhere(craft: Craft, { section }: ScriptLine, found: Problem): readonly Related[] {
  for (const path of found.elsewhere ?? []) {
    const [line] = craft.root.lines(inputKeys.setting(path, section.pack));
    if (line === undefined) continue;
    const place = { script: craft.root, line, ...nameSpan(line) };
    return [{ place, message: `${path} is set already here.` }];
  }
  return [];
}

/** The name in a line: what it sets, or the section that it opens. */
export function nameSpan({ statement, text }: ScriptLine): Span {
  switch (statement.kind) {
    case 'constant':
      return { start: statement.name.start, end: statement.name.end };
    case 'setting':
    case 'section':
      return { start: statement.path.start, end: statement.path.end };
    default:
      return { start: 0, end: text.length };
  }
}
