import type { CheckCase, GroupCases } from '../check-cases';

const whole = 'craft.mass = 200 g';
const place = (element: string, at: string) => `overlay.${element}.place = ${at}`;
const channel = (band: string, number: number) => [`video.band = ${band}`, `video.channel = ${number}`];
const steps = (...powers: readonly string[]) =>
  powers.map((power, index) => `video.power-steps.${index + 1} = ${power}`);
const europe = 'rules.region = european-union';
const licensed = 'rules.licence = amateur';

const overlay: readonly CheckCase[] = [
  [
    'see/element-overlap',
    '[11, 22]',
    [place('armed-time', '[11, 20]'), place('cell-voltage', '[11, 22]')],
    [place('armed-time', '[11, 16]'), place('cell-voltage', '[11, 22]')],
  ],
  [
    'see/element-overlap', // the craft's name is as long as it is
    '[0, 1]',
    ['craft.name = "Sandmartin"', place('armed-time', '[0, 10]'), place('name', '[0, 1]')],
    ['craft.name = "Wagtail"', place('armed-time', '[0, 10]'), place('name', '[0, 1]')],
  ],
  [
    'see/element-overlap', // what is never shown together may share its cells
    '[9, 8]',
    [place('altitude', '[9, 8]'), place('warnings', '[9, 8]')],
    [
      place('altitude', '[9, 8]'),
      place('warnings', '[9, 8]'),
      'overlay.altitude.shown-in = [in-flight]',
      'overlay.warnings.shown-in = [on-the-ground]',
    ],
  ],
  [
    'see/off-grid',
    '[13, 2]',
    ['video.standard = ntsc', place('armed-time', '[13, 2]')],
    ['video.standard = pal', place('armed-time', '[13, 2]')],
  ],
  [
    'see/off-grid',
    '[2, 30]',
    ['video.standard = pal', place('home-direction', '[2, 30]')],
    ['video.standard = pal', place('home-direction', '[2, 29]')],
  ],
  [
    'see/text-past-edge',
    '[2, 25]',
    ['video.standard = pal', place('armed-time', '[2, 25]')],
    ['video.standard = pal', place('armed-time', '[2, 24]')],
  ],
  [
    'see/cell-voltage-missing',
    'craft',
    ['[craft]', 'mass = 200 g', 'payload = 10 g', '[overlay.name]', 'place = [0, 1]'],
    [whole, place('cell-voltage', '[11, 22]')],
  ],
  [
    'see/armed-time-missing',
    'craft',
    ['[craft]', 'mass = 200 g', '[overlay.cell-voltage]', 'place = [11, 22]'],
    [whole, place('armed-time', '[0, 22]')],
  ],
  [
    'see/hidden-in-flight',
    '[on-the-ground]',
    ['overlay.cell-voltage.shown-in = [on-the-ground]'],
    ['overlay.cell-voltage.shown-in = [on-the-ground, in-flight]'],
  ],
  [
    'see/element-without-source',
    '[1, 14]',
    [whole, place('home-direction', '[1, 14]')],
    [whole, 'position.port = uart4', place('home-direction', '[1, 14]')],
  ],
  [
    'see/element-without-source',
    '[2, 2]',
    [whole, 'board.profile = wren', place('used-charge', '[2, 2]')],
    [whole, 'board.profile = heron', place('used-charge', '[2, 2]')],
  ],
  [
    'see/standard-missing',
    '25 mW',
    [whole, 'video.power = 25 mW'],
    [whole, 'video.standard = pal', 'video.power = 25 mW'],
  ],
];

