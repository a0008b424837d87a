import assert from 'node:assert/strict';
import { figureOf } from '../../../server/src/figures';
import { wholeCraftWith } from '../../support/whole-craft';

/** What the text of a setting promises to move: its path, two values, the figures, and which way they go. */
const promised: readonly (readonly [
  path: string,
  from: string,
  to: string,
  figures: readonly string[],
  way: 'up' | 'down' | 'either',
])[] = [
  [
    'motor.thrust-shape',
    '0 % -> 0 %, 100 % -> 100 %',
    '0 % -> 0 %, 50 % -> 71 %, 100 % -> 100 %',
    ['hover-throttle'],
    'down',
  ],
  [
    'motor.thrust-shape',
    '0 % -> 0 %, 100 % -> 100 %',
    '0 % -> 0 %, 50 % -> 71 %, 100 % -> 100 %',
    ['roll-crossover'],
    'either',
  ],
  ['motor.rise-limit', '2000 %/s', '300 %/s', ['roll-overshoot'], 'either'],
  ['motor.mass', '20 g', '60 g', ['roll-crossover', 'yaw-crossover'], 'down'],
  [
    'motor.output-limit',
    '80 %',
    '60 %',
    ['full-current', 'full-motor-current', 'thrust-to-weight', 'tip-mach'],
    'down',
  ],
  ['motor.idle-current-voltage', '8 V', '20 V', ['hover-motor-efficiency', 'minutes-to-landing'], 'up'],
  ['esc.drive.brake', 'on', 'off', ['motor-lag', 'loop-delay', 'stick-delay'], 'up'],
  ['esc.drive.brake', 'on', 'off', ['roll-phase-margin'], 'either'],
  ['esc.update-rate', '1.6 kHz', '400 Hz', ['loop-delay', 'stick-delay'], 'up'],
  ['prop.mass', '4 g', '12 g', ['motor-lag'], 'up'],
  ['prop.blades', '2', '7', ['full-thrust', 'full-current', 'hover-blade-tone'], 'up'],
  ['prop.guard', 'none', 'duct', ['full-thrust', 'thrust-to-weight'], 'up'],
  ['craft.width-to-length', '100 %', '160 %', ['roll-crossover'], 'either'],
  ['power.even-thrust', '0 %', '100 %', ['hover-throttle'], 'down'],
  ['power.current-cap', '200 A', '40 A', ['full-current'], 'down'],
  ['stick.throttle.limit', '80 %', '60 %', ['thrust-to-weight', 'full-current'], 'down'],
  ['derivative.input', 'turning-rate', 'error', ['roll-overshoot'], 'either'],
  ['control.roll.feedforward', '0 %/(deg/s^2)', '0.002 %/(deg/s^2)', ['roll-overshoot'], 'either'],
  [
    'control.when.fast-turn.proportional',
    '100 %',
    '200 %',
    ['roll-gain-margin', 'roll-phase-margin'],
    'down',
  ],
  ['control.when.throttle-jumps.proportional', '100 %', '200 %', ['pitch-gain-margin'], 'down'],
  ['control.when.zero-throttle.derivative', '100 %', '200 %', ['roll-noise-gain'], 'up'],
  ['control.when.high-throttle.proportional', '100 %', '40 %', ['roll-crossover'], 'either'],
];

/** What a setting of a situation needs to be one. */
const beside: Readonly<Record<string, readonly string[]>> = {
  'control.when.high-throttle.proportional': ['control.when.high-throttle.from = 30 %'],
  'control.when.fast-turn.proportional': ['control.when.fast-turn.from = 300 deg/s'],
  'control.when.throttle-jumps.proportional': ['control.when.throttle-jumps.from = 300 %/s'],
  'control.when.zero-throttle.derivative': ['control.when.zero-throttle.keep-steering = on'],
};

function likely(path: string, value: string, figure: string): number {
  const view = wholeCraftWith([...(beside[path] ?? []), `${path} = ${value}`]);
  const found = figureOf(view, figure);
  assert.ok(found, `${figure} with ${path} = ${value}`);
  return found.likely;
}

describe('a setting whose text promises a figure', () => {
  for (const [path, from, to, figures, way] of promised) {
    for (const figure of figures) {
      it(`moves it: ${path} and ${figure}`, () => {
        const moved = likely(path, to, figure) - likely(path, from, figure);
        assert.ok(way === 'down' ? moved < 0 : way === 'up' ? moved > 0 : moved !== 0, `${moved}`);
      });
    }
  }
});
