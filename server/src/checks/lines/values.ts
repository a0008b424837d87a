import type { Craft } from '../../craft/craft';
import type { NumberNode, Problem, ReferenceNode } from '../../language/ast';
import { offering, replacement } from '../../language/problem';
import type { ScriptLine } from '../../language/script-line';
import { divided, plain, sameDimension } from '../../units/dimension';
import { findDimensionName } from '../../units/dimension-names';
import { plainNumber } from '../../units/number-text';
import { readableUnit } from '../../units/quantity';
import { fromBase, toBase, unitOf } from '../../units/unit';
import { deviceOn } from '../rules/wire/port-users';
import { type KnownSetting, knownSetting, nodeAt } from './setting';

/** `cutoff = 3 ms`: one over what was written is what is asked for, once every 3 ms being 333 Hz. */
export function reciprocal(craft: Craft, line: ScriptLine, found: Problem): Problem | null {
  const setting = knownSetting(craft, line);
  const node = setting === null ? null : nodeAt(setting.statement.value, found);
  if (setting === null || node?.kind !== 'number') return null;
  const text = reciprocalText(setting, node);
  if (text === null) return null;
  const title = `Write ${text}, which is one over ${node.digits} ${node.unit?.text}`;
  return offering(found, () => ({ fixes: [replacement(title, node, text), ...found.fixes] }));
}

function reciprocalText({ found }: KnownSetting, { value, unit }: NumberNode): string | null {
  const expected = findDimensionName(found.dimensionName ?? '');
  if (expected === undefined || expected.family !== undefined || found.parameter.kind !== 'quantity')
    return null;
  if (unit === null || unit.family !== null || !(value > 0)) return null;
  // A share has no dimension, and one over it is another share.
  if (sameDimension(expected.dimension, plain)) return null;
  if (!sameDimension(expected.dimension, divided(plain, unit.dimension))) return null;
  const base = 1 / toBase(value, unit);
  if (found.range !== undefined && (base < found.range.low || base > found.range.high)) return null;
  const wanted = readableUnit(base, expected.name);
  const shown = fromBase(base, unitOf(wanted));
  return `${plainNumber(Number(shown.toPrecision(3)))} ${wanted}`;
}

/** `port = [uart2, uart3]`, where there is room for one. */
export function singleWord(craft: Craft, line: ScriptLine, found: Problem): Problem | null {
  const setting = knownSetting(craft, line);
  const parameter = setting?.found.parameter;
  const node = setting === null ? null : nodeAt(setting.statement.value, found);
  if (setting === null || parameter?.kind !== 'word' || node?.kind !== 'list') return null;
  const isPort = parameter.choicesFrom === 'ports';
  const device = deviceOn(setting.found.path);
  const why = isPort && device !== undefined ? `${device} has one port` : '';
  const values = { ...found.values, expected: isPort ? 'a single port' : 'a single word', why };
  const names = node.items.filter((item): item is ReferenceNode => item.kind === 'reference');
  const words = [...new Set(names.map(({ path }) => path.text))].slice(0, mostOffered);
  return offering({ ...found, values }, () => ({
    fixes: words.map((word) => replacement('Write {to}', node, word)),
  }));
}

/** More than these are no choice but the list itself. */
const mostOffered = 4;
