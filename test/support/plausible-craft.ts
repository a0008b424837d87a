import fc from 'fast-check';

/** A craft as somebody might build it; SI but for names. */
export interface PlausibleCraft {
  /** m */
  readonly propeller: number;
  readonly thrustCoefficient: number;
  readonly powerCoefficient: number;
  readonly spacing: number;
  /** kg, without and with the pack alone. */
  readonly mass: number;
  readonly packMass: number;
  /** rad/s a volt, ohm, A */
  readonly speedConstant: number;
  readonly resistance: number;
  readonly idleCurrent: number;
  /** s, in the hover. */
  readonly lag: number;
  readonly cells: number;
  readonly packResistance: number;
  /** kg m² */
  readonly inertia: { readonly roll: number; readonly pitch: number; readonly yaw: number };
  /** Command a rad/s of roll, and what the others are of it: 1/s and s. */
  readonly gain: number;
  readonly integralRate: number;
  readonly derivativeTime: number;
  /** Share of roll's gain. */
  readonly yawGain: number;
  /** Hz */
  readonly gyroRate: number;
  readonly controlRate: number;
  readonly gyroCutoff: number;
  readonly derivativeCutoff: number;
}

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Air at sea level, and the voltage of a full cell and of one due to land. */
export const plain = { density: 1.225, gravity: 9.806_65, full: 4.2, landing: 3.4 };

/** From two and a half to ten inches: mass by the load of the discs, winding by the tips' speed, gains by the crossover. */
export const plausibleCraft: fc.Arbitrary<PlausibleCraft> = fc
  .record({
    inches: between(2.5, 10),
    load: between(45, 110),
    tips: between(130, 200),
    loss: between(0.4, 1),
    cells: fc.integer({ min: 3, max: 6 }),
    thrustCoefficient: between(0.1, 0.16),
    efficiency: between(0.45, 0.62),
    reach: between(1.7, 2.2),
    compact: between(0.2, 0.3),
    lagShare: between(0.7, 1.5),
    crossover: between(-0.4, 1.2).map((exponent) => 10 ** exponent),
    integralRate: fc.oneof(fc.constant(0), between(0.5, 8)),
    derivativeTime: fc.oneof(fc.constant(0), between(0.001, 0.02)),
    yawGain: between(0.7, 3),
    controlRate: fc.constantFrom(1000, 1600, 2000),
    gyroTimes: fc.constantFrom(1, 2, 4),
    gyroCutoff: between(80, 250),
    derivativeCutoff: between(60, 150),
  })
  .map((made) => {
    const propeller = made.inches * 0.0254;
    const disc = (Math.PI * propeller ** 2) / 4;
    const whole = (4 * disc * made.load) / plain.gravity;
    const spacing = made.reach * propeller;
    const volts = made.cells * plain.full;
    const speedConstant = (2 * made.tips) / propeller / volts;
    const induced = (disc * made.load) ** 1.5 / Math.sqrt(2 * plain.density * disc);
    const inertia = whole * (made.compact * spacing) ** 2;
    const lag = (made.lagShare * 0.025 * made.inches) / 5;
    const resistance = (made.loss * 0.02 * volts ** 2) / induced / 10;
    const power = (made.thrustCoefficient ** 1.5 * Math.sqrt(2 / Math.PI)) / made.efficiency;
    const speed =
      2 *
      Math.PI *
      Math.sqrt((whole * plain.gravity) / 4 / (made.thrustCoefficient * plain.density * propeller ** 4));
    const drag = (power * plain.density * propeller ** 5) / (2 * Math.PI) ** 3;
    const faster =
      volts / (speedConstant * resistance) / (1 / (speedConstant ** 2 * resistance) + 2 * drag * speed);
    const authority = (((2 * whole * plain.gravity) / speed) * faster * spacing * Math.SQRT1_2) / 2 / inertia;
    const gain = Math.min(largestGain, made.crossover / lag / authority);
    const yawGain = Math.min(made.yawGain, largestGain / gain);
    const largestTime = largestDerivative / gain / Math.max(1, yawGain);
    return {
      propeller,
      thrustCoefficient: made.thrustCoefficient,
      // Figure of merit: thrust^1.5 sqrt(2/π) over power.
      powerCoefficient: power,
      spacing,
      mass: 0.7 * whole,
      packMass: 0.3 * whole,
      speedConstant,
      resistance,
      idleCurrent: (0.15 * induced) / volts,
      lag,
      cells: made.cells,
      packResistance: (0.01 * volts ** 2) / (40 * induced),
      inertia: { roll: inertia, pitch: 1.3 * inertia, yaw: 1.9 * inertia },
      gain,
      integralRate: made.integralRate,
      derivativeTime: Math.min((made.derivativeTime * made.inches) / 5, largestTime),
      yawGain,
      gyroRate: made.controlRate * made.gyroTimes,
      controlRate: made.controlRate,
      gyroCutoff: made.gyroCutoff,
      derivativeCutoff: made.derivativeCutoff,
    };
  });

