import type { Craft } from '../craft/craft';
import { inputKeys } from '../craft/keys';
import type { Problem } from '../language/ast';
import { problem, replacement } from '../language/problem';
import type { ScriptLine } from '../language/script-line';
import type { Related } from './finding';
import { nameSpan } from './name-span';

/** `[gyro.notch.99]`: the nearest number that there is, or the lowest free one. */
export function memberNumber(craft: Craft, line: ScriptLine, found: Problem): Problem | null {
  const { statement } = line;
  if (statement.kind !== 'section' && statement.kind !== 'setting') return null;
  const missing = craft.catalog.explainMissing(found.values.name ?? '');
  if (missing?.reason !== 'number-outside' || !/^\d+$/.test(missing.word)) return null;
  const { collection, word, from, to } = missing;
  const values = { name: found.values.name ?? '', from: String(from), to: String(to) };
  const span = statement.path.names.find(({ text }) => text === word);
  const number = span === undefined ? null : numberFor(craft, collection.path, Number(word), { from, to });
  if (span === undefined || number === null) return problem(found.id, found, values);
  const meant = `${collection.path}.${number}`;
  return problem(found.id, found, { ...values, meant }, [
    replacement(`Write ${meant}`, span, String(number)),
  ]);
}

interface Numbers {
  readonly from: number;
  readonly to: number;
}

function numberFor(craft: Craft, collection: string, word: number, { from, to }: Numbers): number | null {
  const taken = new Set(craft.members(collection));
  const nearest = Math.max(from, Math.min(to, word));
  if (!taken.has(String(nearest))) return nearest;
  for (let number = from; number <= to; number += 1) if (!taken.has(String(number))) return number;
  return null;
}

/** Where the parameter that an unknown name probably means is set already: then nothing is to be moved there. */
export function settingMeant(craft: Craft, { section }: ScriptLine, found: Problem): readonly Related[] {
  for (const path of found.elsewhere ?? []) {
    const [line] = craft.root.lines(inputKeys.setting(path, section.pack));
    if (line === undefined) continue;
    const place = { script: craft.root, line, ...nameSpan(line) };
    return [{ place, message: `${path} is set already here.` }];
  }
  return [];
}
