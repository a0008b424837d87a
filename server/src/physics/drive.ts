import { type PackLoad, packUnderLoad, voltageUnderLoad } from './discharge';
import { fallingThroughZero } from './falling-through-zero';
import { type Motor, type MotorState, settled, turning } from './motor';
import { type Propeller, propellerThrust, speedForThrust, torqueFactor } from './propeller';

/** Motors, propellers and the pack that feeds them; SI. */
export interface Drive {
  readonly motor: Motor;
  readonly propeller: Propeller;
  readonly count: number;
  /** kg/m³ */
  readonly airDensity: number;
  /** Voltage of the pack without a load, V. */
  readonly openVoltage: number;
  /** Of the pack with its leads, ohm. */
  readonly sourceResistance: number;
  /** What the electronics draw beside the motors, W. */
  readonly otherPower: number;
  /**
   * What the speed controllers lose, as a share of the pack's voltage times the motors' current: it goes with how
   * often they switch, and is the larger part of what the motors get, the less throttle they get. 0: none.
   */
  readonly controllerLoss: number;
}

/** The craft in one state: all motors turn alike. */
export interface DriveState {
  /** Share of the pack's voltage that the speed controllers pass on, 0 to 1. */
  readonly throttle: number;
  readonly motor: MotorState;
  /** Of one propeller, N. */
  readonly thrust: number;
  /** At the pack under this load, V and A. */
  readonly packVoltage: number;
  readonly packCurrent: number;
}

/** The state in which all propellers together give a thrust (N); null where the pack can't feed it. */
export function stateForThrust(drive: Drive, thrust: number): DriveState | null {
  const { propeller, airDensity, count } = drive;
  const each = thrust / count;
  const speed = speedForThrust(propeller, each, airDensity);
  return stateTurning(drive, each, turning(drive.motor, speed, torqueFactor(propeller, airDensity)));
}

/** The state in which each motor turns so for the thrust (N) of its propeller; null where the pack can't feed it. */
export function stateTurning(drive: Drive, thrust: number, motor: MotorState): DriveState | null {
  const supply = packUnderLoad(drive.openVoltage, drive.sourceResistance, loadOf(drive, motor));
  if (supply === null) return null;
  const { voltage: packVoltage, current: packCurrent } = supply;
  const throttle = motor.voltage / packVoltage;
  return throttle > 1 ? null : { throttle, motor, thrust, packVoltage, packCurrent };
}

/**
 * Power (W) that the pack gives to motors that turn so, at a throttle of no more than `most` (0 to 1); infinite where
 * it can't feed them. The same as by `stateTurning`, for who looks at very many.
 */
export function packPower(drive: Drive, motor: MotorState, most: number): number {
  const load = loadOf(drive, motor);
  const voltage = voltageUnderLoad(drive.openVoltage, drive.sourceResistance, load);
  return motor.voltage <= most * voltage ? load.power + voltage * load.current : Number.POSITIVE_INFINITY;
}

/**
 * By how much (V) the pack's voltage could be lower, and motors that turn so at a throttle (0 to 1) still be fed; below
 * 0 where they can't. At a voltage V the pack has E − R I0 − R P / V − V to spare, which falls from the half of E − R I0
 * on: below that no pack is asked to go, for it gives the less power there, the more it is drawn down.
 * Source: the law of `packUnderLoad`.
 */
export function voltageToSpare(drive: Drive, motor: MotorState, throttle: number): number {
  const { power, current } = loadOf(drive, motor);
  const rest = drive.openVoltage - drive.sourceResistance * current;
  const voltage = Math.max(motor.voltage / throttle, rest / 2);
  return rest - (drive.sourceResistance * power) / voltage - voltage;
}

/** What a thrust asks of a pack of any voltage. */
export interface ThrustNeeds {
  /** All that hangs on it meanwhile, the electronics with it. */
  readonly load: PackLoad;
  /** With less than this, V, the motors don't come up to their speed. */
  readonly voltage: number;
}

/** Of a thrust (N) of all propellers together. */
export function needsForThrust(drive: Drive, thrust: number): ThrustNeeds {
  const { propeller, airDensity, count } = drive;
  const speed = speedForThrust(propeller, thrust / count, airDensity);
  const motor = turning(drive.motor, speed, torqueFactor(propeller, airDensity));
  return { load: loadOf(drive, motor), voltage: motor.voltage };
}

