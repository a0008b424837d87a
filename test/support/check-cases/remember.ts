import type { CheckCase, GroupCases } from '../check-cases';
import { estimateIds } from '../estimate-cases';

const whole = 'craft.mass = 200 g';
const off = 'derivative.filter.1.kind = none';
const pack = ['pack.sprint.capacity = 550 mAh'];
const change = (packs: number) => [
  'flight.first.date = 2026-05-01',
  'flight.first.packs-flown = 9',
  'flight.second.date = 2026-05-02',
  'flight.second.packs-flown = 5',
  `flight.third.packs-flown = ${packs}`,
  'flight.third.date = 2026-05-03',
  'flight.second.changed = "softer mount"',
];

/** More flights than are kept one by one, in no order, with changes in between; the last change has so many packs. */
function longLog(packs: number): readonly string[] {
  const since = Array.from({ length: packs - 1 }, (_, index) => `flight.late-${index}.date = 2026-08-02`);
  const before = Array.from({ length: 90 }, (_, index) => [
    `flight.early-${index}.date = 2026-0${5 + (index % 3)}-0${1 + (index % 9)}`,
    ...(index % 7 === 0 ? [`flight.early-${index}.changed = "tighter"`] : []),
  ]).flat();
  const change = ['flight.second.date = 2026-08-01', 'flight.second.changed = "softer mount"'];
  return [...since.slice(0, 5), ...before, ...change, ...since.slice(5)];
}

const cases: readonly CheckCase[] = [
  [
    'remember/motors-too-hot',
    '66 degC',
    ['motor.temperature-limit = 65 degC', 'flight.noon.motor-temperature = 66 degC'],
    ['motor.temperature-limit = 65 degC', 'flight.noon.motor-temperature = 64 degC'],
  ],
  [
    'remember/motors-too-hot', // magnets have a limit that nobody has to write
    '80 degC',
    ['flight.noon.motor-temperature = 80 degC'],
    ['flight.noon.motor-temperature = 79 degC'],
  ],
  [
    'remember/warm-and-unfiltered',
    '60 degC',
    [off, 'flight.noon.motor-temperature = 60 degC'],
    ['derivative.filter.1.kind = butterworth', 'flight.noon.motor-temperature = 60 degC'],
  ],
  [
    'remember/warm-and-unfiltered', // what counts is the pack that was flown
    '60 degC',
    [
      '[derivative.filter.1]',
      'kind  = butterworth',
      '[derivative.filter.1 @ sprint]',
      'kind = none',
      '[pack.sprint]',
      'cells = 6',
      '[pack.cruise]',
      'cells = 4',
      '[flight.noon]',
      'pack = sprint',
      'motor-temperature = 60 degC',
    ],
    [
      '[derivative.filter.1]',
      'kind  = butterworth',
      '[derivative.filter.1 @ sprint]',
      'kind = none',
      '[pack.sprint]',
      'cells = 6',
      '[pack.cruise]',
      'cells = 4',
      '[flight.noon]',
      'pack = cruise',
      'motor-temperature = 60 degC',
    ],
  ],
  [
    'remember/esc-too-hot',
    '90 degC',
    ['esc.holds-back.heat = 90 degC', 'flight.noon.esc-temperature = 90 degC'],
    ['esc.holds-back.heat = 100 degC', 'flight.noon.esc-temperature = 90 degC'],
  ],
  ['remember/few-packs-since-change', '"softer mount"', change(6), change(7)],
  ['remember/few-packs-since-change', '"softer mount"', longLog(11), longLog(12)],
  [
    'remember/date-missing',
    '"softer mount"',
    ['flight.noon.changed = "softer mount"'],
    ['flight.noon.date = 2026-05-02', 'flight.noon.changed = "softer mount"'],
  ],
  [
    'remember/pack-below-land',
    '3.2 V',
    ['power.land-cell = 3.3 V', 'flight.noon.rest-cell = 3.2 V'],
    ['power.land-cell = 3.3 V', 'flight.noon.rest-cell = 3.3 V'],
  ],
  [
    'remember/pack-drained',
    '450 mAh',
    [...pack, 'flight.noon.used-charge = 450 mAh'],
    [...pack, 'flight.noon.used-charge = 440 mAh'],
  ],
  [
    'remember/pack-not-named',
    '54 degC',
    [...pack, 'pack.cruise.capacity = 1800 mAh', 'flight.noon.motor-temperature = 54 degC'],
    [...pack, 'flight.noon.motor-temperature = 54 degC'],
  ],
  [
    'remember/hover-point-moved',
    '39 %',
    ['stick.throttle.hover-point = 30 %', 'flight.noon.hover-throttle = 39 %'],
    ['stick.throttle.hover-point = 30 %', 'flight.noon.hover-throttle = 37 %'],
  ],
  [
    'remember/hover-point-moved', // the latest flight counts
    '20 %',
    [
      'stick.throttle.hover-point = 30 %',
      'flight.early.date = 2026-05-01',
      'flight.early.hover-throttle = 30 %',
      'flight.late.date = 2026-05-02',
      'flight.late.hover-throttle = 20 %',
    ],
    [
      'stick.throttle.hover-point = 30 %',
      'flight.early.date = 2026-05-03',
      'flight.early.hover-throttle = 30 %',
      'flight.late.date = 2026-05-02',
      'flight.late.hover-throttle = 20 %',
    ],
  ],
  [
    'remember/link-was-weak',
    '55 %',
    ['receiver.quality-warning = 60 %', 'flight.noon.weakest-link = 55 %'],
    ['receiver.quality-warning = 50 %', 'flight.noon.weakest-link = 55 %'],
  ],
  [
    'remember/flown-after-permission',
    '2026-06-01',
    ['rules.permission-until = 2026-05-31', 'flight.noon.date = 2026-06-01'],
    ['rules.permission-until = 2026-06-01', 'flight.noon.date = 2026-06-01'],
  ],
  [
    'remember/log-switch-missing',
    'switch',
    [whole, 'record.start = switch'],
    [whole, 'switch.log.channel = 8', 'record.start = switch'],
  ],
  [
    'remember/log-faster-than-loop',
    '4 kHz',
    ['control.rate = 2 kHz', 'record.rate = 4 kHz'],
    ['control.rate = 4 kHz', 'record.rate = 4 kHz'],
  ],
  [
    'remember/no-log-memory',
    'flash',
    ['board.profile = wren', 'record.medium = flash'],
    ['board.profile = heron', 'record.medium = flash'],
  ],
  [
    'remember/log-too-short', // 16 MB of lines of 16 bytes: a million lines, 250 s at 4 kHz
    '4.5 kHz',
    ['record.size = 16 MB', 'record.fields = [turning-rates]', 'record.rate = 4.5 kHz'],
    ['record.size = 16 MB', 'record.fields = [turning-rates]', 'record.rate = 4 kHz'],
  ],
  [
    'remember/windier-than-limit',
    '9 m/s',
    ['craft.wind-limit = 8 m/s', 'flight.gusty.wind = 9 m/s'],
    ['craft.wind-limit = 8 m/s', 'flight.gusty.wind = 8 m/s'],
  ],
];

