import type { CheckCase, GroupCases } from '../check-cases';
import { estimateIds } from '../estimate-cases';

const whole = 'craft.mass = 200 g';
const heron = 'board.profile = heron';
const butterworth = (path: string, cutoff: string) => [
  `${path}.kind = butterworth`,
  `${path}.cutoff = ${cutoff}`,
];
const notch = (centre: string, width: string, number = 1) => [
  `gyro.filter.${number}.kind = notch`,
  `gyro.filter.${number}.centre = ${centre}`,
  `gyro.filter.${number}.width = ${width}`,
];
const motors = (path: string, ...more: readonly string[]) => [
  `${path}.kind = follow-motors`,
  ...more.map((line) => `${path}.${line}`),
];
const noise = (path: string, ...more: readonly string[]) => [
  `${path}.kind = follow-noise`,
  ...more.map((line) => `${path}.${line}`),
];
const gyroOff = ['gyro.chain = none'];
const derivativeOff = ['derivative.chain = none'];
const packOf = (cells: number) => ['pack.one.chemistry = lipo', `pack.one.cells = ${cells}`];
const roll = (proportional: string, integral: string, derivative: string) => [
  `control.roll.proportional = ${proportional} %/(deg/s)`,
  `control.roll.integral = ${integral} %/deg`,
  `control.roll.derivative = ${derivative} %/(deg/s^2)`,
];

const rates: readonly CheckCase[] = [
  [
    'tune/control-rate-uneven',
    '2 kHz',
    ['gyro.rate = 3.2 kHz', 'control.rate = 2 kHz'],
    ['gyro.rate = 3.2 kHz', 'control.rate = 1.6 kHz'],
  ],
  [
    'tune/control-rate-uneven',
    '2.133 kHz',
    ['gyro.rate = 6.4 kHz', 'control.rate = 2.133 kHz'],
    ['gyro.rate = 6.4 kHz', 'control.rate = gyro.rate / 3'],
  ],
  [
    'tune/control-faster-than-gyro',
    '8 kHz',
    ['gyro.rate = 4 kHz', 'control.rate = 8 kHz'],
    ['gyro.rate = 8 kHz', 'control.rate = 8 kHz'],
  ],
  ['tune/gyro-rate-not-offered', '8 kHz', [heron, 'gyro.rate = 8 kHz'], [heron, 'gyro.rate = 6.4 kHz']],
  [
    'tune/full-scale-beyond-board',
    '4000 deg/s',
    [heron, 'gyro.full-scale = 4000 deg/s'],
    [heron, 'gyro.full-scale = 2000 deg/s'],
  ],
];

