import type { CheckCase, GroupCases } from '../check-cases';

const heron = 'board.profile = heron';
const wren = 'board.profile = wren';
const whole = 'craft.name = "Sandpiper"';

const ports: readonly CheckCase[] = [
  [
    'wire/port-shared',
    'uart2',
    [heron, 'receiver.link = sbus', 'receiver.port = uart2', 'position.port = uart2'],
    [heron, 'receiver.link = sbus', 'receiver.port = uart2', 'position.port = uart3'],
  ],
  [
    'wire/control-and-telemetry-share',
    'uart2',
    [
      heron,
      'receiver.link = sbus',
      'receiver.port = uart2',
      'telemetry.link = single-wire',
      'telemetry.port = uart2',
    ],
    [
      heron,
      'receiver.link = crsf',
      'receiver.port = uart2',
      'telemetry.link = crsf',
      'telemetry.port = uart2',
    ],
  ],
  [
    'wire/receiver-two-ports',
    'uart3',
    [
      heron,
      'receiver.link = crsf',
      'receiver.port = uart2',
      'telemetry.link = crsf',
      'telemetry.port = uart3',
    ],
    [
      heron,
      'receiver.link = sbus',
      'receiver.port = uart2',
      'telemetry.link = single-wire',
      'telemetry.port = uart3',
    ],
  ],
  [
    'wire/port-changes-with-pack',
    'uart3',
    [heron, 'receiver.port = uart2', 'pack.long.cells = 4', '[receiver @ long]', 'port = uart3'],
    [heron, 'receiver.port = uart2', 'pack.long.cells = 4', '[receiver @ long]', 'port = uart2'],
  ],
  [
    'wire/port-inversion',
    'uart4',
    [wren, 'receiver.link = sbus', 'receiver.port = uart4'],
    [wren, 'receiver.link = sbus', 'receiver.port = uart3'],
  ],
  [
    'wire/port-shared-with-board',
    'uart1',
    [heron, 'receiver.port = uart1'],
    [heron, 'receiver.port = uart2'],
  ],
  [
    'wire/polarity-unusual',
    'off',
    ['receiver.link = sbus', 'receiver.inverted = off'],
    ['receiver.link = sbus', 'receiver.inverted = on'],
  ],
  [
    'wire/position-line-full',
    '9600 baud',
    ['position.protocol = nmea', 'position.speed = 9600 baud', 'position.interval = 80 ms'],
    ['position.protocol = nmea', 'position.speed = 9600 baud', 'position.interval = 90 ms'],
  ],
  [
    'wire/board-missing',
    'craft',
    ['[craft]', 'name = "Sandpiper"'],
    ['[craft]', 'name = "Sandpiper"', '[board]', 'profile = wren'],
  ],
  [
    'wire/receiver-missing',
    'craft',
    ['[craft]', 'name = "Sandpiper"'],
    ['[craft]', 'name = "Sandpiper"', '[receiver]', 'link = sbus'],
  ],
  [
    'wire/receiver-port-missing',
    'sbus',
    [whole, 'receiver.link = sbus'],
    [whole, heron, 'receiver.link = sbus', 'receiver.port = uart2'],
  ],
  [
    'wire/telemetry-port-missing',
    'single-wire',
    [whole, 'telemetry.link = single-wire'],
    [whole, 'receiver.link = crsf', 'telemetry.link = crsf'],
  ],
  [
    'wire/position-port-missing',
    'nmea',
    [whole, 'position.protocol = nmea'],
    [whole, heron, 'position.protocol = nmea', 'position.port = uart4'],
  ],
  ['wire/too-few-motor-outputs', 'hex-x', [wren, 'craft.layout = hex-x'], [heron, 'craft.layout = hex-x']],
  ['wire/sensor-not-on-board', 'on', [wren, 'board.barometer = on'], [heron, 'board.barometer = on']],
];

