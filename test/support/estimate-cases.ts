import type { CheckCase } from './check-cases';

/** A five-inch craft that flies well: what the checks on estimates are tried with, one line changed. */
const sound = [
  'craft.layout = quad-x',
  'craft.mass = 420 g',
  'craft.motor-spacing = 220 mm',
  'motor.kv = 1950 rpm/V',
  'motor.resistance = 60 mohm',
  'motor.idle-current = 1 A',
  'motor.current-limit = 40 A',
  'motor.response-time = 25 ms',
  'esc.signal = dshot300',
  'esc.current-limit = 45 A',
  'prop.diameter = 5 in',
  'prop.pitch = 4.3 in',
  'prop.blades = 3',
  'prop.speed-limit = 40000 rpm',
  'pack.four.chemistry = lipo',
  'pack.four.cells = 4',
  'pack.four.capacity = 1500 mAh',
  'pack.four.discharge = 100 C',
  'pack.four.mass = 180 g',
  'gyro.rate = 8 kHz',
  'gyro.filter.1.kind = butterworth',
  'gyro.filter.1.cutoff = 120 Hz',
  'control.rate = 4 kHz',
  'control.roll.proportional = 0.03 %/(deg/s)',
  'control.pitch.proportional = 0.03 %/(deg/s)',
  'control.yaw.proportional = 0.1 %/(deg/s)',
  'receiver.link = crsf',
];

/** The sound craft with lines in the place of those that set the same. */
function withLines(...lines: readonly string[]): readonly string[] {
  const pathOf = (line: string) => line.slice(0, line.indexOf(' ='));
  const changed = new Map(lines.map((line) => [pathOf(line), line]));
  const kept = sound.filter((line) => !changed.has(pathOf(line)));
  return [...kept, ...changed.values()];
}

function estimateCase(id: string, marked: string, ...lines: readonly string[]): CheckCase {
  return [id, marked, withLines(...lines), sound];
}

/** Gains of an axis with which it swings, and with which it keeps too little phase and too little gain. */
function gainCases(
  axis: string,
  swinging: string,
  littlePhase: string,
  littleGain: string,
): readonly CheckCase[] {
  const withGain = (id: string, gain: string) =>
    estimateCase(
      `tune/${axis}-${id}`,
      `${gain} %/(deg/s)`,
      `control.${axis}.proportional = ${gain} %/(deg/s)`,
    );
  return [
    withGain('swings', swinging),
    withGain('margin-small', littlePhase),
    withGain('gain-close', littleGain),
  ];
}

/** Checks on what is estimated of the flight, by the group that they stand in. */
export const estimateCases: readonly CheckCase[] = [
  estimateCase('power/hover-high', '1600 g', 'craft.mass = 1600 g'),
  estimateCase(
    'power/hover-low',
    '100 g',
    'craft.mass = 100 g',
    'pack.four.mass = 160 g',
    'motor.kv = 6000 rpm/V',
  ),
  estimateCase('power/thrust-short', '2600 g', 'craft.mass = 2600 g'),
  estimateCase(
    'power/full-current-beyond-pack',
    '420 g',
    'pack.four.discharge = 20 C',
    'pack.four.resistance = 10 mohm',
  ),
  estimateCase('power/sags-deep', '420 g', 'pack.four.resistance = 150 mohm'),
  estimateCase('power/drops-out', '12 V', 'board.drop-out = 12 V', 'pack.four.resistance = 60 mohm'),
  estimateCase(
    'power/flight-short',
    '420 g',
    'pack.four.capacity = 300 mAh',
    'pack.four.resistance = 20 mohm',
  ),
  [
    'power/wind-too-fast',
    '30 m/s',
    withLines('pack.four.cells = 3', 'craft.wind = 30 m/s'),
    withLines('pack.four.cells = 3', 'craft.wind = 20 m/s'),
  ],
  estimateCase('turn/motor-overloaded', '15 A', 'motor.current-limit = 15 A'),
  estimateCase('turn/esc-overloaded', '15 A', 'esc.current-limit = 15 A'),
  estimateCase('turn/tips-too-fast', '5 in', 'prop.tip-limit = 40 %'),
  estimateCase('turn/prop-too-fast', '15000 rpm', 'prop.speed-limit = 15000 rpm'),
  estimateCase('turn/full-throttle-too-long', '60 s', 'craft.longest-full-throttle = 60 s'),
  estimateCase(
    'turn/winding-too-hot',
    '60 degC',
    'craft.longest-full-throttle = 20 s',
    'flight.noon.motor-temperature = 60 degC',
  ),
  estimateCase(
    'turn/winding-too-hot',
    '62 degC',
    'flight.noon.motor-temperature = 62 degC',
    'motor.insulation-limit = 65 degC',
  ),
  estimateCase(
    'turn/magnets-too-hot',
    '60 degC',
    'craft.air-temperature = 40 degC',
    'flight.noon.air-temperature = 0 degC',
    'flight.noon.motor-temperature = 60 degC',
  ),
  ...gainCases('roll', '0.9', '0.06', '0.12'),
  ...gainCases('pitch', '0.9', '0.06', '0.16'),
  ...gainCases('yaw', '1.5', '0.65', '0.55'),
  estimateCase(
    'tune/gains-change-in-hover',
    '10 %',
    'control.when.high-throttle.proportional = 60 %',
    'control.when.high-throttle.from = 10 %',
  ),
  estimateCase('tune/tone-reaches-gains', 'butterworth', 'gyro.filter.1.cutoff = 400 Hz'),
  estimateCase('tune/gyro-filters-slow', 'butterworth', 'gyro.filter.1.cutoff = 45 Hz'),
  estimateCase('tune/response-time-implausible', '100 ms', 'motor.response-time = 100 ms'),
  estimateCase('power/lead-current-low', '1 A', 'wire.battery-lead.current = 1 A'),
  estimateCase('remember/minutes-implausible', '40 min', 'flight.noon.minutes = 40 min'),
  estimateCase('remember/hover-unlike-estimate', '85 %', 'flight.noon.hover-throttle = 85 %'),
  estimateCase('remember/hover-unlike-estimate', '2 A', 'flight.noon.hover-current = 2 A'),
  estimateCase('obey/stick-slow', 'crsf', 'receiver.smoothing = 40 ms'),
];

/** Ids of these checks, for the lists of their groups. */
export const estimateIds: readonly string[] = estimateCases.map(([id]) => id);
