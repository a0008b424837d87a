import type { LayoutColumn } from '../catalog/model/recording-layout';
import { parseUnit } from '../units/unit';

const number = '-?\\d+(?:\\.\\d+)?';
const sentence = new RegExp(
  `^(?<minus>-?)(?<channel>[a-z][a-z0-9.-]*)(?:\\s+in\\s+(?<unit>\\S+))?(?:\\s+times\\s+(?<scale>${number}))?(?:\\s+from\\s+(?<zero>${number})\\s+to\\s+(?<full>${number}))?$`,
);

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
  const said = sentence.exec(text.slice(at + 1).trim())?.groups;
  if (at < 1 || heading === '' || said === undefined) return null;
  const { minus, channel = '', unit, scale, zero, full } = said;
  if (channel === 'nothing')
    return minus === '' && unit === undefined && scale === undefined ? { heading } : null;
  if (unit !== undefined && parseUnit(unit).unit === undefined) return null;
  return {
    heading,
    channel,
    ...(unit === undefined ? {} : { unit }),
    ...(scale === undefined ? {} : { scale: Number(scale) }),
    ...(zero === undefined ? {} : { zero: Number(zero), full: Number(full) }),
    ...(minus === '' ? {} : { reversed: true }),
  };
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