const channels: readonly CheckCase[] = [
  ['see/no-such-channel', '5', channel('sender', 5), channel('sender', 4)],
  ['see/channel-incomplete', 'r', [whole, 'video.band = r'], [whole, ...channel('r', 4)]],
  [
    'see/frequency-disagrees',
    '5800 MHz',
    [...channel('r', 4), 'video.frequency = 5800 MHz'],
    [...channel('r', 4), 'video.frequency = 5769 MHz'],
  ],
  ['see/outside-band', '1', [europe, ...channel('r', 1)], [europe, licensed, ...channel('f', 1)]],
  ['see/outside-band', '8', [europe, licensed, ...channel('e', 8)], [europe, licensed, ...channel('r', 2)]],
  // 5725 MHz with 9 MHz on either side reaches below 5725; 5733 does so too, and 5752 does not
  ['see/band-edge', '8', [europe, ...channel('a', 8)], [europe, ...channel('a', 7)]],
  ['see/band-edge', '1', [europe, ...channel('b', 1)], [europe, ...channel('b', 2)]],
  [
    'see/outside-common-band',
    '1',
    ['rules.region = elsewhere', ...channel('r', 1)],
    ['rules.region = elsewhere', ...channel('r', 4)],
  ],
  [
    'see/unsure-permit', // 5800 MHz, in the middle of what may be a gap
    '4',
    ['rules.region = australia', ...channel('f', 4)],
    ['rules.region = australia', ...channel('f', 7)],
  ],
  [
    'see/unsure-permit',
    '915 MHz',
    ['rules.region = canada', 'video.frequency = 915 MHz'],
    ['rules.region = united-states', 'video.frequency = 915 MHz'],
  ],
  [
    'see/plan-not-known',
    'r',
    ['video.plans = [a, b, f]', 'video.band = r'],
    ['video.plans = [a, b, f, r]', 'video.band = r'],
  ],
  [
    'see/control-band-shared',
    '2440 MHz',
    ['video.frequency = 2432 MHz', 'receiver.radio-frequency = 2440 MHz'],
    ['video.frequency = 5800 MHz', 'receiver.radio-frequency = 2440 MHz'],
  ],
];

const power: readonly CheckCase[] = [
  [
    'see/power-above-limit',
    '200 mW',
    [europe, ...channel('f', 4), 'video.power = 200 mW'],
    [europe, ...channel('f', 4), 'video.power = 25 mW'],
  ],
  [
    'see/power-above-limit', // 50 mV/m at 3 m are 0.75 mW
    '25 mW',
    ['rules.region = united-states', ...channel('f', 4), 'video.power = 25 mW'],
    ['rules.region = united-states', licensed, ...channel('f', 4), 'video.power = 25 mW'],
  ],
  [
    'see/power-above-listed',
    '200 mW',
    [europe, licensed, ...channel('f', 4), 'video.power = 200 mW'],
    [europe, licensed, ...channel('f', 4), 'video.power = 14 dBm'],
  ],
  [
    'see/power-above-listed',
    '200 mW',
    ['rules.region = elsewhere', ...channel('f', 4), 'video.power = 200 mW'],
    ['rules.region = elsewhere', ...channel('f', 4), 'video.power = 25 mW'],
  ],
  [
    'see/radiated-above-limit',
    '25 mW',
    [europe, ...channel('f', 4), 'video.antenna-gain = 5 dBi', 'video.power = 25 mW'],
    [europe, ...channel('f', 4), 'video.antenna-gain = 5 dBi', 'video.power = 8 mW'],
  ],
  [
    'see/radiated-above-limit-assumed', // a half-wave dipole makes 41 mW of 25
    '25 mW',
    [europe, ...channel('f', 4), 'video.power = 25 mW'],
    [europe, ...channel('f', 4), 'video.power = 15 mW'],
  ],
  [
    'see/radiated-above-limit-assumed',
    '25 mW',
    [europe, ...channel('f', 4), 'video.power = 25 mW'],
    [europe, ...channel('f', 4), 'video.antenna-gain = 0 dBi', 'video.power = 25 mW'],
  ],
  [
    'see/above-club-limit',
    '200 mW',
    ['rules.club-power-limit = 25 mW', 'video.power = 200 mW'],
    ['rules.club-power-limit = 200 mW', 'video.power = 200 mW'],
  ],
  [
    'see/power-higher-on-ground',
    '25 mW',
    ['video.power = 10 mW', 'video.waiting-power = 25 mW'],
    ['video.power = 25 mW', 'video.waiting-power = 25 mW'],
  ],
  [
    'see/power-between-steps',
    '150 mW',
    [...steps('20 mW', '100 mW', '320 mW'), 'video.power = 150 mW'],
    [...steps('20 mW', '100 mW', '320 mW'), 'video.power = 20 dBm'],
  ],
  [
    'see/power-between-steps', // below the lowest there is only that
    '5 mW',
    [...steps('20 mW', '100 mW'), 'video.waiting-power = 5 mW'],
    [...steps('20 mW', '100 mW'), 'video.waiting-power = 0 mW'],
  ],
  ['see/power-steps-fall', '20 mW', steps('100 mW', '20 mW'), steps('13 dBm', '20 dBm')],
  ['see/power-steps-fall', '20 mW', steps('20 mW', '20 mW'), steps('20 mW', '21 mW')],
  [
    'see/power-while-locked',
    '100 mW',
    [...steps('20 mW', '100 mW'), 'video.locked = on', 'video.power = 100 mW'],
    [...steps('20 mW', '100 mW'), 'video.locked = off', 'video.power = 100 mW'],
  ],
  [
    'see/power-while-locked', // a step that sends nothing is none to be locked at
    '100 mW',
    [...steps('0 mW', '20 mW', '100 mW'), 'video.locked = on', 'video.power = 100 mW'],
    [...steps('0 mW', '20 mW', '100 mW'), 'video.locked = on', 'video.power = 20 mW'],
  ],
  [
    'see/locked-step-unknown',
    'on',
    ['video.power = 100 mW', 'video.locked = on'],
    [...steps('100 mW'), 'video.power = 100 mW', 'video.locked = on'],
  ],
  ['see/region-missing', '25 mW', [whole, 'video.power = 25 mW'], [whole, europe, 'video.power = 25 mW']],
];

