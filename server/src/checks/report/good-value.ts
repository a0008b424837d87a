import { inBase } from '../../catalog/known-parameter';
import type { CraftView } from '../../craft/view';
import { exactText } from '../../units/quantity';
import { freeChannel } from '../rules/obey/free-channel';
import { endPart, partText } from '../rules/obey/switch-table';
import { freePortFor } from '../rules/wire/port-users';

/**
 * A value to begin with, as a script writes it: what nothing uses yet, what is assumed, else what lies in the middle
 * of what is usual, rounded. Null where none is better than another.
 */
export function goodValue(view: CraftView, path: string): string | null {
  return unused(view, path) ?? usual(view, path);
}

function unused(view: CraftView, path: string): string | null {
  if (/^switch\.[^.]+\.channel$/.test(path)) return freeChannel(view)?.toString() ?? null;
  if (/^switch\.[^.]+\.on$/.test(path)) {
    const part = endPart(view, 'high');
    return part === null ? null : partText(view, part);
  }
  return freePortFor(view, path);
}

function usual({ craft, catalog }: CraftView, path: string): string | null {
  const found = catalog.parameter(path);
  if (found === undefined) return null;
  const { parameter } = found;
  if (parameter.kind !== 'bare' && parameter.default !== null) return parameter.default.value;
  switch (parameter.kind) {
    case 'quantity':
      return middle(parameter.usual, parameter.unit);
    case 'count':
      return String(Math.round((parameter.usual[0] + parameter.usual[1]) / 2));
    case 'flag':
      return 'off';
    case 'word':
      return parameter.permutationOf ?? craft.words(found)?.[0] ?? null;
    case 'words': {
      const [word] = craft.words(found) ?? [];
      return word === undefined ? null : `[${word}]`;
    }
    case 'range':
      return `${parameter.usual[0].split(' ')[0]}..${parameter.usual[1]}`;
    case 'curve':
      return straight(parameter.across.range, parameter.up);
    default:
      return null;
  }
}

/** Between two values of a kind whose ends lie far apart, as their ratio has it; to two digits. */
function middle([low, high]: readonly [string, string], unit: string): string {
  const [least, most] = [inBase(low), inBase(high)];
  const between = least > 0 ? Math.sqrt(least * most) : (least + most) / 2;
  const [number = '', ...rest] = exactText(between, unit).split(' ');
  return [String(Number(Number(number).toPrecision(2))), ...rest].join(' ');
}

/** From the middle, or the bottom, to the fastest that is in the middle of what is usual. */
function straight(
  [start, end]: readonly [string, string],
  up: {
    readonly range: readonly [string, string];
    readonly usual: readonly [string, string];
    readonly unit: string;
  },
): string {
  const top = inBase(up.range[0]) === 0 ? middle(up.usual, up.unit) : up.usual[1];
  return `${start} -> ${up.range[0]}, ${end} -> ${top}`;
}
