import type { CheckCase, GroupCases } from '../check-cases';
import { estimateIds } from '../estimate-cases';

const whole = 'craft.name = "Sandpiper"';
const heron = 'board.profile = heron';
const reference = ['power.reference-voltage = 3.3 V'];
const wren = 'board.profile = wren';
const pack = (name: string, chemistry: string, cells: number) => [
  `pack.${name}.chemistry = ${chemistry}`,
  `pack.${name}.cells = ${cells}`,
];
const lipo = (cells: number) => pack('sprint', 'lipo', cells);

const voltages: readonly CheckCase[] = [
  [
    'power/warn-below-land',
    '3.3 V',
    ['power.warn-cell = 3.3 V', 'power.land-cell = 3.4 V'],
    ['power.warn-cell = 3.5 V', 'power.land-cell = 3.4 V'],
  ],
  [
    'power/warn-close-to-land',
    '3.45 V',
    ['power.warn-cell = 3.45 V', 'power.land-cell = 3.4 V'],
    ['power.warn-cell = 3.5 V', 'power.land-cell = 3.4 V'],
  ],
  [
    'power/land-below-empty',
    '2.9 V',
    [...lipo(4), 'power.land-cell = 2.9 V'],
    [...pack('cruise', 'li-ion', 4), 'power.land-cell = 2.9 V'],
  ],
  [
    'power/land-close-to-empty',
    '3.1 V',
    [...lipo(4), 'power.land-cell = 3.1 V'],
    [...lipo(4), 'power.land-cell = 3.2 V'],
  ],
  [
    'power/warn-above-full',
    '3.7 V',
    [...pack('calm', 'lifepo4', 4), 'power.warn-cell = 3.7 V'],
    [...pack('calm', 'lifepo4', 4), 'power.warn-cell = 3.1 V'],
  ],
  [
    'power/warn-early',
    '3.8 V',
    [...lipo(4), 'power.warn-cell = 3.8 V'],
    [...lipo(4), 'power.warn-cell = 3.69 V'],
  ],
  [
    'power/warn-early', // round cells hold less at the same voltage
    '3.5 V',
    [...pack('cruise', 'li-ion', 4), 'power.warn-cell = 3.5 V'],
    [...pack('cruise', 'li-ion', 4), 'power.warn-cell = 3.4 V'],
  ],
  [
    'power/take-off-above-full',
    '4.3 V',
    [...lipo(4), 'power.take-off-cell = 4.3 V'],
    [...lipo(4), 'power.take-off-cell = 4.1 V'],
  ],
  [
    'power/take-off-below-warn',
    '3.5 V',
    ['power.take-off-cell = 3.5 V', 'power.warn-cell = 3.5 V'],
    ['power.take-off-cell = 4 V', 'power.warn-cell = 3.5 V'],
  ],
  [
    'power/full-above-chemistry',
    '4.35 V',
    [...lipo(4), 'pack.sprint.full-cell = 4.35 V'],
    [...lipo(4), 'pack.sprint.full-cell = 4.1 V'],
  ],
  ['power/unwatched', 'off', ['power.measure = off'], ['power.measure = board']],
  [
    'power/warning-without-measure',
    '3.5 V',
    ['power.measure = off', 'power.warn-cell = 3.5 V'],
    ['power.measure = board', 'power.warn-cell = 3.5 V'],
  ],
  [
    'power/report-port-missing',
    'esc',
    [whole, 'power.measure = esc'],
    [whole, heron, 'power.measure = esc', 'esc.telemetry-port = uart6'],
  ],
  [
    'power/warning-missing',
    'power',
    [whole, '[power]', 'land-cell = 3.3 V'],
    [whole, '[power]', 'land-cell = 3.3 V', 'warn-cell = 3.5 V'],
  ],
  [
    'power/landing-missing',
    '3.5 V',
    [whole, 'power.warn-cell = 3.5 V'],
    [whole, 'power.warn-cell = 3.5 V', 'power.land-cell = 3.3 V'],
  ],
];