const filters: readonly CheckCase[] = [
  [
    'tune/lowpass-above-half-rate',
    '500 Hz',
    ['gyro.rate = 1 kHz', ...butterworth('gyro.filter.1', '500 Hz')],
    ['gyro.rate = 1 kHz', ...butterworth('gyro.filter.1', '499 Hz')],
  ],
  [
    'tune/lowpass-above-half-rate', // the derivative is filtered at the rate of the loop
    '600 Hz',
    ['gyro.rate = 4 kHz', 'control.rate = 1 kHz', ...butterworth('derivative.filter.1', '600 Hz')],
    ['gyro.rate = 4 kHz', 'control.rate = 2 kHz', ...butterworth('derivative.filter.1', '600 Hz')],
  ],
  [
    'tune/lowpass-near-half-rate',
    '401 Hz',
    ['gyro.rate = 1 kHz', ...butterworth('gyro.filter.1', '401 Hz')],
    ['gyro.rate = 1 kHz', ...butterworth('gyro.filter.1', '400 Hz')],
  ],
  [
    'tune/noise-folds-into-loop',
    '600 Hz',
    ['gyro.rate = 4 kHz', 'control.rate = 1 kHz', ...butterworth('gyro.filter.1', '600 Hz')],
    ['gyro.rate = 4 kHz', 'control.rate = 1 kHz', ...butterworth('gyro.filter.1', '499 Hz')],
  ],
  [
    'tune/notch-above-half-rate',
    '600 Hz',
    ['gyro.rate = 1 kHz', ...notch('600 Hz', '60 Hz')],
    ['gyro.rate = 2 kHz', ...notch('600 Hz', '60 Hz')],
  ],
  [
    'tune/search-above-half-rate',
    '500 Hz',
    ['gyro.rate = 1 kHz', ...noise('gyro.filter.3', 'count = 2', 'to = 500 Hz')],
    ['gyro.rate = 1 kHz', ...noise('gyro.filter.3', 'count = 2', 'to = 480 Hz')],
  ],
  [
    'tune/search-above-half-rate', // the derivative is filtered at the rate of the loop
    '600 Hz',
    ['gyro.rate = 4 kHz', 'control.rate = 1 kHz', ...noise('derivative.filter.1', 'to = 600 Hz')],
    ['gyro.rate = 4 kHz', 'control.rate = 2 kHz', ...noise('derivative.filter.1', 'to = 600 Hz')],
  ],
  [
    // Butterworth of order 2 at 60 Hz: 10 log(1 + (200/60)^4) = 21 dB at 200 Hz.
    'tune/search-behind-lowpass',
    '200 Hz',
    [
      'gyro.rate = 8 kHz',
      ...butterworth('gyro.filter.1', '60 Hz'),
      ...noise('gyro.filter.2', 'from = 200 Hz'),
    ],
    [
      'gyro.rate = 8 kHz',
      ...butterworth('gyro.filter.3', '60 Hz'),
      ...noise('gyro.filter.2', 'from = 200 Hz'),
    ],
  ],
  [
    'tune/filter-incomplete',
    'first-order',
    [whole, 'gyro.filter.2.kind = first-order'],
    [whole, 'gyro.filter.2.kind = first-order', 'gyro.filter.2.cutoff = 90'], // broken, not missing
  ],
  [
    'tune/filter-incomplete',
    'notch',
    [whole, 'derivative.filter.1.kind = notch', 'derivative.filter.1.width = 40 Hz'],
    [
      whole,
      'derivative.filter.1.kind = notch',
      'derivative.filter.1.width = 40 Hz',
      'derivative.filter.1.centre = 200 Hz',
    ],
  ],
  [
    'tune/filter-incomplete',
    'follow-noise',
    [whole, ...noise('gyro.filter.3', 'count = 1', 'from = 100 Hz', 'width = 40 Hz')],
    [whole, ...noise('gyro.filter.3', 'count = 1', 'from = 100 Hz', 'width = 40 Hz', 'to = 400 Hz')],
  ],
  [
    'tune/filter-kind-missing',
    '90 Hz',
    [whole, 'gyro.filter.2.cutoff = 90 Hz'],
    [whole, ...butterworth('gyro.filter.2', '90 Hz')],
  ],
  [
    'tune/filter-setting-unused',
    '90 Hz',
    [...notch('200 Hz', '30 Hz'), 'gyro.filter.1.cutoff = 90 Hz'],
    notch('200 Hz', '30 Hz'),
  ],
  [
    'tune/chain-contradicted',
    'none',
    [...gyroOff, ...butterworth('gyro.filter.1', '90 Hz')],
    [...gyroOff, 'gyro.filter.1.kind = none'],
  ],
  [
    'tune/gyro-chain-unsaid',
    'craft',
    ['gyro.rate = 4 kHz', '[craft]', 'mass = 200 g'],
    ['gyro.rate = 4 kHz', 'gyro.chain = none', '[craft]', 'mass = 200 g'],
  ],
  [
    'tune/derivative-chain-unsaid',
    'craft',
    [...roll('0.05', '0.4', '0.0001'), '[craft]', 'mass = 200 g'],
    [...roll('0.05', '0.4', '0.0001'), ...derivativeOff, '[craft]', 'mass = 200 g'],
  ],
  ['tune/notch-wide', '90 Hz', notch('90 Hz', '90 Hz'), notch('90 Hz', '89 Hz')],
  ['tune/notch-narrow', '9 Hz', notch('200 Hz', '9 Hz'), notch('200 Hz', '10 Hz')],
  [
    'tune/notches-overlap',
    '220 Hz',
    [...notch('200 Hz', '30 Hz'), ...notch('220 Hz', '30 Hz', 2)],
    [...notch('200 Hz', '30 Hz'), ...notch('240 Hz', '30 Hz', 2)],
  ],
];

const filtersOff: readonly CheckCase[] = [
  [
    'tune/all-filters-off',
    'none',
    [...packOf(4), ...derivativeOff, ...gyroOff],
    [...packOf(3), ...derivativeOff, ...gyroOff],
  ],
  [
    'tune/all-filters-off',
    'none',
    [...packOf(6), ...derivativeOff, 'gyro.filter.1.kind = none'],
    [...packOf(6), ...derivativeOff, ...notch('200 Hz', '30 Hz')],
  ],
  [
    'tune/gyro-unfiltered',
    'none',
    [...packOf(4), ...gyroOff],
    [...packOf(4), ...motors('gyro.filter.2', 'tones = 2')],
  ],
  [
    'tune/derivative-unfiltered',
    'none',
    derivativeOff,
    ['derivative.filter.1.kind = none', 'derivative.filter.2.kind = butterworth'],
  ],
];

