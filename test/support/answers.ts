import assert from 'node:assert/strict';
import { CraftView } from '../../server/src/craft/view';
import { type Withheld, withheldIn } from '../../server/src/figures/withheld';
import { craftOf } from './findings';
import { wholeCraft } from './whole-craft';

/** The figures that a script of these lines does not give, by their ids. */
export function withheldOf(lines: readonly string[]): ReadonlyMap<string, Withheld> {
  const craft = craftOf(lines.join('\n'));
  const view = new CraftView(craft, craft.packs()[0] ?? null);
  return new Map(withheldIn(view).map((one) => [one.id, one]));
}

/** What a pilot would write for what is asked; a craft that lacks all packs is asked for one of any name. */
const answers: ReadonlyMap<string, string> = new Map(
  [
    ...wholeCraft,
    'craft.flying = gentle',
    'motor.stator-diameter = 28 mm',
    'motor.stator-height = 7 mm',
    'motor.mass = 48 g',
    // Made by the power balance of a motor with 0.11 ohm and 0.9 A.
    ...[
      [16.6, 2.3717, 6000, 0.043426],
      [16.3, 10.6324, 10000, 0.120628],
      [15.9, 27.4808, 13500, 0.219845],
    ].flatMap(([voltage, current, speed, torque], index) => [
      `motor.bench.${index + 1}.voltage = ${voltage} V`,
      `motor.bench.${index + 1}.current = ${current} A`,
      `motor.bench.${index + 1}.speed = ${speed} rpm`,
      `motor.bench.${index + 1}.torque = ${torque} N*m`,
    ]),
    'video.antenna-gain = 2 dBi',
    'video.receiver-antenna-gain = 8 dBi',
    'video.receiver-sensitivity = -90 dBm',
  ].flatMap((line) => {
    const [path = ''] = line.split(' = ');
    return [[path, line] as const, [path.replace(/^pack\.one\./, 'pack.<name>.'), line] as const];
  }),
);

export function answerTo(path: string): string {
  const line = answers.get(path);
  assert.ok(line, `nobody knows what to write for ${path}`);
  return line;
}
