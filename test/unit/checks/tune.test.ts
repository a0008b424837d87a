import { type CheckCase, holdChecks } from '../../support/check-cases';
import { estimateIds } from '../../support/estimate-cases';

const whole = 'craft.mass = 200 g';
const heron = 'board.profile = heron';
const butterworth = (path: string, cutoff: string) => [
  `${path}.shape = butterworth`,
  `${path}.cutoff = ${cutoff}`,
];
const notch = (centre: string, width: string, number = 1) => [
  `gyro.notch.${number}.centre = ${centre}`,
  `gyro.notch.${number}.width = ${width}`,
];
const gyroOff = ['gyro.lowpass.shape = off'];
const derivativeOff = ['derivative.lowpass.shape = off'];
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
    ['gyro.rate = 1 kHz', ...butterworth('gyro.lowpass', '500 Hz')],
    ['gyro.rate = 1 kHz', ...butterworth('gyro.lowpass', '499 Hz')],
  ],
  [
    'tune/lowpass-above-half-rate', // the derivative is filtered at the rate of the loop
    '600 Hz',
    ['gyro.rate = 4 kHz', 'control.rate = 1 kHz', ...butterworth('derivative.lowpass', '600 Hz')],
    ['gyro.rate = 4 kHz', 'control.rate = 2 kHz', ...butterworth('derivative.lowpass', '600 Hz')],
  ],
  [
    'tune/lowpass-near-half-rate',
    '401 Hz',
    ['gyro.rate = 1 kHz', ...butterworth('gyro.lowpass', '401 Hz')],
    ['gyro.rate = 1 kHz', ...butterworth('gyro.lowpass', '400 Hz')],
  ],
  [
    'tune/noise-folds-into-loop',
    '600 Hz',
    ['gyro.rate = 4 kHz', 'control.rate = 1 kHz', ...butterworth('gyro.lowpass', '600 Hz')],
    ['gyro.rate = 4 kHz', 'control.rate = 1 kHz', ...butterworth('gyro.lowpass', '499 Hz')],
  ],
  [
    'tune/notch-above-half-rate',
    '600 Hz',
    ['gyro.rate = 1 kHz', ...notch('600 Hz', '60 Hz')],
    ['gyro.rate = 2 kHz', ...notch('600 Hz', '60 Hz')],
  ],
  [
    'tune/tracker-above-half-rate',
    '500 Hz',
    ['gyro.rate = 1 kHz', 'gyro.tracker.count = 2', 'gyro.tracker.to = 500 Hz'],
    ['gyro.rate = 1 kHz', 'gyro.tracker.count = 2', 'gyro.tracker.to = 480 Hz'],
  ],
  [
    'tune/cutoff-missing',
    'first-order',
    [whole, 'gyro.second-lowpass.shape = first-order'],
    [whole, 'gyro.second-lowpass.shape = first-order', 'gyro.second-lowpass.cutoff = 90'], // broken, not missing
  ],
  [
    'tune/cutoff-unused',
    '90 Hz',
    ['gyro.second-lowpass.cutoff = 90 Hz'],
    ['gyro.second-lowpass.shape = first-order', 'gyro.second-lowpass.cutoff = 90 Hz'],
  ],
  [
    'tune/notch-incomplete',
    '200 Hz',
    [whole, 'gyro.notch.1.centre = 200 Hz'],
    [whole, 'gyro.notch.1.centre = 200 Hz', 'gyro.notch.1.width = 40 Hz'],
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
    'off',
    [...packOf(4), ...derivativeOff, ...gyroOff],
    [...packOf(3), ...derivativeOff, ...gyroOff],
  ],
  [
    'tune/all-filters-off',
    'off',
    [...packOf(6), ...derivativeOff, ...gyroOff],
    [...packOf(6), ...derivativeOff, ...gyroOff, ...notch('200 Hz', '30 Hz')],
  ],
  [
    'tune/gyro-unfiltered',
    'off',
    [...packOf(4), ...gyroOff],
    [...packOf(4), ...gyroOff, 'gyro.tones.harmonics = 2'],
  ],
  [
    'tune/derivative-unfiltered',
    'off',
    derivativeOff,
    [...derivativeOff, 'derivative.second-lowpass.shape = butterworth'],
  ],
];