const followers: readonly CheckCase[] = [
  [
    'tune/tones-need-feedback',
    'follow-motors',
    [whole, 'esc.speed-feedback = off', ...motors('gyro.filter.2')],
    [whole, 'esc.speed-feedback = on', ...motors('gyro.filter.2')],
  ],
  [
    'tune/tones-need-feedback',
    'follow-motors',
    [whole, ...motors('derivative.filter.1')],
    [whole, ...noise('derivative.filter.1')],
  ],
  [
    'tune/poles-missing',
    'follow-motors',
    [whole, ...motors('gyro.filter.2')],
    [whole, 'motor.poles = 12', ...motors('gyro.filter.2')],
  ],
  [
    'tune/blades-missing',
    'on',
    [whole, ...motors('gyro.filter.2', 'blade-tone = on')],
    [whole, 'prop.blades = 3', ...motors('gyro.filter.2', 'blade-tone = on')],
  ],
  [
    'tune/following-wide',
    '90 Hz',
    motors('gyro.filter.2', 'from = 90 Hz', 'width = 90 Hz'),
    motors('gyro.filter.2', 'from = 90 Hz', 'width = 60 Hz'),
  ],
  [
    'tune/following-wide',
    '100 Hz',
    noise('gyro.filter.3', 'from = 100 Hz', 'width = 100 Hz'),
    noise('gyro.filter.3', 'from = 100 Hz', 'width = 40 Hz'),
  ],
  [
    'tune/search-reversed',
    '100 Hz',
    noise('gyro.filter.3', 'from = 300 Hz', 'to = 100 Hz'),
    noise('gyro.filter.3', 'from = 100 Hz', 'to = 300 Hz'),
  ],
  [
    'tune/search-narrow',
    '140 Hz',
    noise('gyro.filter.3', 'from = 100 Hz', 'to = 140 Hz'),
    noise('gyro.filter.3', 'from = 100 Hz', 'to = 150 Hz'),
  ],
  [
    'tune/search-slow', // 100 Hz moves by 100 Hz in 100 ms, by 20 Hz in 20 ms
    '20 ms',
    noise('gyro.filter.3', 'from = 100 Hz', 'width = 39 Hz', 'interval = 20 ms'),
    noise('gyro.filter.3', 'from = 100 Hz', 'width = 40 Hz', 'interval = 20 ms'),
  ],
];

const sticks: readonly CheckCase[] = [
  [
    'tune/curve-off-centre',
    '0 % -> 5 deg/s, 100 % -> 500 deg/s',
    ['stick.roll.curve = 0 % -> 5 deg/s, 100 % -> 500 deg/s'],
    ['stick.roll.curve = 0 % -> 0 deg/s, 100 % -> 500 deg/s'],
  ],
  [
    'tune/curve-ends-early',
    '0 % -> 0 deg/s, 90 % -> 500 deg/s',
    ['stick.yaw.curve = 0 % -> 0 deg/s, 90 % -> 500 deg/s'],
    ['stick.yaw.curve = 0 % -> 0 deg/s, 100 % -> 500 deg/s'],
  ],
  [
    'tune/curve-beyond-gyro',
    '0 % -> 0 deg/s, 100 % -> 500 deg/s',
    ['gyro.full-scale = 500 deg/s', 'stick.pitch.curve = 0 % -> 0 deg/s, 100 % -> 500 deg/s'],
    ['gyro.full-scale = 500 deg/s', 'stick.pitch.curve = 0 % -> 0 deg/s, 100 % -> 499 deg/s'],
  ],
  [
    'tune/curve-near-gyro',
    '0 % -> 0 deg/s, 100 % -> 460 deg/s',
    ['gyro.full-scale = 500 deg/s', 'stick.pitch.curve = 0 % -> 0 deg/s, 100 % -> 460 deg/s'],
    ['gyro.full-scale = 500 deg/s', 'stick.pitch.curve = 0 % -> 0 deg/s, 100 % -> 450 deg/s'],
  ],
  [
    'tune/curve-beyond-limit',
    '0 % -> 0 deg/s, 100 % -> 500 deg/s',
    ['stick.roll.limit = 400 deg/s', 'stick.roll.curve = 0 % -> 0 deg/s, 100 % -> 500 deg/s'],
    ['stick.roll.limit = 500 deg/s', 'stick.roll.curve = 0 % -> 0 deg/s, 100 % -> 500 deg/s'],
  ],
  [
    'tune/throttle-off-zero',
    '0 % -> 3 %, 100 % -> 100 %',
    ['stick.throttle.curve = 0 % -> 3 %, 100 % -> 100 %'],
    ['stick.throttle.curve = 0 % -> 0 %, 100 % -> 80 %'],
  ],
  [
    'tune/throttle-ends-early',
    '0 % -> 0 %, 90 % -> 100 %',
    ['stick.throttle.curve = 0 % -> 0 %, 90 % -> 100 %'],
    ['stick.throttle.curve = 0 % -> 0 %, 100 % -> 100 %'],
  ],
];

