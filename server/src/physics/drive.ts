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

/**
 * The state in which all propellers together give a thrust (N); null where the pack can't feed it. Speed
 * controllers count as without loss: the power into the motors is the power out of the pack.
 */
export function stateForThrust(drive: Drive, thrust: number): DriveState | null {
  const { propeller, airDensity, count } = drive;
  const each = thrust / count;
  const speed = speedForThrust(propeller, each, airDensity);
  const motor = turning(drive.motor, speed, torqueFactor(propeller, airDensity));
  const supply = supplied(drive, count * motor.voltage * motor.current);
  if (supply === null) return null;
  const throttle = motor.voltage / supply.packVoltage;
  return throttle > 1 ? null : { throttle, motor, thrust: each, ...supply };
}

/** What the pack has to give (W) for all propellers together to give a thrust (N), the electronics with it. */
export function powerForThrust(drive: Drive, thrust: number): number {
  const { propeller, airDensity, count, otherPower } = drive;
  const speed = speedForThrust(propeller, thrust / count, airDensity);
  const { voltage, current } = turning(drive.motor, speed, torqueFactor(propeller, airDensity));
  return count * voltage * current + otherPower;
}

/**
 * The pack under a power (W): V = (E + √(E² − 4 R P)) / 2; null beyond the most that it can give, E²/(4 R).
 */
function supplied(
  { openVoltage, sourceResistance, otherPower }: Drive,
  motorPower: number,
): Pick<DriveState, 'packVoltage' | 'packCurrent'> | null {
  const power = motorPower + otherPower;
  const rest = openVoltage ** 2 - 4 * sourceResistance * power;
  if (rest < 0) return null;
  const packVoltage = (openVoltage + Math.sqrt(rest)) / 2;
  return { packVoltage, packCurrent: power / packVoltage };
}

/** Halvings of the stretch in which the pack's voltage is looked for: to a few billionths of it. */
const halvings = 40;

/** The state at a throttle from 0 to 1. The pack sags until what the motors draw and what it gives agree. */
export function stateAtThrottle(drive: Drive, throttle: number): DriveState {
  const factor = torqueFactor(drive.propeller, drive.airDensity);
  let [low, high] = [0, drive.openVoltage];
  for (let step = 0; step < halvings; step += 1) {
    const voltage = (low + high) / 2;
    if (givenAt(drive, voltage) > drawnAt(drive, throttle, voltage, factor)) low = voltage;
    else high = voltage;
  }
  const packVoltage = (low + high) / 2;
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
  const { current } = settled(drive.motor, throttle * voltage, factor);
  return drive.count * throttle * current + drive.otherPower / Math.max(voltage, Number.MIN_VALUE);
}