/** Command a rad/s: a little less than a script can say. */
const largestGain = 1.6;
/** Command a rad/s²: the same. */
const largestDerivative = 0.028;

/** The same craft with ten times the gains, as far as a script can say them. */
export function louder(craft: PlausibleCraft): PlausibleCraft {
  const gain = Math.min(10 * craft.gain, largestGain);
  return { ...craft, gain, derivativeTime: Math.min(craft.derivativeTime, largestDerivative / gain) };
}

const degree = Math.PI / 180;

/** The script of such a craft. `gain` is its command a rad/s. */
export function scriptOf(craft: PlausibleCraft, ...further: readonly string[]): string {
  const { gain } = craft;
  const gains = (axis: string, share: number) => [
    `control.${axis}.proportional = ${100 * share * gain * degree} %/(deg/s)`,
    `control.${axis}.integral = ${100 * share * gain * craft.integralRate * degree} %/deg`,
    `control.${axis}.derivative = ${100 * share * gain * craft.derivativeTime * degree} %/(deg/s^2)`,
  ];
  return [
    'craft.layout = quad-x',
    `craft.mass = ${1000 * craft.mass} g`,
    `craft.motor-spacing = ${1000 * craft.spacing} mm`,
    ...(['roll', 'pitch', 'yaw'] as const).map(
      (axis) => `craft.inertia.${axis} = ${1000 * craft.inertia[axis]} g*m^2`,
    ),
    `motor.kv = ${(craft.speedConstant * 60) / (2 * Math.PI)} rpm/V`,
    `motor.resistance = ${1000 * craft.resistance} mohm`,
    `motor.idle-current = ${craft.idleCurrent} A`,
    `motor.response-time = ${1000 * craft.lag} ms`,
    'motor.poles = 14',
    'esc.signal = dshot300',
    `prop.diameter = ${1000 * craft.propeller} mm`,
    `prop.pitch = ${600 * craft.propeller} mm`,
    'prop.blades = 2',
    `prop.thrust-coefficient = ${100 * craft.thrustCoefficient} %`,
    `prop.power-coefficient = ${100 * craft.powerCoefficient} %`,
    'pack.one.chemistry = lipo',
    `pack.one.cells = ${craft.cells}`,
    'pack.one.capacity = 2000 mAh',
    `pack.one.mass = ${1000 * craft.packMass} g`,
    `pack.one.resistance = ${1000 * craft.packResistance} mohm`,
    'power.standing-current = 0 A',
    `power.land-cell = ${plain.landing} V`,
    `gyro.rate = ${craft.gyroRate} Hz`,
    'gyro.filter.1.kind = butterworth',
    `gyro.filter.1.cutoff = ${craft.gyroCutoff} Hz`,
    'derivative.filter.1.kind = butterworth',
    `derivative.filter.1.cutoff = ${craft.derivativeCutoff} Hz`,
    'derivative.limit = 100 %',
    'control.integral-limit = 100 %',
    `control.rate = ${craft.controlRate} Hz`,
    ...gains('roll', 1),
    ...gains('pitch', 1),
    ...gains('yaw', craft.yawGain),
    'stick.roll.curve = 0 % -> 0 deg/s, 100 % -> 400 deg/s',
    'stick.pitch.curve = 0 % -> 0 deg/s, 100 % -> 400 deg/s',
    'stick.yaw.curve = 0 % -> 0 deg/s, 100 % -> 400 deg/s',
    ...further,
  ].join('\n');
}