const gains: readonly CheckCase[] = [
  [
    'tune/integral-takes-all',
    '60 %',
    ['control.roll.limit = 60 %', 'control.integral-limit = 60 %'],
    ['control.roll.limit = 60 %', 'control.integral-limit = 30 %'],
  ],
  [
    'tune/integral-takes-all', // by what is assumed of the integral
    '20 %',
    ['control.yaw.limit = 20 %'],
    ['control.yaw.limit = 30 %'],
  ],
  [
    'tune/yaw-takes-from-others',
    '60 %',
    ['control.pitch.limit = 50 %', 'control.yaw.limit = 60 %'],
    ['control.pitch.limit = 50 %', 'control.yaw.limit = 50 %'],
  ],
  [
    'tune/derivative-limit-unused',
    '50 %',
    ['derivative.limit = 60 %', 'control.roll.limit = 50 %'],
    ['derivative.limit = 50 %', 'control.roll.limit = 50 %'],
  ],
  [
    'tune/axis-limit-unknown',
    '20 %',
    [whole, 'control.roll.limit = 60 %', 'control.yaw.limit = 50 %', 'control.integral-limit = 20 %'],
    [
      whole,
      'control.roll.limit = 60 %',
      'control.pitch.limit = 60 %',
      'control.yaw.limit = 50 %',
      'control.integral-limit = 20 %',
    ],
  ],
  ['tune/no-proportional', '0 %/(deg/s)', roll('0', '0.4', '0'), roll('0', '0', '0')],
  [
    'tune/derivative-heavy',
    '0.0026 %/(deg/s^2)',
    roll('0.05', '0.4', '0.0026'),
    roll('0.05', '0.4', '0.0025'),
  ],
  [
    'tune/derivative-late', // 0.05 / (2 pi 0.0001) is a corner of 79.6 Hz
    '0.0001 %/(deg/s^2)',
    [...butterworth('derivative.filter.1', '79 Hz'), ...roll('0.05', '0.4', '0.0001')],
    [...butterworth('derivative.filter.1', '80 Hz'), ...roll('0.05', '0.4', '0.0001')],
  ],
  [
    'tune/feedforward-staircase', // twenty milliseconds are fifty frames a second
    '26 Hz',
    ['receiver.frame-interval = 20 ms', 'control.feedforward-cutoff = 26 Hz'],
    ['receiver.frame-interval = 20 ms', 'control.feedforward-cutoff = 25 Hz'],
  ],
  [
    'tune/feedforward-cutoff-unused',
    '20 Hz',
    [whole, 'control.feedforward-cutoff = 20 Hz'],
    [whole, 'control.yaw.feedforward = 0.0001 %/(deg/s^2)', 'control.feedforward-cutoff = 20 Hz'],
  ],
  ['tune/integral-heavy', '1.3 %/deg', roll('0.05', '1.3', '0.0002'), roll('0.05', '1.2', '0.0002')],
  [
    'tune/roll-pitch-apart',
    '0.5 %/(deg/s)',
    ['control.roll.proportional = 0.05 %/(deg/s)', 'control.pitch.proportional = 0.5 %/(deg/s)'],
    ['control.roll.proportional = 0.05 %/(deg/s)', 'control.pitch.proportional = 0.06 %/(deg/s)'],
  ],
];

const when = (situation: string, ...settings: readonly string[]) =>
  settings.map((setting) => `control.when.${situation}.${setting}`);
const sticks300 = ['roll', 'pitch', 'yaw'].map(
  (axis) => `stick.${axis}.curve = 0 % -> 0 deg/s, 100 % -> 300 deg/s`,
);