const supplies: readonly CheckCase[] = [
  [
    'wire/receiver-supply',
    '5 V',
    ['receiver.link = remote-receiver', 'receiver.supply = 5 V'],
    ['receiver.link = remote-receiver', 'receiver.supply = 3.3 V'],
  ],
  [
    'wire/receiver-supply', // its maker decides
    '5 V',
    ['receiver.link = remote-receiver', 'receiver.supply = 5 V'],
    ['receiver.link = remote-receiver', 'wire.receiver.accepts = 3.3..8 V', 'receiver.supply = 5 V'],
  ],
  [
    'wire/receiver-supply', // straight from the pack
    'pack',
    [
      'pack.sprint.chemistry = lipo',
      'pack.sprint.cells = 2',
      'receiver.link = remote-receiver',
      'wire.receiver.supply = pack',
    ],
    ['receiver.link = remote-receiver', 'wire.receiver.supply = 3.3 V'],
  ],
  [
    'wire/receiver-supply-unusual',
    '9 V',
    ['receiver.link = crsf', 'receiver.supply = 9 V'],
    ['receiver.link = crsf', 'receiver.supply = 5 V'],
  ],
  [
    'wire/receiver-supply-unusual',
    '3.3 V',
    ['receiver.link = crsf', 'receiver.supply = 3.3 V'],
    ['receiver.link = crsf', 'wire.receiver.accepts = 3.3..5.5 V', 'receiver.supply = 3.3 V'],
  ],
  [
    'wire/outside-accepted', // what its maker prints, against the supply that the receiver's own section gives
    '5 V',
    ['receiver.link = crsf', 'wire.receiver.accepts = 3.3..3.6 V', 'receiver.supply = 5 V'],
    ['receiver.link = crsf', 'wire.receiver.accepts = 3.3..5.5 V', 'receiver.supply = 5 V'],
  ],
  [
    'wire/position-supply',
    '9 V',
    ['position.protocol = nmea', 'position.supply = 9 V'],
    ['position.protocol = nmea', 'position.supply = 5 V'],
  ],
  [
    'wire/supplies-disagree',
    '3.3 V',
    ['receiver.supply = 5 V', 'wire.receiver.supply = 3.3 V'],
    ['receiver.supply = 5 V', 'wire.receiver.supply = 5 V'],
  ],
  ['wire/no-such-rail', '9 V', [wren, 'wire.camera.supply = 9 V'], [heron, 'wire.camera.supply = 9 V']],
  [
    'wire/outside-accepted',
    'pack',
    [
      'pack.sprint.chemistry = lipo',
      'pack.sprint.cells = 6',
      'wire.transmitter.supply = pack',
      'wire.transmitter.accepts = 7..25 V',
    ],
    [
      'pack.sprint.chemistry = lipo',
      'pack.sprint.cells = 6',
      'wire.transmitter.supply = pack',
      'wire.transmitter.accepts = 7..26 V',
    ],
  ],
  [
    'wire/rail-overload',
    '1.6 A',
    [
      wren,
      'wire.lights.supply = 5 V',
      'wire.lights.current = 1.6 A',
      'receiver.supply = 5 V',
      'wire.receiver.current = 450 mA',
    ],
    [
      wren,
      'wire.lights.supply = 5 V',
      'wire.lights.current = 1.6 A',
      'receiver.supply = 5 V',
      'wire.receiver.current = 400 mA',
    ],
  ],
  [
    'wire/rail-margin',
    '1.5 A',
    [wren, 'wire.lights.supply = 5 V', 'wire.lights.current = 1.5 A'],
    [wren, 'wire.lights.supply = 5 V', 'wire.lights.current = 1.4 A'],
  ],
  [
    'wire/rail-peak',
    '2.1 A',
    [wren, 'wire.lights.supply = 5 V', 'wire.lights.current = 1 A', 'wire.lights.peak-current = 2.1 A'],
    [wren, 'wire.lights.supply = 5 V', 'wire.lights.current = 1 A', 'wire.lights.peak-current = 2 A'],
  ],
  [
    'wire/load-unknown',
    '5 V',
    [whole, wren, 'wire.lights.supply = 5 V', 'wire.buzzer.supply = 5 V', 'wire.buzzer.current = 30 mA'],
    [
      whole,
      wren,
      'wire.lights.supply = 5 V',
      'wire.lights.current = 1 A',
      'wire.buzzer.supply = 5 V',
      'wire.buzzer.current = 30 mA',
    ],
  ],
  [
    'wire/limit-above-board',
    '2.5 A',
    [wren, 'board.supply.five-volt-limit = 2.5 A'],
    [wren, 'board.supply.five-volt-limit = 1.5 A'],
  ],
];

