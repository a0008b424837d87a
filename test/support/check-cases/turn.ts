import type { CheckCase, GroupCases } from '../check-cases';
import { estimateIds } from '../estimate-cases';

const whole = 'craft.name = "Sandpiper"';
const places = (...names: readonly string[]) => `motor.order = [${names.join(', ')}]`;
const corners = ['front-left', 'front-right', 'rear-left', 'rear-right'];

const spinAndOrder: readonly CheckCase[] = [
  [
    'turn/spin-board-only',
    'outward',
    ['motor.spin = outward', 'esc.spin = inward'],
    ['motor.spin = outward', 'esc.spin = outward'],
  ],
  [
    'turn/spin-esc-only',
    'outward',
    ['motor.spin = inward', 'esc.spin = outward'],
    ['motor.spin = inward', 'esc.spin = inward'],
  ],
  [
    'turn/spin-esc-unsaid',
    'outward',
    [whole, 'motor.spin = outward'],
    [whole, 'motor.spin = outward', 'esc.spin = outward'],
  ],
  [
    'turn/spin-board-unsaid',
    'outward',
    [whole, 'esc.spin = outward'],
    [whole, 'esc.spin = outward', 'motor.spin = outward'],
  ],
  [
    'turn/order-no-permutation',
    '[front-left, front-right, rear-left, right]',
    ['craft.layout = quad-x', places('front-left', 'front-right', 'rear-left', 'right')],
    ['craft.layout = quad-x', places(...corners)],
  ],
  [
    'turn/order-no-permutation',
    '[front-left, front-right, rear-left, rear-right]',
    ['craft.layout = hex-x', places(...corners)],
    ['craft.layout = hex-x', places(...corners, 'left', 'right')],
  ],
  [
    'turn/order-missing',
    'motor',
    [whole, 'craft.layout = quad-x', '[motor]', 'kv = 2000 rpm/V'],
    [whole, 'craft.layout = quad-x', '[motor]', places(...corners).replace('motor.', '')],
  ],
  [
    'turn/layout-missing',
    'craft',
    ['[craft]', 'name = "Sandpiper"'],
    ['[craft]', 'name = "Sandpiper"', 'layout = quad-x'],
  ],
];

const signals: readonly CheckCase[] = [
  [
    // 16 bits at 150 kbit/s and 20 us are 126.7 us, a round at 8 kHz 125 us
    'turn/signal-longer-than-period',
    'dshot150',
    ['esc.signal = dshot150', 'control.rate = 8 kHz'],
    ['esc.signal = dshot150', 'control.rate = 7 kHz'],
  ],
  [
    // with the answer 149.3 us of 125 us
    'turn/signal-longer-than-period',
    'dshot300',
    ['esc.signal = dshot300', 'esc.speed-feedback = on', 'control.rate = 8 kHz'],
    ['esc.signal = dshot300', 'esc.speed-feedback = off', 'control.rate = 8 kHz'],
  ],
  [
    'turn/signal-over-update-rate',
    '510 Hz',
    ['esc.signal = servo-pulse', 'esc.update-rate = 510 Hz'],
    ['esc.signal = servo-pulse', 'esc.update-rate = 490 Hz'],
  ],
  [
    // 149.3 us of 156.25 us
    'turn/signal-fills-period',
    'dshot300',
    ['esc.signal = dshot300', 'esc.speed-feedback = on', 'control.rate = 6.4 kHz'],
    ['esc.signal = dshot300', 'esc.speed-feedback = on', 'control.rate = 3.2 kHz'],
  ],
  [
    'turn/update-rate-above-control',
    '4 kHz',
    ['esc.update-rate = 4 kHz', 'control.rate = 3.2 kHz'],
    ['esc.update-rate = 3.2 kHz', 'control.rate = 3.2 kHz'],
  ],
  [
    'turn/pulse-cannot-answer',
    'on',
    ['esc.signal = eighth-pulse', 'esc.speed-feedback = on'],
    ['esc.signal = dshot300', 'esc.speed-feedback = on'],
  ],
  [
    'turn/idle-speed-needs-feedback',
    '3000 rpm',
    ['motor.idle-speed = 3000 rpm', 'esc.speed-feedback = off'],
    ['motor.idle-speed = 3000 rpm', 'esc.speed-feedback = on'],
  ],
  [
    'turn/pulse-ends-reversed',
    '2000 us',
    ['esc.minimum-pulse = 2000 us', 'esc.maximum-pulse = 1000 us'],
    ['esc.minimum-pulse = 1000 us', 'esc.maximum-pulse = 2000 us'],
  ],
  [
    'turn/pulse-ends-outside',
    '1000 us',
    ['esc.signal = eighth-pulse', 'esc.minimum-pulse = 1000 us'],
    ['esc.signal = eighth-pulse', 'esc.minimum-pulse = 125 us'],
  ],
  [
    'turn/pulse-ends-unused',
    'esc.minimum-pulse',
    ['esc.signal = dshot300', 'esc.minimum-pulse = 1000 us'],
    ['esc.signal = servo-pulse', 'esc.minimum-pulse = 1000 us'],
  ],
  [
    'turn/righting-needs-digital',
    '9',
    ['esc.signal = eighth-pulse', 'switch.righting.channel = 9'],
    ['esc.signal = dshot300', 'switch.righting.channel = 9'],
  ],
];