const situations: readonly CheckCase[] = [
  [
    'tune/situation-changes-nothing',
    '60 %',
    [whole, ...when('high-throttle', 'derivative = 100 %', 'from = 60 %')],
    [whole, ...when('high-throttle', 'derivative = 70 %', 'from = 60 %')],
  ],
  [
    'tune/situation-changes-nothing',
    '3 %',
    [whole, ...when('zero-throttle', 'from = 3 %')],
    [whole, ...when('zero-throttle', 'keep-steering = off', 'from = 3 %')],
  ],
  [
    'tune/situation-without-beginning',
    '0 %',
    [whole, ...when('fast-turn', 'integral = 0 %')],
    [whole, ...when('fast-turn', 'from = 200 deg/s', 'integral = 0 %')],
  ],
  [
    'tune/fast-turn-never',
    '300 deg/s',
    [...sticks300, ...when('fast-turn', 'integral = 0 %', 'from = 300 deg/s')],
    [...sticks300, ...when('fast-turn', 'integral = 0 %', 'from = 299 deg/s')],
  ],
  [
    'tune/zero-throttle-reaches-high',
    '8 %',
    [...when('high-throttle', 'from = 8 %'), ...when('zero-throttle', 'from = 8 %')],
    [...when('high-throttle', 'from = 9 %'), ...when('zero-throttle', 'from = 8 %')],
  ],
  [
    'tune/winds-up-when-short',
    '101 %',
    when('motors-short', 'integral = 101 %'),
    when('motors-short', 'integral = 100 %'),
  ],
  [
    'tune/steering-gives-way',
    'turn',
    [...when('zero-throttle', 'keep-steering = on'), ...when('motors-short', 'gives-way = turn')],
    [...when('zero-throttle', 'keep-steering = on'), ...when('motors-short', 'gives-way = both')],
  ],
];

const all = [...situations, ...rates, ...filters, ...filtersOff, ...followers, ...sticks, ...gains];
const alike: readonly CheckCase[] = [
  [
    'tune/axis-gains-missing',
    '0.05 %/(deg/s)',
    [whole, 'control.roll.proportional = 0.05 %/(deg/s)', 'control.pitch.proportional = 0.05 %/(deg/s)'],
    [
      whole,
      'control.roll.proportional = 0.05 %/(deg/s)',
      'control.pitch.proportional = 0.05 %/(deg/s)',
      'control.yaw.proportional = 0.05 %/(deg/s)',
    ],
  ],
  [
    'tune/curve-missing',
    '0 % -> 0 deg/s, 100 % -> 500 deg/s',
    [whole, 'stick.roll.curve = 0 % -> 0 deg/s, 100 % -> 500 deg/s'],
    [
      whole,
      ...['roll', 'pitch', 'yaw'].map((axis) => `stick.${axis}.curve = 0 % -> 0 deg/s, 100 % -> 500 deg/s`),
    ],
  ],
  [
    'tune/gains-missing',
    '2 kHz',
    [whole, 'control.rate = 2 kHz'],
    [
      whole,
      'control.rate = 2 kHz',
      ...['roll', 'pitch', 'yaw'].map((axis) => `control.${axis}.proportional = 0.05 %/(deg/s)`),
    ],
  ],
  [
    'tune/roll-pitch-rates-apart',
    '0 % -> 0 deg/s, 100 % -> 200 deg/s',
    [
      'stick.roll.curve = 0 % -> 0 deg/s, 100 % -> 500 deg/s',
      'stick.pitch.curve = 0 % -> 0 deg/s, 100 % -> 200 deg/s',
    ],
    [
      'stick.roll.curve = 0 % -> 0 deg/s, 100 % -> 500 deg/s',
      'stick.pitch.curve = 0 % -> 0 deg/s, 100 % -> 300 deg/s',
    ],
  ],
  [
    'tune/roll-rate-low',
    '0 % -> 0 deg/s, 100 % -> 65 deg/s',
    ['stick.roll.curve = 0 % -> 0 deg/s, 100 % -> 65 deg/s'],
    ['stick.roll.curve = 0 % -> 0 deg/s, 100 % -> 650 deg/s'],
  ],
  [
    'tune/filters-alike',
    'butterworth',
    [...butterworth('gyro.filter.1', '225 Hz'), ...butterworth('gyro.filter.3', '220 Hz')],
    [...butterworth('gyro.filter.1', '225 Hz'), ...butterworth('gyro.filter.3', '120 Hz')],
  ],
  [
    'tune/filters-alike',
    'follow-motors',
    [...motors('gyro.filter.1'), ...motors('gyro.filter.2')],
    [...motors('gyro.filter.1'), ...noise('gyro.filter.2')],
  ],
  [
    'tune/derivative-filter-idle',
    '800 Hz',
    [...butterworth('gyro.filter.1', '225 Hz'), ...butterworth('derivative.filter.1', '800 Hz')],
    [...butterworth('gyro.filter.1', '225 Hz'), ...butterworth('derivative.filter.1', '300 Hz')],
  ],
];

export const tuneCases: GroupCases = {
  group: 'tune',
  cases: [...all, ...alike],
  elsewhere: estimateIds,
};