const leads: readonly CheckCase[] = [
  [
    'wire/lead-too-thin',
    '14',
    ['wire.battery-lead.gauge = 14', 'wire.battery-lead.current = 51 A'],
    ['wire.battery-lead.gauge = 14', 'wire.battery-lead.current = 50 A'],
  ],
  [
    'wire/lead-overheats',
    '20',
    ['wire.battery-lead.gauge = 20', 'wire.battery-lead.current = 30 A'],
    ['wire.battery-lead.gauge = 20', 'wire.battery-lead.current = 28 A'],
  ],
  [
    'wire/lead-drop',
    '500 mm',
    // 2 × 0.5 m × 338.58 mohm/m × 0.8 A = 0.271 V of 5 V
    [
      'wire.lights.gauge = 30',
      'wire.lights.length = 500 mm',
      'wire.lights.current = 0.8 A',
      'wire.lights.supply = 5 V',
    ],
    [
      'wire.lights.gauge = 30',
      'wire.lights.length = 450 mm',
      'wire.lights.current = 0.8 A',
      'wire.lights.supply = 5 V',
    ],
  ],
  [
    'wire/plug-too-weak',
    '30 A',
    ['wire.battery-lead.current = 31 A', 'wire.battery-lead.plug-current = 30 A'],
    ['wire.battery-lead.current = 30 A', 'wire.battery-lead.plug-current = 30 A'],
  ],
  [
    'wire/peak-below-continuous',
    '20 A',
    ['wire.battery-lead.current = 30 A', 'wire.battery-lead.peak-current = 20 A'],
    ['wire.battery-lead.current = 30 A', 'wire.battery-lead.peak-current = 60 A'],
  ],
  [
    'wire/spikes-unsmoothed',
    '160 mm',
    ['wire.battery-lead.length = 160 mm'],
    ['wire.battery-lead.length = 160 mm', 'wire.battery-lead.smoothing = 470 uF'],
  ],
];

const body: readonly CheckCase[] = [
  ['wire/mount-odd', '9 deg', ['board.mount-yaw = 9 deg'], ['board.mount-yaw = 90 deg']],
  [
    'wire/inertia-too-large', // 0.2 kg (0.165 m / 2)^2 = 1.36 g m^2
    '1.4 g*m^2',
    ['craft.mass = 200 g', 'craft.motor-spacing = 165 mm', 'craft.inertia.roll = 1.4 g*m^2'],
    ['craft.mass = 200 g', 'craft.motor-spacing = 165 mm', 'craft.inertia.roll = 1.3 g*m^2'],
  ],
  [
    'wire/inertia-too-small', // a tenth of 1.36 g m^2, and half of that about a line between the arms
    '0.06 g*m^2',
    ['craft.mass = 200 g', 'craft.motor-spacing = 165 mm', 'craft.inertia.pitch = 0.06 g*m^2'],
    ['craft.mass = 200 g', 'craft.motor-spacing = 165 mm', 'craft.inertia.pitch = 0.07 g*m^2'],
  ],
  [
    'wire/inertia-too-small',
    '0.13 g*m^2',
    ['craft.mass = 200 g', 'craft.motor-spacing = 165 mm', 'craft.inertia.yaw = 0.13 g*m^2'],
    ['craft.mass = 200 g', 'craft.motor-spacing = 165 mm', 'craft.inertia.yaw = 0.14 g*m^2'],
  ],
  [
    'wire/drag-area-implausible', // 0.3 m squared is 900 cm^2
    '910 cm^2',
    ['craft.motor-spacing = 300 mm', 'craft.drag-area = 910 cm^2'],
    ['craft.motor-spacing = 300 mm', 'craft.drag-area = 890 cm^2'],
  ],
  [
    'wire/position-speed-odd',
    '11520 baud',
    ['position.speed = 11520 baud'],
    ['position.speed = 115200 baud'],
  ],
  ['wire/position-speed-odd', '3840 baud', ['position.speed = 3840 baud'], ['position.speed = 250000 baud']],
  [
    'wire/transmitter-current-low',
    '10 mA', // 90 mW for 25 mW
    ['video.power = 25 mW', 'wire.transmitter.supply = 9 V', 'wire.transmitter.current = 10 mA'],
    ['video.power = 25 mW', 'wire.transmitter.supply = 9 V', 'wire.transmitter.current = 12 mA'],
  ],
  [
    'wire/inertia-yaw-too-large',
    '1.2 g*m^2',
    ['craft.inertia.roll = 0.5 g*m^2', 'craft.inertia.pitch = 0.6 g*m^2', 'craft.inertia.yaw = 1.2 g*m^2'],
    ['craft.inertia.roll = 0.5 g*m^2', 'craft.inertia.pitch = 0.6 g*m^2', 'craft.inertia.yaw = 1 g*m^2'],
  ],
  [
    'wire/inertia-yaw-small',
    '0.4 g*m^2',
    ['craft.inertia.roll = 0.5 g*m^2', 'craft.inertia.yaw = 0.4 g*m^2'],
    ['craft.inertia.roll = 0.5 g*m^2', 'craft.inertia.yaw = 0.9 g*m^2'],
  ],
];

/** Held on boards that do not ship. */
const onOtherBoards = [
  'wire/port-direction',
  'wire/clock-error',
  'wire/board-undescribed',
  'wire/board-faulty',
];

export const wireCases: GroupCases = {
  group: 'wire',
  cases: [...ports, ...supplies, ...leads, ...body],
  elsewhere: onOtherBoards,
};
