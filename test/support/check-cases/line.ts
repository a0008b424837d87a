import type { CheckCase, GroupCases } from '../check-cases';

const rested = 'motor.idle = 1.5 % # accept turn/idle-low: felt by hand on the bench';

/** What is wrong on a line by itself: its characters, its shape and its value. */
const alone: readonly CheckCase[] = [
  ['line/section-not-closed', 't', ['[craft', 'mass = 200 g'], ['[craft]', 'mass = 200 g']],
  ['line/hidden-character', '\u202e', ['craft.name = "Wag\u202etail"'], ['craft.name = "Wagtail"']],
  [
    'line/list-too-long',
    '[lost-link, switch, low-pack, armed-idle, switch]',
    ['find.on = [lost-link, switch, low-pack, armed-idle, switch]'],
    ['find.on = [lost-link, switch, low-pack, armed-idle]'],
  ],
  [
    'line/text-too-long',
    `"${'a'.repeat(33)}"`,
    [`craft.name = "${'a'.repeat(33)}"`],
    [`craft.name = "${'a'.repeat(32)}"`],
  ],
  ['line/unknown-function', 'floor', ['let quiet = floor(90.5 Hz)'], ['let quiet = abs(90.5 Hz)']],
  ['line/no-finite-value', powers(21), [`let quiet = ${powers(21)}`], [`let quiet = ${powers(20)}`]],
  ['line/not-understood', 'g', ['craft.mass = 200 g g'], ['craft.mass = 200 g']],
  ['line/value-missing', '=', ['craft.mass ='], ['craft.mass = 200 g']],
  ['line/text-not-closed', '"Sandmartin', ['craft.name = "Sandmartin'], ['craft.name = "Sandmartin"']],
  ['line/constant-name', 'quiet.tone', ['let quiet.tone = 90 Hz'], ['let quiet-tone = 90 Hz']],
  ['line/constant-value', '"on"', ['let quiet = "on"'], ['let quiet = 90 Hz']],
  ['line/odd-space', '\u00a0', ['craft.mass = 200\u00a0g'], ['craft.mass = 200 g']],
  ['line/odd-minus', '\u2212', ['board.mount-yaw = \u221290 deg'], ['board.mount-yaw = -90 deg']],
  [
    'line/odd-quotes',
    '\u201cWagtail\u201d',
    ['craft.name = \u201cWagtail\u201d'],
    ['craft.name = "Wagtail"'],
  ],
  ['line/odd-degree', '\u00ba', ['craft.air-temperature = 15 \u00baC'], ['craft.air-temperature = 15 degC']],
  ['line/decimal-comma', '6,5', ['motor.idle = 6,5 %'], ['motor.idle = 6.5 %']],
  ['line/not-a-number', '0x10', ['craft.mass = 0x10 g'], ['craft.mass = 16 g']],
  ['line/number-too-large', '1e400', ['craft.mass = 1e400 g'], ['craft.mass = 200 g']],
  ['line/plus-sign', '+', ['board.mount-yaw = +90 deg'], ['board.mount-yaw = 90 deg']],
  ['line/minus-spacing', '-', ['let quiet = 100 Hz-10 Hz'], ['let quiet = 100 Hz - 10 Hz']],
  [
    'line/minus-spacing',
    '-',
    ['let low = 10 Hz', 'let quiet = 2*low-low'],
    ['let low = 10 Hz', 'let quiet = 2 * low - low'],
  ],
  ['line/unknown-unit', 'grams', ['craft.mass = 200 grams'], ['craft.mass = 200 g']],
  ['line/unit-in-product', '14 dBm', ['video.power = 2 * 14 dBm'], ['video.power = 17 dBm']],
  [
    'line/temperature-calculated',
    '10 degC',
    ['craft.air-temperature = 2 * 10 degC'],
    ['craft.air-temperature = 10 degC + 10 K'],
  ],
  [
    'line/acceptance-form',
    '# accept turn/idle-low',
    ['motor.idle = 5 % # accept turn/idle-low'],
    ['motor.idle = 5 % # as on the bench'],
  ],
  ['line/unknown-word', 'quad-z', ['craft.layout = quad-z'], ['craft.layout = quad-x']],
  ['line/wrong-shape', '"heavy"', ['craft.mass = "heavy"'], ['craft.mass = 200 g']],
  ['line/wrong-dimension', '200 mm', ['craft.mass = 200 mm'], ['craft.mass = 200 g']],
  ['line/unit-missing', '200', ['craft.mass = 200'], ['craft.mass = 200 g']],
  ['line/unit-on-count', '14 V', ['motor.poles = 14 V'], ['motor.poles = 14']],
  ['line/count-not-whole', '13.5', ['motor.poles = 13.5'], ['motor.poles = 14']],
  ['line/outside-range', '181 deg', ['arming.tilt-limit = 181 deg'], ['arming.tilt-limit = 25 deg']],
  ['line/outside-usual', '25 %', ['motor.idle = 25 %'], ['motor.idle = 5 %']],
  [
    'line/range-reversed',
    '2050..1750 us',
    ['switch.arm.on = 2050..1750 us'],
    ['switch.arm.on = 1750..2050 us'],
  ],
  [
    'line/curve-not-rising',
    '100 % -> 100 deg/s',
    ['stick.roll.curve = 0 % -> 0 deg/s, 50 % -> 200 deg/s, 100 % -> 100 deg/s'],
    ['stick.roll.curve = 0 % -> 0 deg/s, 50 % -> 200 deg/s, 100 % -> 201 deg/s'],
  ],
  ['line/word-repeated', 'buzzer', ['find.device = [buzzer, buzzer]'], ['find.device = [buzzer, motors]']],
  ['line/no-such-date', '2026-02-29', ['craft.built = 2026-02-29'], ['craft.built = 2026-02-28']],
  ['line/divided-by-zero', '0', ['let quiet = 90 Hz / 0'], ['let quiet = 90 Hz / 1']],
  ['line/unlike-sum', '1 V', ['let quiet = 90 Hz + 1 V'], ['let quiet = 90 Hz + 1 kHz']],
  ['line/wrong-arguments', 'sqrt(4, 9)', ['let quiet = sqrt(4, 9)'], ['let quiet = sqrt(4)']],
];

