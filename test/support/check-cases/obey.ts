import type { CheckCase, GroupCases } from '../check-cases';
import { estimateIds } from '../estimate-cases';

const whole = 'craft.mass = 200 g';
const arm = ['switch.arm.channel = 5', 'switch.arm.on = 1750..2050 us'];
const level = (channel: number, on: string) => [
  `switch.self-level.channel = ${channel}`,
  `switch.self-level.on = ${on}`,
];
const back = (channel: number, on: string) => [
  `switch.return.channel = ${channel}`,
  `switch.return.on = ${on}`,
];

const cases: readonly CheckCase[] = [
  ['obey/order-no-permutation', 'AETT', ['receiver.order = AETT'], ['receiver.order = TAER']],
  [
    'obey/order-missing',
    'crsf',
    [whole, 'receiver.link = crsf'],
    [whole, 'receiver.link = crsf', 'receiver.order = AETR'],
  ],
  [
    'obey/arm-channel-shared',
    '5',
    [...arm, ...level(5, '950..1250 us')],
    [...arm, ...level(6, '950..1250 us')],
  ],
  [
    // joined on purpose: still told, since a hand may slip
    'obey/arm-channel-shared',
    '5',
    [...arm, ...level(5, '1500..2050 us'), 'switch.self-level.joined-with = arm'],
    [...arm, 'switch.permission.channel = 5', 'switch.permission.on = 1200..1500 us'],
  ],
  [
    'obey/arm-overlaps',
    '1500..1800 us',
    [...arm, ...level(5, '1500..1800 us')],
    [...arm, ...level(5, '1500..1750 us')],
  ],
  [
    'obey/arm-at-rest',
    '950..1250 us',
    ['switch.arm.channel = 5', 'switch.arm.on = 950..1250 us'],
    ['switch.arm.channel = 5', 'switch.arm.on = 950..1250 us', 'switch.arm.rest = 2000 us'],
  ],
  [
    'obey/arm-at-rest',
    '1750..2050 us',
    [...arm, 'switch.arm.rest = 1900 us'],
    [...arm, 'switch.arm.rest = 1000 us'],
  ],
  [
    'obey/arm-at-loss',
    '1750 us',
    [...arm, 'switch.arm.at-loss = 1750 us'],
    [...arm, 'switch.arm.at-loss = 1640 us'],
  ],
  [
    'obey/function-at-loss',
    '1800 us',
    [...back(7, '1750..2050 us'), 'switch.return.at-loss = 1800 us'],
    [...back(7, '1750..2050 us'), 'switch.return.at-loss = 1600 us'],
  ],
  [
    'obey/loss-goes-unseen',
    'last-values',
    ['signal-loss.hold = 300 ms', 'signal-loss.receiver-sends = last-values'],
    ['signal-loss.hold = 300 ms', 'signal-loss.receiver-sends = nothing'],
  ],
  [
    'obey/strong-switch-overlap',
    '1500..2050 us',
    [...level(6, '1500..2050 us'), ...back(6, '1750..2050 us')],
    [...level(6, '1500..2050 us'), ...back(6, '1750..2050 us'), 'switch.self-level.joined-with = return'],
  ],
  [
    'obey/switch-overlap',
    '1500..2050 us',
    [...level(6, '1500..2050 us'), 'switch.lights.channel = 6', 'switch.lights.on = 1750..2050 us'],
    [...level(6, '950..1250 us'), 'switch.lights.channel = 6', 'switch.lights.on = 1750..2050 us'],
  ],
  [
    'obey/switch-touches',
    '900..1500 us',
    [...level(6, '900..1500 us'), 'switch.lights.channel = 6', 'switch.lights.on = 1510..2050 us'],
    [...level(6, '900..1500 us'), 'switch.lights.channel = 6', 'switch.lights.on = 1520..2050 us'],
  ],
  [
    'obey/range-outside-ends',
    '2100..2150 us',
    level(6, '2100..2150 us'),
    [...level(6, '2100..2150 us'), 'receiver.high = 2140 us'],
  ],
  ['obey/range-barely-reached', '1990..2050 us', level(6, '1990..2050 us'), level(6, '1975..2050 us')],
  [
    'obey/range-between-positions',
    '1350..1650 us',
    [...level(6, '1350..1650 us'), 'switch.self-level.positions = 2'],
    [...level(6, '1350..1650 us'), 'switch.self-level.positions = 3'],
  ],
  [
    'obey/range-needs-slider',
    '1600..1900 us',
    level(6, '1600..1900 us'),
    [...level(6, '1600..1900 us'), 'switch.self-level.positions = 4'],
  ],
  [
    'obey/switch-always-on',
    '950..2050 us',
    [...level(6, '950..2050 us'), 'switch.self-level.positions = 3'],
    [...level(6, '1050..2050 us'), 'switch.self-level.positions = 3'],
  ],
  [
    'obey/channel-missing',
    '13',
    ['receiver.link = remote-receiver', ...level(13, '950..1250 us')],
    ['receiver.link = remote-receiver', ...level(12, '950..1250 us')],
  ],
  [
    'obey/channel-missing',
    '9',
    ['receiver.channels = 8', ...level(9, '950..1250 us')],
    ['receiver.channels = 8', ...level(8, '950..1250 us')],
  ],
  ['obey/channel-on-stick', '4', level(4, '950..1250 us'), level(5, '950..1250 us')],
  [
    'obey/channels-beyond-link',
    '13',
    ['receiver.link = remote-receiver', 'receiver.channels = 13'],
    ['receiver.link = remote-receiver', 'receiver.channels = 12'],
  ],
  [
    'obey/switch-incomplete',
    '8',
    [whole, 'switch.lights.channel = 8'],
    [whole, 'switch.lights.channel = 8', 'switch.lights.on = 1750..'], // a broken line is no missing one
  ],
  [
    'obey/strength-channel-taken',
    '6',
    ['receiver.strength-channel = 6', ...level(6, '950..1250 us')],
    ['receiver.strength-channel = 7', ...level(6, '950..1250 us')],
  ],
  [
    'obey/loss-channel-taken',
    '6',
    ['signal-loss.switch-channel = 6', 'signal-loss.switch-on = 900..1100 us', ...level(6, '950..1250 us')],
    ['signal-loss.switch-channel = 6', 'signal-loss.switch-on = 1750..2050 us', ...level(6, '950..1250 us')],
  ],
  [
    'obey/loss-switch-incomplete',
    '6',
    [whole, 'signal-loss.switch-channel = 6'],
    [whole, 'signal-loss.switch-channel = 6', 'signal-loss.switch-on = 1750..2050 us'],
  ],
  [
    'obey/function-without-sensor',
    '7',
    [whole, ...back(7, '1750..2050 us')],
    [whole, 'position.port = uart3', ...back(7, '1750..2050 us')],
  ],
  [
    'obey/function-without-sensor',
    '7',
    [whole, 'board.profile = wren', 'switch.hold-altitude.channel = 7'],
    [whole, 'board.profile = heron', 'switch.hold-altitude.channel = 7'],
  ],
  [
    'obey/loss-action-without-sensor',
    'return',
    [whole, 'signal-loss.action = return'],
    [whole, 'signal-loss.action = descend'],
  ],
  [
    'obey/joined-with-nothing',
    'lights',
    [whole, ...level(6, '950..1250 us'), 'switch.self-level.joined-with = lights'],
    [
      whole,
      ...level(6, '950..1250 us'),
      'switch.lights.channel = 8',
      'switch.self-level.joined-with = lights',
    ],
  ],
  [
    'obey/locate-not-heard',
    '[lost-link, low-pack]',
    ['switch.locate.channel = 8', 'find.on = [lost-link, low-pack]'],
    ['switch.locate.channel = 8', 'find.on = [lost-link, switch]'],
  ],
  [
    'obey/locate-nothing',
    '8',
    [whole, 'switch.locate.channel = 8'],
    [whole, 'switch.locate.channel = 8', 'find.device = buzzer'],
  ],
  [
    'obey/arm-springs-back',
    'on',
    [...arm, 'switch.arm.springs-back = on'],
    [...arm, 'switch.arm.springs-back = off'],
  ],
  [
    'obey/arm-many-positions',
    '3',
    [...arm, 'switch.arm.positions = 3'],
    [...arm, 'switch.arm.positions = 2'],
  ],
  ['obey/stop-delayed', '110 ms', ['switch.stop-motors.hold = 110 ms'], ['switch.stop-motors.hold = 100 ms']],
  [
    'obey/throttle-cap-missing',
    '8',
    [whole, 'switch.throttle-cap.channel = 8'],
    [whole, 'switch.throttle-cap.channel = 8', 'stick.throttle.cap = 60 %'],
  ],
  [
    'obey/throttle-cap-below-hover',
    '40 %',
    ['stick.throttle.hover-point = 40 %', 'switch.throttle-cap.channel = 8', 'stick.throttle.cap = 40 %'],
    ['stick.throttle.hover-point = 40 %', 'switch.throttle-cap.channel = 8', 'stick.throttle.cap = 60 %'],
  ],
  [
    'obey/held-start-tilt-missing',
    '8',
    [whole, 'switch.held-start.channel = 8'],
    [whole, 'switch.held-start.channel = 8', 'stick.held-start.tilt = 40 deg'],
  ],
  [
    'obey/hold-too-short',
    '190 ms',
    ['receiver.frame-interval = 20 ms', 'signal-loss.hold = 190 ms'],
    ['receiver.frame-interval = 20 ms', 'signal-loss.hold = 200 ms'],
  ],
  [
    // by the link's usual interval of 11 ms
    'obey/hold-too-short',
    '100 ms',
    ['receiver.link = remote-receiver', 'signal-loss.hold = 100 ms'],
    ['receiver.link = crsf', 'signal-loss.hold = 100 ms'],
  ],
  ['obey/hold-too-long', '1.1 s', ['signal-loss.hold = 1.1 s'], ['signal-loss.hold = 1 s']],
  [
    'obey/regain-too-quick',
    '90 ms',
    ['receiver.frame-interval = 10 ms', 'signal-loss.regain-hold = 90 ms'],
    ['receiver.frame-interval = 10 ms', 'signal-loss.regain-hold = 100 ms'],
  ],
  [
    // 25 bytes of 12 bits at 100 000 baud take 3 ms
    'obey/frames-too-close',
    '2.9 ms',
    ['receiver.link = sbus', 'receiver.frame-interval = 2.9 ms'],
    ['receiver.link = sbus', 'receiver.frame-interval = 3 ms'],
  ],
  [
    'obey/smoothing-slow',
    '17 ms',
    ['receiver.frame-interval = 4 ms', 'receiver.smoothing = 17 ms'],
    ['receiver.frame-interval = 4 ms', 'receiver.smoothing = 16 ms'],
  ],
  [
    'obey/ends-too-close',
    '1740 us',
    ['receiver.low = 1150 us', 'receiver.high = 1740 us'],
    ['receiver.low = 1140 us', 'receiver.high = 1740 us'],
  ],
  ['obey/centre-off-middle', '1521 us', ['receiver.centre = 1521 us'], ['receiver.centre = 1520 us']],
  [
    'obey/blend-crossed',
    '60 %',
    ['level.blend-from = 60 %', 'level.blend-to = 60 %'],
    ['level.blend-from = 60 %', 'level.blend-to = 70 %'],
  ],
  [
    'obey/throttle-reversed',
    '[yaw, throttle]',
    ['receiver.reversed = [yaw, throttle]'],
    ['receiver.reversed = [yaw]'],
  ],
];

const standing: readonly CheckCase[] = [
  [
    'obey/position-near-part',
    '1748 us',
    ['switch.arm.channel = 5', 'switch.arm.on = 1750..2050 us', 'switch.arm.rest = 1748 us'],
    ['switch.arm.channel = 5', 'switch.arm.on = 1750..2050 us', 'switch.arm.rest = 1700 us'],
  ],
  [
    'obey/position-near-part',
    '1260 us',
    ['switch.locate.channel = 6', 'switch.locate.on = 950..1250 us', 'switch.locate.at-loss = 1260 us'],
    ['switch.locate.channel = 6', 'switch.locate.on = 950..1250 us', 'switch.locate.at-loss = 1500 us'],
  ],
];

export const obeyCases: GroupCases = {
  group: 'obey',
  cases: [...cases, ...standing],
  elsewhere: estimateIds,
};