const limits: readonly CheckCase[] = [
  ['turn/poles-odd', '13', ['motor.poles = 13'], ['motor.poles = 14']],
  ['turn/idle-low', '2.5 %', ['motor.idle = 2.5 %'], ['motor.idle = 2.5 %', 'motor.idle-speed = 2000 rpm']],
  ['turn/idle-high', '13 %', ['motor.idle = 13 %'], ['motor.idle = 12 %']],
  [
    'turn/idle-without-steering',
    'off',
    ['control.when.zero-throttle.keep-steering = off', 'motor.idle = 4 %'],
    ['control.when.zero-throttle.keep-steering = on', 'motor.idle = 4 %'],
  ],
  [
    'turn/motor-cells',
    '6',
    ['pack.sprint.cells = 6', 'motor.cells-limit = 4'],
    ['pack.sprint.cells = 4', 'motor.cells-limit = 4'],
  ],
  [
    'turn/esc-cells',
    '6',
    ['pack.sprint.cells = 6', 'esc.cells-limit = 4'],
    ['pack.sprint.cells = 4', 'esc.cells-limit = 4'],
  ],
  [
    'turn/high-voltage-at-limit',
    '4',
    ['pack.sprint.cells = 4', 'pack.sprint.chemistry = high-voltage-lipo', 'esc.cells-limit = 4'],
    ['pack.sprint.cells = 4', 'pack.sprint.chemistry = lipo', 'esc.cells-limit = 4'],
  ],
  [
    'turn/esc-below-motor',
    '20 A',
    ['esc.current-limit = 20 A', 'motor.current-limit = 28 A'],
    ['esc.current-limit = 30 A', 'motor.current-limit = 28 A'],
  ],
  [
    'turn/esc-burst-below-motor',
    '25 A',
    ['esc.burst-current = 25 A', 'motor.current-limit = 28 A'],
    ['esc.burst-current = 30 A', 'motor.current-limit = 28 A'],
  ],
  [
    'turn/burst-below-continuous',
    '25 A',
    ['esc.burst-current = 25 A', 'esc.current-limit = 30 A'],
    ['esc.burst-current = 35 A', 'esc.current-limit = 30 A'],
  ],
  [
    // 2900 rpm/V × 25.2 V = 73 080 rpm, three quarters of it 54 810 rpm
    'turn/propeller-too-fast',
    '50000 rpm',
    [
      'pack.sprint.chemistry = lipo',
      'pack.sprint.cells = 6',
      'motor.kv = 2900 rpm/V',
      'prop.speed-limit = 50000 rpm',
    ],
    [
      'pack.sprint.chemistry = lipo',
      'pack.sprint.cells = 6',
      'motor.kv = 2900 rpm/V',
      'prop.speed-limit = 55000 rpm',
    ],
  ],
  [
    'turn/lost-answers-unused',
    '2 %',
    ['esc.speed-feedback = off', 'esc.lost-answers = 2 %'],
    ['esc.speed-feedback = on', 'esc.lost-answers = 2 %'],
  ],
];

const propellers: readonly CheckCase[] = [
  [
    'turn/propellers-overlap', // 165 mm sin(45 deg) = 116.7 mm, 4.59 in
    '4.7 in',
    ['craft.layout = quad-x', 'craft.motor-spacing = 165 mm', 'prop.diameter = 4.7 in'],
    ['craft.layout = quad-x', 'craft.motor-spacing = 165 mm', 'prop.diameter = 4.4 in'],
  ],
  [
    'turn/propellers-overlap', // 200 mm sin(30 deg) = 100 mm
    '101 mm',
    ['craft.layout = hex-x', 'craft.motor-spacing = 200 mm', 'prop.diameter = 101 mm'],
    ['craft.layout = hex-x', 'craft.motor-spacing = 200 mm', 'prop.diameter = 96 mm'],
  ],
  [
    'turn/propellers-overlap', // sides of 3 to 4 on a diagonal of 250 mm: 150 mm and 200 mm
    '151 mm',
    [
      'craft.layout = quad-wide',
      'craft.motor-spacing = 250 mm',
      'craft.width-to-length = 75 %',
      'prop.diameter = 151 mm',
    ],
    [
      'craft.layout = quad-wide',
      'craft.motor-spacing = 250 mm',
      'craft.width-to-length = 75 %',
      'prop.diameter = 146 mm',
    ],
  ],
  [
    'turn/propellers-close',
    '115 mm',
    ['craft.layout = quad-x', 'craft.motor-spacing = 165 mm', 'prop.diameter = 115 mm'],
    ['craft.layout = quad-x', 'craft.motor-spacing = 165 mm', 'prop.diameter = 113 mm'],
  ],
  [
    'turn/pitch-above-diameter',
    '3.5 in',
    ['prop.diameter = 3 in', 'prop.pitch = 3.5 in'],
    ['prop.diameter = 3 in', 'prop.pitch = 3.2 in'],
  ],
];