const followers: readonly CheckCase[] = [
  [
    'tune/tones-need-feedback',
    '2',
    [whole, 'esc.speed-feedback = off', 'gyro.tones.harmonics = 2'],
    [whole, 'esc.speed-feedback = on', 'gyro.tones.harmonics = 2'],
  ],
  ['tune/tones-need-feedback', '1', [whole, 'gyro.tones.harmonics = 1'], [whole, 'gyro.tones.harmonics = 0']],
  [
    'tune/poles-missing',
    '2',
    [whole, 'gyro.tones.harmonics = 2'],
    [whole, 'motor.poles = 12', 'gyro.tones.harmonics = 2'],
  ],
  [
    'tune/blades-missing',
    'on',
    [whole, 'gyro.tones.harmonics = 2', 'gyro.tones.blade-pass = on'],
    [whole, 'prop.blades = 3', 'gyro.tones.harmonics = 2', 'gyro.tones.blade-pass = on'],
  ],
  [
    'tune/blade-pass-unused',
    'on',
    ['gyro.tones.blade-pass = on'],
    ['gyro.tones.harmonics = 1', 'gyro.tones.blade-pass = on'],
  ],
  [
    'tune/tones-unused',
    '14 Hz',
    ['gyro.tones.width = 14 Hz'],
    ['gyro.tones.harmonics = 1', 'gyro.tones.width = 14 Hz'],
  ],
  [
    'tune/tones-wide',
    '90 Hz',
    ['gyro.tones.harmonics = 1', 'gyro.tones.from = 90 Hz', 'gyro.tones.width = 90 Hz'],
    ['gyro.tones.harmonics = 1', 'gyro.tones.from = 90 Hz', 'gyro.tones.width = 60 Hz'],
  ],
  [
    'tune/tracker-reversed',
    '100 Hz',
    ['gyro.tracker.count = 1', 'gyro.tracker.from = 300 Hz', 'gyro.tracker.to = 100 Hz'],
    ['gyro.tracker.count = 1', 'gyro.tracker.from = 100 Hz', 'gyro.tracker.to = 300 Hz'],
  ],
  [
    'tune/tracker-narrow',
    '140 Hz',
    ['gyro.tracker.count = 1', 'gyro.tracker.from = 100 Hz', 'gyro.tracker.to = 140 Hz'],
    ['gyro.tracker.count = 1', 'gyro.tracker.from = 100 Hz', 'gyro.tracker.to = 150 Hz'],
  ],
  [
    'tune/tracker-wide',
    '100 Hz',
    ['gyro.tracker.count = 1', 'gyro.tracker.from = 100 Hz', 'gyro.tracker.width = 100 Hz'],
    ['gyro.tracker.count = 1', 'gyro.tracker.from = 100 Hz', 'gyro.tracker.width = 40 Hz'],
  ],
  [
    'tune/tracker-slow', // 100 Hz moves by 100 Hz in 100 ms, by 20 Hz in 20 ms
    '20 ms',
    [
      'gyro.tracker.count = 1',
      'gyro.tracker.from = 100 Hz',
      'gyro.tracker.width = 39 Hz',
      'gyro.tracker.interval = 20 ms',
    ],
    [
      'gyro.tracker.count = 1',
      'gyro.tracker.from = 100 Hz',
      'gyro.tracker.width = 40 Hz',
      'gyro.tracker.interval = 20 ms',
    ],
  ],
  [
    'tune/tracker-incomplete',
    '1',
    [whole, 'gyro.tracker.from = 100 Hz', 'gyro.tracker.width = 40 Hz', 'gyro.tracker.count = 1'],
    [
      whole,
      'gyro.tracker.from = 100 Hz',
      'gyro.tracker.width = 40 Hz',
      'gyro.tracker.to = 400 Hz',
      'gyro.tracker.count = 1',
    ],
  ],
  [
    'tune/tracker-unused',
    '100 Hz',
    ['gyro.tracker.from = 100 Hz'],
    ['gyro.tracker.count = 1', 'gyro.tracker.from = 100 Hz'],
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
    ['control.sum-limit = 60 %', 'control.integral-limit = 60 %'],
    ['control.sum-limit = 60 %', 'control.integral-limit = 30 %'],
  ],
  [
    'tune/yaw-limit-unused',
    '60 %',
    ['control.sum-limit = 50 %', 'control.yaw-limit = 60 %'],
    ['control.sum-limit = 50 %', 'control.yaw-limit = 50 %'],
  ],
  [
    'tune/derivative-limit-unused',
    '60 %',
    ['control.sum-limit = 50 %', 'derivative.limit = 60 %'],
    ['control.sum-limit = 50 %', 'derivative.limit = 50 %'],
  ],
  [
    'tune/fade-unused',
    '60 %',
    ['control.throttle-fade.from = 60 %'],
    ['control.throttle-fade.amount = 30 %', 'control.throttle-fade.from = 60 %'],
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
    [...butterworth('derivative.lowpass', '79 Hz'), ...roll('0.05', '0.4', '0.0001')],
    [...butterworth('derivative.lowpass', '80 Hz'), ...roll('0.05', '0.4', '0.0001')],
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
  [
    'tune/authority-yields',
    'turn-yields',
    ['control.idle-authority = on', 'control.when-short = turn-yields'],
    ['control.idle-authority = on', 'control.when-short = share'],
  ],
  ['tune/integral-heavy', '1.3 %/deg', roll('0.05', '1.3', '0.0002'), roll('0.05', '1.2', '0.0002')],
  [
    'tune/roll-pitch-apart',
    '0.5 %/(deg/s)',
    ['control.roll.proportional = 0.05 %/(deg/s)', 'control.pitch.proportional = 0.5 %/(deg/s)'],
    ['control.roll.proportional = 0.05 %/(deg/s)', 'control.pitch.proportional = 0.06 %/(deg/s)'],
  ],
];

holdChecks('tune', [...rates, ...filters, ...filtersOff, ...followers, ...sticks, ...gains], estimateIds);