const measuring: readonly CheckCase[] = [
  [
    // 25.2 V × 1 / 7.6 = 3.316 V of 3.3 V
    'power/divider-overflow',
    '6.6 kohm',
    [...lipo(6), ...reference, 'power.divider-upper = 6.6 kohm', 'power.divider-lower = 1 kohm'],
    [...lipo(6), ...reference, 'power.divider-upper = 6.7 kohm', 'power.divider-lower = 1 kohm'],
  ],
  [
    'power/divider-overflow',
    '9',
    [wren, ...lipo(9)], // 37.8 V, and the board reads 36.3 V
    [heron, ...lipo(8)],
  ],
  [
    // 25.2 V × 1 / 7.8 = 3.231 V, 98 % of 3.3 V
    'power/divider-close',
    '6.8 kohm',
    [...lipo(6), ...reference, 'power.divider-upper = 6.8 kohm', 'power.divider-lower = 1 kohm'],
    [...lipo(6), ...reference, 'power.divider-upper = 10 kohm', 'power.divider-lower = 1 kohm'],
  ],
  [
    'power/divider-not-the-boards',
    '20 kohm',
    [heron, 'power.divider-upper = 20 kohm', 'power.divider-lower = 1.5 kohm'],
    [heron, 'power.divider-upper = 15 kohm', 'power.divider-lower = 1.5 kohm'],
  ],
  ['power/cells-above-board', '7', [wren, ...lipo(7)], [wren, ...lipo(6)]],
  [
    // three full lipo cells have 12.6 V, four round cells warn at 12.4 V
    'power/cell-count-ambiguous',
    '3',
    [...lipo(3), ...pack('cruise', 'li-ion', 4), 'power.warn-cell = 3.1 V'],
    [...lipo(3), ...pack('cruise', 'li-ion', 4), 'power.warn-cell = 3.2 V'],
  ],
  ['power/stored-pack-miscounted', '12', [...lipo(12)], [...lipo(12), 'power.cells = 12']],
  [
    'power/cell-count-wrong',
    '4',
    [...lipo(6), 'power.cells = 4'],
    [...lipo(6), 'power.cells = 4', '[power @ sprint]', 'cells = 6'],
  ],
  [
    'power/shunt-not-on-board',
    'shunt',
    [wren, 'power.current-measure = shunt'],
    [heron, 'power.current-measure = shunt'],
  ],
  [
    'power/scale-missing',
    'shunt',
    [whole, 'power.current-measure = shunt'],
    [whole, 'power.current-measure = shunt', 'power.current-scale = 10 mV/A'],
  ],
  [
    // 3.3 V / 50 mV/A = 66 A
    'power/current-sensor-overflow',
    '50 mV/A',
    [...reference, 'power.current-scale = 50 mV/A', 'wire.battery-lead.peak-current = 70 A'],
    [...reference, 'power.current-scale = 50 mV/A', 'wire.battery-lead.peak-current = 60 A'],
  ],
  [
    'power/used-warning-uncounted',
    '70 %',
    ['power.used-warning = 70 %', 'power.current-measure = off'],
    ['power.used-warning = 70 %', 'power.current-measure = reckoned'],
  ],
  [
    'power/used-warning-into-reserve',
    '85 %',
    ['power.used-warning = 85 %', 'power.charge-reserve = 20 %'],
    ['power.used-warning = 80 %', 'power.charge-reserve = 20 %'],
  ],
  [
    'power/guard-stops-motors',
    'stop',
    ['esc.holds-back.low-pack = stop'],
    ['esc.holds-back.low-pack = slow'],
  ],
  [
    'power/alarm-unheard',
    '[overlay, transmitter]',
    [whole, 'power.alarm = [overlay, transmitter]'],
    [whole, 'power.alarm = [overlay, transmitter]', 'telemetry.link = crsf'],
  ],
];