/** Sizes that must fit each other. */
const sizes: readonly CheckCase[] = [
  [
    'turn/motor-too-efficient', // (1 - sqrt(0.15 * 0.11 / 10))^2 = 92.04 %
    '0.15 A',
    ['motor.resistance = 0.11 ohm', 'motor.idle-current = 0.15 A'],
    ['motor.resistance = 0.11 ohm', 'motor.idle-current = 0.16 A'],
  ],
  [
    'turn/motor-too-wasteful', // (1 - sqrt(8 * 0.11 / 10))^2 = 49.5 %
    '8 A',
    ['motor.resistance = 0.11 ohm', 'motor.idle-current = 8 A'],
    ['motor.resistance = 0.11 ohm', 'motor.idle-current = 7.5 A'],
  ],
  [
    'turn/motors-outweigh-craft',
    '140 g',
    ['craft.mass = 540 g', 'motor.mass = 140 g'],
    ['craft.mass = 540 g', 'motor.mass = 33 g'],
  ],
  [
    'turn/frame-far-apart',
    '650 mm',
    ['craft.motor-spacing = 650 mm', 'prop.diameter = 129 mm'],
    ['craft.motor-spacing = 650 mm', 'prop.diameter = 131 mm'],
  ],
  [
    'turn/pitch-flat',
    '3.5 cm',
    ['prop.diameter = 7 in', 'prop.pitch = 3.5 cm'],
    ['prop.diameter = 7 in', 'prop.pitch = 1.8 in'],
  ],
  ['turn/update-rate-slow', '50 Hz', ['esc.update-rate = 50 Hz'], ['esc.update-rate = 400 Hz']],
  [
    'turn/prop-inertia-too-large', // 4 g at 63.5 mm is 0.0161 g m^2
    '0.017 g*m^2',
    ['prop.mass = 4 g', 'prop.diameter = 5 in', 'prop.inertia = 0.017 g*m^2'],
    ['prop.mass = 4 g', 'prop.diameter = 5 in', 'prop.inertia = 0.016 g*m^2'],
  ],
  [
    'turn/prop-inertia-too-small', // a hundredth of 4 g and 127 mm squared is 0.00065 g m^2
    '0.0006 g*m^2',
    ['prop.mass = 4 g', 'prop.diameter = 5 in', 'prop.inertia = 0.0006 g*m^2'],
    ['prop.mass = 4 g', 'prop.diameter = 5 in', 'prop.inertia = 0.0007 g*m^2'],
  ],
];

/** Rows of a maker's table: throttle %, V, A, rpm, N m. */
function bench(kv: number, rows: readonly (readonly number[])[]): readonly string[] {
  const columns = [
    ['throttle', '%'],
    ['voltage', 'V'],
    ['current', 'A'],
    ['speed', 'rpm'],
    ['torque', 'N*m'],
  ] as const;
  const lines = rows.flatMap((row, index) =>
    columns.map(([name, unit], column) => `motor.bench.${index + 1}.${name} = ${row[column]} ${unit}`),
  );
  return [...lines, `motor.kv = ${kv} rpm/V`];
}

/** Made by the model: 2000 rpm/V, 0.1 ohm, 0.8 A. */
const benchRows = [
  [30, 14.781, 0.946, 8238, 0.01124],
  [50, 14.73, 3.486, 13_336, 0.029_47],
  [70, 14.63, 8.482, 18_059, 0.054_04],
  [100, 14.37, 21.519, 24_435, 0.098_93],
];
const benchSound = bench(2000, benchRows);
const withTorque = (torque: (row: readonly number[]) => number) =>
  bench(
    2000,
    benchRows.map((row) => [...row.slice(0, 4), torque(row)]),
  );
const amperes = 2;

const makersTable: readonly CheckCase[] = [
  ['turn/bench-rows-few', '14.781 V', bench(2000, benchRows.slice(0, 2)), benchSound],
  [
    'turn/bench-gives-too-much',
    '0.02 N*m',
    withTorque(([, , , , torque = 0]) => Math.max(0.02, torque)),
    benchSound,
  ],
  ['turn/bench-kv-unlike', '1400 rpm/V', bench(1400, benchRows), bench(1900, benchRows)],
  ['turn/bench-torque-computed', '0.00473 N*m', withTorque((row) => (row[amperes] ?? 0) / 200), benchSound],
  [
    'turn/bench-winding-hidden',
    '0.01124 N*m',
    // A meter that shows two amperes too many at the least throttle, and too few at the most.
    bench(
      2000,
      benchRows.map((row, index) =>
        row.map((value, column) => (column === amperes ? value + [2, 1.5, 0, -2.3][index]! : value)),
      ),
    ),
    benchSound,
  ],
];

export const turnCases: GroupCases = {
  group: 'turn',
  cases: [...spinAndOrder, ...signals, ...limits, ...propellers, ...sizes, ...makersTable],
  elsewhere: estimateIds,
};
