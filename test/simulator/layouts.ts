import type { Layout, WrittenColumn } from './csv';

// Files as several loggers might write them: none of them is anybody's. All begin with the line that says what they are.

/** What the first line of every file says. */
export const simulatedLine = '# simulated';

const degree = 180 / Math.PI;
const turnsAMinute = 60 / (2 * Math.PI);

function column(heading: string, of: string | null, factor = 1, digits = 3, offset = 0): WrittenColumn {
  return { heading, of, factor, offset, digits };
}

const motors = [1, 2, 3, 4];
/** Where one digit is too few, or too many. */
const briefDigits: ReadonlyMap<string, number> = new Map([
  ['time', 4],
  ['voltage', 2],
  ['wanted.roll', 0],
  ['wanted.pitch', 0],
  ['wanted.yaw', 0],
]);
const usual = {
  before: [simulatedLine],
  decimal: '.',
  lineEnd: '\n',
  trails: false,
  startsWithZeros: false,
} as const;

/** Commas, units in square brackets, degrees. */
const bracketed: Layout = {
  ...usual,
  name: 'bracketed',
  separator: ',',
  columns: [
    column('time [s]', 'time', 1, 6),
    column('gyro roll [deg/s]', 'gyro.roll', degree, 2),
    column('gyro pitch [deg/s]', 'gyro.pitch', degree, 2),
    column('gyro yaw [deg/s]', 'gyro.yaw', degree, 2),
    column('unfiltered gyro roll [deg/s]', 'unfiltered.roll', degree, 2),
    column('unfiltered gyro pitch [deg/s]', 'unfiltered.pitch', degree, 2),
    column('unfiltered gyro yaw [deg/s]', 'unfiltered.yaw', degree, 2),
    column('wanted roll [deg/s]', 'wanted.roll', degree, 1),
    column('wanted pitch [deg/s]', 'wanted.pitch', degree, 1),
    column('wanted yaw [deg/s]', 'wanted.yaw', degree, 1),
    column('throttle [%]', 'throttle', 100, 1),
    ...motors.map((motor) => column(`motor ${motor} [%]`, `motor.${motor}`, 100, 1)),
    ...motors.map((motor) => column(`motor ${motor} speed [rpm]`, `speed.${motor}`, turnsAMinute, 0)),
    column('voltage [V]', 'voltage', 1, 2),
    column('current [A]', 'current', 1, 1),
    column('since control frame [ms]', 'frames', 1000, 2),
  ],
};

/** The same with fewer digits: a file that is short. */
const brief: Layout = {
  ...bracketed,
  name: 'brief',
  columns: bracketed.columns.map((one) => ({
    ...one,
    digits: Math.min(one.digits, briefDigits.get(one.of ?? '') ?? 1),
  })),
};

/** Semicolons and decimal commas, milliseconds, radians, turns a second, another order. */
const semicolons: Layout = {
  ...usual,
  name: 'semicolons',
  separator: ';',
  decimal: ',',
  lineEnd: '\r\n',
  columns: [
    column('Time (ms)', 'time', 1000, 3, 12_000),
    column('Battery voltage (V)', 'voltage', 1, 2),
    column('Battery current (A)', 'current', 1, 2),
    column('Throttle (0-1)', 'throttle', 1, 3),
    ...motors.map((motor) => column(`Output of motor ${motor} (0-1)`, `motor.${motor}`, 1, 4)),
    ...motors.map((motor) => column(`Speed of motor ${motor} (Hz)`, `speed.${motor}`, 1 / (2 * Math.PI), 2)),
    column('Gyro pitch (rad/s)', 'gyro.pitch', 1, 4),
    column('Gyro roll (rad/s)', 'gyro.roll', 1, 4),
    column('Gyro yaw (rad/s)', 'gyro.yaw', 1, 4),
    column('Raw gyro pitch (rad/s)', 'unfiltered.pitch', 1, 4),
    column('Raw gyro roll (rad/s)', 'unfiltered.roll', 1, 4),
    column('Raw gyro yaw (rad/s)', 'unfiltered.yaw', 1, 4),
    column('Board temperature (degC)', 'warmth', 1, 1),
  ],
};

/** Microseconds, no units, nose down counted as more, a separator behind the last cell, a first row of zeros. */
const unitless: Layout = {
  ...usual,
  name: 'unitless',
  separator: ',',
  trails: true,
  startsWithZeros: true,
  columns: [
    column('stamp us', 'time', 1e6, 0, 467_000_000),
    column('gyro x', 'gyro.roll', degree, 2),
    column('gyro y', 'gyro.pitch', -degree, 2),
    column('gyro z', 'gyro.yaw', degree, 2),
    column('acc z', 'upright', 1, 2),
    ...motors.map((motor) => column(`motor ${motor}`, `motor.${motor}`, 1000, 0, 1000)),
    ...motors.map((motor) => column(`rpm ${motor}`, `speed.${motor}`, turnsAMinute, 0)),
    column('throttle', 'throttle', 1000, 0, 1000),
    column('volts', 'voltage', 1, 2),
    column('amps', 'current', 1, 2),
    column('armed', 'armed', 1, 0),
  ],
};

/** Tabs and names that come again: the first three are what the gyro says, the others what was asked. */
const repeated: Layout = {
  ...usual,
  name: 'repeated',
  separator: '\t',
  columns: [
    column('seconds', 'time', 1, 5, 3),
    column('roll', 'gyro.roll', degree, 2),
    column('pitch', 'gyro.pitch', degree, 2),
    column('yaw', 'gyro.yaw', degree, 2),
    column('roll', 'wanted.roll', degree, 1),
    column('pitch', 'wanted.pitch', degree, 1),
    column('yaw', 'wanted.yaw', degree, 1),
    column('throttle', 'throttle', 100, 1),
    ...motors.map((motor) => column(`motor ${motor}`, `motor.${motor}`, 100, 2)),
    column('pack volts', 'voltage', 1, 2),
    column('pack amperes', 'current', 1, 2),
    column('', null, 1, 0),
  ],
};

export const layouts: ReadonlyMap<string, Layout> = new Map(
  [bracketed, brief, semicolons, unitless, repeated].map((layout) => [layout.name, layout]),
);
