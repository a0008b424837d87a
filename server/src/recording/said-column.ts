import type { LayoutColumn } from '../catalog/model/recording-layout';
import { parseUnit } from '../units/unit';

/** How it is said what a column holds. */
export const saidColumnExamples =
  '"Gyr X = gyro.roll in deg/s", "Gyr Y = -gyro.pitch in rad/s", "m1 = motor.1 from 1000 to 2000", "rpm 1 = speed.1 in rpm times 0.1428", "x = nothing"';

/**
 * What a person says of a column, as `heading = channel in unit`; a minus in front of the channel says that its sign is
 * the other one. Null where nobody can make that out.
 */
export function saidColumn(text: string): LayoutColumn | null {
  const at = text.lastIndexOf('=');
  const heading = text.slice(0, at).trim();
  const [name = '', ...rest] = text
    .slice(at + 1)
    .trim()
    .split(/\s+/);
  if (at < 1 || heading === '' || name === '') return null;
  if (name === 'nothing') return rest.length === 0 ? { heading } : null;
  const reversed = name.startsWith('-');
  const counted = countedAs(rest);
  const channel = reversed ? name.slice(1) : name;
  return counted === null || channel === 'nothing'
    ? null
    : { heading, channel, ...counted, ...(reversed ? { reversed } : {}) };
}

type ColumnCounting = Pick<LayoutColumn, 'unit' | 'scale' | 'zero' | 'full'>;

/** `in deg/s`, `times 0.5`, `from 1000 to 2000`, each once at most. */
function countedAs(words: readonly string[]): ColumnCounting | null {
  const [word, value = '', ...rest] = words;
  if (word === undefined) return {};
  if (word === 'in' && parseUnit(value).unit !== undefined) return joined({ unit: value }, rest);
  if (word === 'times' && isNumber(value)) return joined({ scale: Number(value) }, rest);
  const [to, full = '', ...last] = rest;
  return word === 'from' && to === 'to' && isNumber(value) && isNumber(full)
    ? joined({ zero: Number(value), full: Number(full) }, last)
    : null;
}

function joined(first: ColumnCounting, words: readonly string[]): ColumnCounting | null {
  const others = countedAs(words);
  const isTwice = others !== null && Object.keys(first).some((key) => key in others);
  return others === null || isTwice ? null : { ...first, ...others };
}

function isNumber(text: string): boolean {
  return text !== '' && Number.isFinite(Number(text));
}

/** What a column is taken for, in words: `gyro.roll, in deg/s`. */
export function columnText({ channel, unit, scale, zero, full, reversed }: LayoutColumn): string {
  if (channel === undefined) return 'not read';
  const parts = [
    channel,
    ...(unit === undefined || unit === '' ? [] : [`in ${unit}`]),
    ...(scale === undefined ? [] : [`times ${scale}`]),
    ...(full === undefined ? [] : [`from ${zero ?? 0} to ${full}`]),
    ...(full === undefined && zero !== undefined ? [`from ${zero}`] : []),
    ...(reversed === true ? ['the other way round'] : []),
    ...(direction.has(channel) ? [`more is ${direction.get(channel)}`] : []),
  ];
  return parts.join(', ');
}

const direction: ReadonlyMap<string, string> = new Map(
  (['gyro', 'unfiltered-gyro', 'wanted'] as const).flatMap((kind) => [
    [`${kind}.roll`, 'to the right'] as const,
    [`${kind}.pitch`, 'nose up'] as const,
    [`${kind}.yaw`, 'clockwise'] as const,
  ]),
);