/** What the controllers lose is a share of voltage times current: a current, whatever the voltage. */
function loadOf({ count, otherPower, controllerLoss }: Drive, { power, current }: MotorState): PackLoad {
  return { power: count * power + otherPower, current: controllerLoss * count * current };
}

/** The pack's voltage is looked for until it moves by less than this share of it, or so many times. */
const closeEnough = 1e-10;
const mostLooks = 60;

/** The state at a throttle from 0 to 1. The pack sags until what the motors draw and what it gives agree. */
export function stateAtThrottle(drive: Drive, throttle: number): DriveState {
  return turningAtThrottle(drive, throttle) ?? laggingAtThrottle(drive, throttle);
}

/**
 * While the motors turn and the pack bears it: Newton's method along their speed, from that of a pack without sag. What
 * is left of the pack's voltage falls the faster, the higher the speed, so each step comes nearer from above. Null where it does not.
 */
function turningAtThrottle(drive: Drive, throttle: number): DriveState | null {
  const { motor, openVoltage, sourceResistance, otherPower, count, airDensity } = drive;
  const factor = torqueFactor(drive.propeller, airDensity);
  const { speedConstant: k, resistance: r, idleSlope = 0 } = motor;
  const seen = motor.underLoad ?? motor;
  let { speed } = settled(motor, throttle * openVoltage, factor);
  for (let look = 0; look < mostLooks && speed > 0; look += 1) {
    const state = turning(motor, speed, factor);
    const packVoltage = state.voltage / throttle;
    const given = (count * state.power + otherPower) / packVoltage;
    const packCurrent = given + count * drive.controllerLoss * state.current;
    // All by what a little more speed makes of them: current, the pack's voltage, power, the pack's current.
    const more = idleSlope + 2 * k * factor * speed;
    const rise = (1 / seen.speedConstant + seen.resistance * more) / throttle;
    const harder = (state.current + speed * more) / k + 2 * r * state.current * more;
    const drawn = (count * harder - given * rise) / packVoltage + count * drive.controllerLoss * more;
    const slope = -rise - sourceResistance * drawn;
    const step = (openVoltage - sourceResistance * packCurrent - packVoltage) / slope;
    if (!(slope < 0)) return null;
    if (Math.abs(step) <= closeEnough * speed) {
      const thrust = propellerThrust(drive.propeller, speed, airDensity);
      return { throttle, motor: state, thrust, packVoltage, packCurrent };
    }
    speed -= step;
  }
  return null;
}

/** Whatever the motors do, and be the pack drawn down to nothing. */
function laggingAtThrottle(drive: Drive, throttle: number): DriveState {
  const factor = torqueFactor(drive.propeller, drive.airDensity);
  const { openVoltage, sourceResistance } = drive;
  const spare = (voltage: number) => givenAt(drive, voltage) - drawnAt(drive, throttle, voltage, factor);
  // What is drawn without any sag is the most, and sags the pack further than it really will.
  const lowest = Math.max(0, openVoltage + sourceResistance * spare(openVoltage));
  const packVoltage = fallingThroughZero(
    spare,
    spare(lowest) > 0 ? lowest : 0,
    openVoltage,
    closeEnough * openVoltage,
  );
  const motor = settled(drive.motor, throttle * packVoltage, factor);
  const thrust = propellerThrust(drive.propeller, motor.speed, drive.airDensity);
  return { throttle, motor, thrust, packVoltage, packCurrent: givenAt(drive, packVoltage) };
}

/** What the pack gives when it is drawn down to a voltage, A. */
function givenAt({ openVoltage, sourceResistance }: Drive, voltage: number): number {
  return (openVoltage - voltage) / sourceResistance;
}

/** What the craft draws at a voltage, A. */
function drawnAt(drive: Drive, throttle: number, voltage: number, factor: number): number {
  const { power, current } = settled(drive.motor, throttle * voltage, factor);
  const given = drive.count * power + drive.otherPower;
  return given / Math.max(voltage, Number.MIN_VALUE) + drive.count * drive.controllerLoss * current;
}
