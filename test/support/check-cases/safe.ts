import type { CheckCase, GroupCases } from '../check-cases';

const whole = 'craft.name = "Sandpiper"';
const heron = 'board.profile = heron';
const header = ['[craft]', 'name = "Sandpiper"'];

const arming: readonly CheckCase[] = [
  ['safe/no-arm-switch', 'craft', header, [...header, '[switch.arm]', 'channel = 5']],
  ['safe/arms-at-any-tilt', '180 deg', ['arming.tilt-limit = 180 deg'], ['arming.tilt-limit = 60 deg']],
  ['safe/arms-on-its-side', '80 deg', ['arming.tilt-limit = 80 deg'], ['arming.tilt-limit = 180 deg']],
  ['safe/tilt-limit-missing', 'craft', header, [...header, '[arming]', 'tilt-limit = 40 deg']],
  [
    'safe/throttle-limit-over-idle',
    '10 %',
    ['arming.throttle-limit = 10 %', 'motor.idle = 4.5 %'],
    ['arming.throttle-limit = 5 %', 'motor.idle = 4.5 %'],
  ],
  [
    'safe/arming-asks-too-little',
    '[receiver-alive, gyro-still]',
    ['arming.needs = [receiver-alive, gyro-still]'],
    ['arming.needs = [receiver-alive, gyro-still, switch-seen-off]'],
  ],
  [
    'safe/arming-needs-missing',
    'arming',
    [whole, '[arming]', 'tilt-limit = 40 deg'],
    [whole, '[arming]', 'needs = [receiver-alive, gyro-still, switch-seen-off]'],
  ],
  [
    'safe/fix-needed-without-sensor',
    '[receiver-alive, gyro-still, switch-seen-off, position-fix]',
    [whole, 'arming.needs = [receiver-alive, gyro-still, switch-seen-off, position-fix]'],
    [
      whole,
      heron,
      'arming.needs = [receiver-alive, gyro-still, switch-seen-off, position-fix]',
      'position.port = uart4',
    ],
  ],
  [
    'safe/pack-needed-unmeasured',
    '[pack-above-warning]',
    ['arming.needs = [pack-above-warning]', 'power.measure = off'],
    ['arming.needs = [pack-above-warning]', 'power.measure = board'],
  ],
  [
    'safe/pack-needed-without-warning',
    '[pack-above-warning]',
    [whole, 'arming.needs = [pack-above-warning]'],
    [whole, 'arming.needs = [pack-above-warning]', 'power.warn-cell = 3.5 V'],
  ],
  ['safe/arms-at-computer', 'on', ['arming.at-the-computer = on'], ['arming.at-the-computer = off']],
  [
    'safe/permission-on-arm-channel',
    '5',
    ['switch.arm.channel = 5', 'switch.permission.channel = 5'],
    ['switch.arm.channel = 5', 'switch.permission.channel = 6'],
  ],
  [
    'safe/looks-asleep',
    'off',
    [whole, 'arming.motors-turn = off'],
    [whole, 'arming.motors-turn = off', 'arming.disarm-when-idle = 10 s'],
  ],
];

const returning = [
  'signal-loss.action = return',
  'signal-loss.return-speed = 10 m/s',
  'position.distance-alarm = 250 m',
];

const lost: readonly CheckCase[] = [
  ['safe/no-signal-loss-action', 'craft', header, [...header, '[signal-loss]', 'action = motors-off']],
  [
    'safe/motors-off-with-throttle',
    '30 %',
    ['signal-loss.action = motors-off', 'signal-loss.throttle = 30 %', 'motor.idle = 5 %'],
    ['signal-loss.action = motors-off', 'signal-loss.throttle = 5 %', 'motor.idle = 5 %'],
  ],
  [
    'safe/motors-off-with-throttle',
    '5 %',
    ['signal-loss.action = motors-off', 'signal-loss.throttle = 5 %'],
    ['signal-loss.action = motors-off', 'signal-loss.throttle = 0 %'],
  ],
  [
    'safe/descent-falls',
    '5 %',
    ['signal-loss.action = descend', 'signal-loss.throttle = 5 %', 'motor.idle = 5 %'],
    ['signal-loss.action = descend', 'signal-loss.throttle = 20 %', 'motor.idle = 5 %'],
  ],
  [
    'safe/descent-throttle-missing',
    'descend',
    [whole, 'signal-loss.action = descend'],
    [whole, 'signal-loss.action = descend', 'signal-loss.sink-rate = 1 m/s'],
  ],
  [
    'safe/descent-climbs',
    '30 %',
    ['signal-loss.action = descend', 'signal-loss.throttle = 30 %', 'stick.throttle.hover-point = 28 %'],
    ['signal-loss.action = descend', 'signal-loss.throttle = 25 %', 'stick.throttle.hover-point = 28 %'],
  ],
  [
    'safe/descent-climbs-as-flown',
    '30 %',
    ['signal-loss.action = descend', 'signal-loss.throttle = 30 %', 'flight.dusk.hover-throttle = 27 %'],
    ['signal-loss.action = descend', 'signal-loss.throttle = 25 %', 'flight.dusk.hover-throttle = 27 %'],
  ],
  [
    'safe/loss-never-ends',
    'descend',
    [whole, 'signal-loss.action = descend'],
    [whole, 'signal-loss.action = descend', 'signal-loss.duration = 30 s'],
  ],
  [
    'safe/home-not-known',
    'return',
    [whole, 'signal-loss.action = return'],
    [whole, 'signal-loss.action = return', 'arming.needs = [position-fix]'],
  ],
  [
    'safe/home-not-known',
    '7',
    [whole, 'switch.return.channel = 7'],
    [whole, 'switch.return.channel = 7', 'arming.needs = [position-fix]'],
  ],
  [
    'safe/return-above-ceiling',
    '60 m',
    ['signal-loss.return-height = 60 m', 'craft.ceiling = 50 m'],
    ['signal-loss.return-height = 40 m', 'craft.ceiling = 50 m'],
  ],
  [
    'safe/return-above-rule',
    '110 m',
    ['signal-loss.return-height = 110 m', 'rules.height-limit = 100 m'],
    ['signal-loss.return-height = 60 m', 'rules.height-limit = 100 m'],
  ],
];

