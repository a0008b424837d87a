import type { Craft } from '../craft/craft';
import { inputKeys } from '../craft/keys';
import type { Problem } from '../language/ast';
import { problem, replacement } from '../language/problem';
import type { ScriptLine } from '../language/script-line';
import { offering } from './line-findings-setting';

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

/** A known parameter under the wrong section that is set already where it belongs: then nothing is to be moved. */
export function setElsewhere(craft: Craft, line: ScriptLine, found: Problem): Problem | null {
  const { settingPath, section } = line;
  if (settingPath === null || section.path === null) return null;
  const values = Object.defineProperties(
    { name: settingPath },
    {
      meant: { enumerable: true, get: () => found.values.meant },
      taken: {
        enumerable: true,
        get: () =>
          (found.elsewhere ?? [])
            .map((path) => toldPlace(craft, path, section.pack))
            .find((told) => told !== '') ?? '',
      },
    },
  );
  return offering({ ...spanOf(found), id: found.id, values }, () => found.fixes);
}

function spanOf({ start, end }: Problem) {
  return { start, end };
}

function toldPlace(craft: Craft, path: string, pack: string | null): string {
  const [first] = craft.root.lines(inputKeys.setting(path, pack));
  return first === undefined ? '' : `${path} is set already in line ${craft.root.lineNumber(first) + 1}`;
}