/** What is wrong between lines: names that lead nowhere, lines that meet, includes and acceptances. */
const together: readonly CheckCase[] = [
  [
    'line/unknown-pack',
    'sprnt',
    ['craft.mass = 200 g', 'pack.sprint.cells = 4', '[power @ sprnt]', 'warn-cell = 3.5 V'],
    ['craft.mass = 200 g', 'pack.sprint.cells = 4', '[power @ sprint]', 'warn-cell = 3.5 V'],
  ],
  [
    'line/constant-unused',
    'quiet',
    ['let quiet = 90 Hz', 'gyro.filter.1.cutoff = 90 Hz'],
    ['let quiet = 90 Hz', 'gyro.filter.1.cutoff = quiet'],
  ],
  [
    'line/set-again-below',
    'quiet',
    ['let quiet = 90 Hz', 'let quiet = 80 Hz'],
    ['let quiet = 90 Hz', 'let low = 80 Hz'],
  ],
  [
    'line/names-too-deep',
    'a33',
    [...chain(33), 'gyro.filter.1.cutoff = a33'],
    [...chain(31), 'gyro.filter.1.cutoff = a31'],
  ],
  [
    'line/accept-unused',
    '# accept turn/idle-low: felt by hand on the bench',
    ['craft.mass = 200 g', rested.replace('1.5', '5')],
    ['craft.mass = 200 g', rested],
  ],
  ['line/unknown-name', 'craft.mas', ['craft.mas = 200 g'], ['craft.mass = 200 g']],
  [
    'line/means-nothing-here',
    'proportional',
    ['[control.when.motors-short]', 'proportional = 50 %'],
    ['[control.when.fast-turn]', 'proportional = 50 %'],
  ],
  [
    'line/means-nothing-here',
    'from',
    ['[control.when.motors-short]', 'from = 90 %'],
    ['[control.when.motors-short]', 'integral = 0 %'],
  ],
  ['line/unknown-section', 'carft', ['[carft]'], ['[craft]']],
  [
    'line/unknown-constant',
    'quite',
    ['gyro.filter.1.cutoff = 2 * quite'],
    ['let quiet = 90 Hz', 'gyro.filter.1.cutoff = 2 * quiet'],
  ],
  [
    'line/reference-not-set',
    'gyro.rate',
    ['gyro.filter.1.cutoff = 0.1 * gyro.rate'],
    ['gyro.rate = 1 kHz', 'gyro.filter.1.cutoff = 0.1 * gyro.rate'],
  ],
  [
    'line/not-a-quantity',
    'craft.name',
    ['craft.name = "Wagtail"', 'craft.mass = 2 * craft.name'],
    ['craft.payload = 10 g', 'craft.mass = 2 * craft.payload'],
  ],
  [
    'line/own-referred',
    'own."gyro rate"',
    ['own."gyro rate" = 8000', 'gyro.filter.1.cutoff = 0.1 * own."gyro rate"'],
    ['own."gyro rate" = 8000', 'let rate = 8000 Hz', 'gyro.filter.1.cutoff = 0.1 * rate'],
  ],
  [
    'line/set-twice',
    '"gyro rate"',
    ['[own]', '"gyro rate" = 8000', '"gyro rate" = 8000'],
    ['[own]', '"gyro rate" = 8000', '"gyro rate"."#2" = 8000'],
  ],
  ['line/circular', 'quiet', ['let quiet = 2 * quiet'], ['let low = 45 Hz', 'let quiet = 2 * low']],
  [
    'line/set-twice',
    'craft.mass',
    ['craft.mass = 200 g', 'craft.mass = 210 g'],
    ['craft.mass = 200 g', 'craft.payload = 210 g'],
  ],
  ['line/section-again', 'craft', ['[craft]', '[gyro]', '[craft]'], ['[craft]', '[gyro]']],
  [
    'line/include-missing',
    '"club-habits.craft"',
    ['include "club-habits.craft"'],
    ['# include "club-habits.craft"'],
  ],
  ['line/include-circle', '"main.craft"', ['include "main.craft"'], ['# include "main.craft"']],
  [
    'line/include-refused',
    '"/etc/club.craft"',
    ['include "/etc/club.craft"'],
    ['# include "/etc/club.craft"'],
  ],
  [
    'line/accept-unknown',
    '# accept turn/idle-slow: felt by hand on the bench',
    ['motor.idle = 5 % # accept turn/idle-slow: felt by hand on the bench'],
    ['motor.idle = 1 % # accept turn/idle-low: felt by hand on the bench'],
  ],
  [
    'line/accept-must-fix',
    '# accept turn/poles-odd: it came like this from the shop',
    ['motor.poles = 13 # accept turn/poles-odd: it came like this from the shop'],
    ['motor.idle = 1 % # accept turn/idle-low: felt by hand on the bench'],
  ],
  [
    'line/board-step',
    '988.4 us',
    ['board.profile = wren', 'receiver.low = 988.4 us'],
    ['board.profile = wren', 'receiver.low = 988 us'],
  ],
  [
    'line/board-loses',
    '1660..1700 us', // counted in steps of 50 us
    ['board.profile = wren', 'switch.locate.on = 1660..1700 us'],
    ['board.profile = wren', 'switch.locate.on = 1660..2050 us'],
  ],
  [
    'line/board-limit',
    '3 kHz',
    ['board.profile = heron', 'gyro.filter.1.cutoff = 3 kHz'],
    ['board.profile = heron', 'gyro.filter.1.cutoff = 2 kHz'],
  ],
];

/** `1e15 Hz * 1e15 * …`: a product of so many factors. */
function powers(count: number): string {
  return `1 Hz * ${Array(count).fill('1e15').join(' * ')}`;
}

/** Constants of which each is calculated from the one before. */
function chain(length: number): readonly string[] {
  const rest = Array.from({ length }, (_, index) => `let a${index + 1} = 1 * a${index}`);
  return ['let a0 = 90 Hz', ...rest];
}

const heldBelow = ['line/include-faulty', 'line/include-too-deep', 'line/too-long'];
/** Nothing that is included here comes from a disk: `test/unit/workspace/board-texts.test.ts` holds it. */
const heldElsewhere = ['line/include-too-long'];

const lists: readonly CheckCase[] = [
  ['line/constant-like-unit', 'mHz', ['let mHz = 4 kHz'], ['let quick = 4 kHz']],
  ['line/list-empty', '[]', ['find.on = []'], ['find.on = [lost-link]']],
];

export const lineCases: GroupCases = {
  group: 'line',
  cases: [...alone, ...together, ...lists],
  elsewhere: [...heldBelow, ...heldElsewhere],
};