const neighbours: readonly CheckCase[] = [
  [
    'see/control-port-shared',
    'uart2',
    ['board.profile = heron', 'receiver.port = uart2', 'video.control-port = uart2'],
    ['board.profile = heron', 'receiver.port = uart2', 'video.control-port = uart3'],
  ],
  [
    'see/control-port-missing',
    'half-duplex',
    [whole, 'video.control = half-duplex'],
    [whole, 'video.control-port = uart3', 'video.control = half-duplex'],
  ],
  [
    'see/control-port-unused',
    'uart3',
    ['video.control = button', 'video.control-port = uart3'],
    ['video.control = half-duplex', 'video.control-port = uart3'],
  ],
  [
    'see/channel-overlaps',
    '2',
    ['radio-club.other.maren.frequency = 5745 MHz', ...channel('f', 2)],
    ['radio-club.other.maren.frequency = 5742 MHz', ...channel('f', 2)],
  ],
  [
    'see/sound-beside-neighbour',
    'on',
    ['radio-club.other.maren.frequency = 5740 MHz', ...channel('f', 2), 'video.sound = on'],
    ['radio-club.other.maren.frequency = 5739 MHz', ...channel('f', 2), 'video.sound = on'],
  ],
  [
    'see/same-sense',
    'right-circular',
    [
      'radio-club.other.maren.frequency = 5785 MHz',
      'radio-club.other.maren.antenna-polarisation = right-circular',
      ...channel('f', 2),
      'video.antenna-polarisation = right-circular',
    ],
    [
      'radio-club.other.maren.frequency = 5785 MHz',
      'radio-club.other.maren.antenna-polarisation = left-circular',
      ...channel('f', 2),
      'video.antenna-polarisation = right-circular',
    ],
  ],
  [
    'see/linear-in-banks',
    'linear',
    ['craft.purpose = race', 'video.antenna-polarisation = linear'],
    ['craft.purpose = cruise', 'video.antenna-polarisation = linear'],
  ],
  [
    'see/closer-than-agreed',
    '2',
    ['radio-club.spacing = 40 MHz', 'radio-club.other.maren.frequency = 5730 MHz', ...channel('f', 2)],
    ['radio-club.spacing = 30 MHz', 'radio-club.other.maren.frequency = 5730 MHz', ...channel('f', 2)],
  ],
  [
    'see/third-order', // 2 x 5769 - 5806 = 5732
    '3',
    [
      'radio-club.other.maren.frequency = 5769 MHz',
      'radio-club.other.oke.frequency = 5806 MHz',
      ...channel('r', 3),
    ],
    [
      'radio-club.other.maren.frequency = 5769 MHz',
      'radio-club.other.oke.frequency = 5860 MHz',
      ...channel('r', 3),
    ],
  ],
];

const others: readonly CheckCase[] = [
  [
    'see/pilot-without-frequency',
    '25 mW',
    ['radio-club.other.otto.power = 25 mW'],
    ['radio-club.other.otto.power = 25 mW', 'radio-club.other.otto.frequency = 5760 MHz'],
  ],
];

export const seeCases: GroupCases = {
  group: 'see',
  cases: [...overlay, ...channels, ...power, ...neighbours, ...others],
  elsewhere: [],
};