const around: readonly CheckCase[] = [
  [
    'safe/over-rule-mass',
    '249 g',
    ['craft.mass = 160 g', 'pack.sprint.mass = 96 g', 'rules.mass-limit = 249 g'],
    ['craft.mass = 150 g', 'pack.sprint.mass = 96 g', 'rules.mass-limit = 249 g'],
  ],
  ['safe/nothing-to-find-it', 'craft', header, [...header, '[find]', 'device = buzzer']],
  [
    'safe/find-never-calls',
    'buzzer',
    [whole, 'find.device = buzzer'],
    [whole, 'find.device = buzzer', 'find.on = [lost-link]'],
  ],
  [
    'safe/find-switch-missing',
    '[lost-link, switch]',
    [whole, 'find.on = [lost-link, switch]'],
    [whole, 'find.on = [lost-link, switch]', 'switch.locate.channel = 8'],
  ],
  ['safe/find-only-by-switch', '[switch]', ['find.on = [switch]'], ['find.on = [switch, lost-link]']],
  [
    'safe/locate-after-without-device',
    '20 s',
    [whole, 'recovery.locate-after = 20 s'],
    [whole, 'recovery.locate-after = 20 s', 'find.device = buzzer'],
  ],
  [
    'safe/indoor-without-guard',
    'none',
    ['craft.purpose = indoor', 'prop.guard = none'],
    ['craft.purpose = indoor', 'prop.guard = duct'],
  ],
  [
    'safe/return-slower-than-wind',
    '8 m/s',
    ['craft.wind-limit = 8 m/s', 'signal-loss.return-speed = 8 m/s'],
    ['craft.wind-limit = 8 m/s', 'signal-loss.return-speed = 9 m/s'],
  ],
  [
    'safe/return-too-short', // 10 m/s for 24 s
    '24 s',
    [...returning, 'signal-loss.duration = 24 s'],
    [...returning, 'signal-loss.duration = 25 s'],
  ],
  [
    'safe/height-alarm-late',
    '120 m',
    ['rules.height-limit = 120 m', 'position.height-alarm = 120 m'],
    ['rules.height-limit = 120 m', 'position.height-alarm = 100 m'],
  ],
  [
    'safe/distance-alarm-blind',
    '300 m',
    [whole, 'position.distance-alarm = 300 m'],
    [whole, 'position.port = uart4', 'position.distance-alarm = 300 m'],
  ],
  [
    'safe/call-after-disarm',
    '30 s',
    ['find.on = [armed-idle]', 'arming.disarm-when-idle = 30 s', 'find.idle-wait = 30 s'],
    ['find.on = [armed-idle]', 'arming.disarm-when-idle = 30 s', 'find.idle-wait = 20 s'],
  ],
];

const slips: readonly CheckCase[] = [
  [
    'safe/ceiling-above-rule',
    '120 m',
    ['rules.height-limit = 100 m', 'craft.ceiling = 120 m'],
    ['rules.height-limit = 120 m', 'craft.ceiling = 100 m'],
  ],
  [
    'safe/motors-call-silently',
    '0 %',
    ['find.device = [motors]', 'esc.beep-strength = 0 %'],
    ['find.device = [buzzer]', 'esc.beep-strength = 0 %'],
  ],
];

export const safeCases: GroupCases = {
  group: 'safe',
  cases: [...arming, ...lost, ...around, ...slips],
  elsewhere: ['safe/craft-unsaid', 'safe/read-as-part'],
};