const readings: readonly CheckCase[] = [
  [
    'remember/motors-below-air',
    '5 degC',
    [
      'flight.noon.date = 2026-05-01',
      'flight.noon.motor-temperature = 5 degC',
      'flight.noon.air-temperature = 25 degC',
    ],
    [
      'flight.noon.date = 2026-05-01',
      'flight.noon.motor-temperature = 45 degC',
      'flight.noon.air-temperature = 25 degC',
    ],
  ],
];

const dates: readonly CheckCase[] = [
  [
    'remember/flown-before-built',
    '2026-05-01',
    ['craft.built = 2026-05-02', 'flight.noon.date = 2026-05-01'],
    ['craft.built = 2026-05-01', 'flight.noon.date = 2026-05-01'],
  ],
  [
    'remember/flown-before-bought',
    '2026-05-01',
    [
      'pack.one.bought = 2026-05-02',
      'pack.two.cells = 4',
      'flight.noon.pack = one',
      'flight.noon.date = 2026-05-01',
    ],
    [
      'pack.one.bought = 2026-05-02',
      'pack.two.cells = 4',
      'flight.noon.pack = two',
      'flight.noon.date = 2026-05-01',
    ],
  ],
];

/** Where a board's text is included. */
const ofBoardTexts = ['remember/meaning-unsaid'];

export const rememberCases: GroupCases = {
  group: 'remember',
  cases: [...cases, ...readings, ...dates],
  elsewhere: [...estimateIds, ...ofBoardTexts],
};