const packs: readonly CheckCase[] = [
  [
    // 550 mAh × 90 C = 49.5 A
    'power/discharge-exceeded',
    '50 A',
    ['pack.sprint.capacity = 550 mAh', 'pack.sprint.discharge = 90 C', 'wire.battery-lead.current = 50 A'],
    ['pack.sprint.capacity = 550 mAh', 'pack.sprint.discharge = 90 C', 'wire.battery-lead.current = 49 A'],
  ],
  [
    'power/burst-exceeded',
    '100 A',
    ['pack.sprint.capacity = 550 mAh', 'pack.sprint.burst = 180 C', 'wire.battery-lead.peak-current = 100 A'],
    ['pack.sprint.capacity = 550 mAh', 'pack.sprint.burst = 180 C', 'wire.battery-lead.peak-current = 99 A'],
  ],
  [
    'power/hover-near-rating',
    '21 A',
    [
      'pack.cruise.capacity = 4 Ah',
      'pack.cruise.discharge = 10 C',
      'flight.dusk.pack = cruise',
      'flight.dusk.hover-current = 21 A',
    ],
    [
      'pack.cruise.capacity = 4 Ah',
      'pack.cruise.discharge = 10 C',
      'flight.dusk.pack = cruise',
      'flight.dusk.hover-current = 20 A',
    ],
  ],
  [
    'power/round-cell-rating',
    '60 C',
    [...pack('cruise', 'li-ion', 4), 'pack.cruise.discharge = 60 C'],
    [...pack('cruise', 'lipo', 4), 'pack.cruise.discharge = 60 C'],
  ],
  [
    'power/current-cap-above-pack',
    '50 A',
    ['pack.sprint.capacity = 550 mAh', 'pack.sprint.discharge = 90 C', 'power.current-cap = 50 A'],
    ['pack.sprint.capacity = 550 mAh', 'pack.sprint.discharge = 90 C', 'power.current-cap = 45 A'],
  ],
  [
    'power/over-mass-limit',
    '249 g',
    ['craft.mass = 160 g', 'pack.sprint.mass = 96 g', 'craft.mass-limit = 249 g'],
    ['craft.mass = 150 g', 'pack.sprint.mass = 96 g', 'craft.mass-limit = 249 g'],
  ],
  [
    'power/cells-missing',
    'pack.sprint',
    [whole, '[pack.sprint]', 'chemistry = lipo'],
    [whole, '[pack.sprint]', 'chemistry = lipo', 'cells = 4'],
  ],
  [
    'power/chemistry-missing',
    'pack.sprint',
    [whole, '[pack.sprint]', 'cells = 4'],
    [whole, '[pack.sprint]', 'cells = 4', 'chemistry = lipo'],
  ],
  [
    'power/capacity-missing',
    'pack.sprint',
    [whole, '[pack.sprint]', 'cells = 4'],
    [whole, '[pack.sprint]', 'cells = 4', 'capacity = 1500 mAh'],
  ],
  [
    // 22.2 V × 0.55 Ah = 12.2 Wh
    'power/pack-mass-implausible',
    '9.6 g',
    [...lipo(6), 'pack.sprint.capacity = 550 mAh', 'pack.sprint.mass = 9.6 g'],
    [...lipo(6), 'pack.sprint.capacity = 550 mAh', 'pack.sprint.mass = 96 g'],
  ],
  ['power/no-pack', '"Sandpiper"', [whole], [whole, ...lipo(4)]],
  [
    'power/call-below-landing',
    '3.3 V',
    ['power.land-cell = 3.3 V', 'telemetry.low-cell-call = 3.3 V'],
    ['power.land-cell = 3.3 V', 'telemetry.low-cell-call = 3.5 V'],
  ],
  [
    'power/pack-worn',
    '201',
    [...lipo(4), 'pack.sprint.cycles = 201'],
    [...lipo(4), 'pack.sprint.cycles = 200'],
  ],
  [
    'power/pack-too-cold',
    '15 degC',
    ['craft.air-temperature = 14 degC', ...lipo(4), 'pack.sprint.coldest = 15 degC'],
    ['craft.air-temperature = 15 degC', ...lipo(4), 'pack.sprint.coldest = 15 degC'],
  ],
];

const racing = [
  'pack.one.chemistry = lipo',
  'pack.one.cells = 4',
  'pack.one.capacity = 1500 mAh',
  'pack.one.discharge = 100 C',
];

const slips: readonly CheckCase[] = [
  [
    'power/land-above-nominal', // a LiFePO4 cell rests at 3.2 V
    '3.3 V',
    ['pack.one.chemistry = lifepo4', 'pack.one.cells = 4', 'power.land-cell = 3.3 V'],
    ['pack.one.chemistry = lifepo4', 'pack.one.cells = 4', 'power.land-cell = 2.8 V'],
  ],
  [
    'power/pack-outweighs-craft',
    '96 g',
    ['craft.mass = 21.2 g', 'pack.one.mass = 96 g'],
    ['craft.mass = 212 g', 'pack.one.mass = 96 g'],
  ],
  [
    'power/pack-resistance-implausible', // 4 cells of 1.5 Ah at 7 mohm Ah: 18.7 mohm
    '122 mohm',
    [...racing, 'pack.one.resistance = 122 mohm'],
    [...racing, 'pack.one.resistance = 118 mohm'],
  ],
  [
    'power/pack-resistance-implausible',
    '2.8 mohm',
    [...racing, 'pack.one.resistance = 2.8 mohm'],
    [...racing, 'pack.one.resistance = 3 mohm'],
  ],
];

export const powerCases: GroupCases = {
  group: 'power',
  cases: [...voltages, ...measuring, ...packs, ...slips],
  elsewhere: estimateIds,
};
