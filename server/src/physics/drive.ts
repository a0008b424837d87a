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

/** The pack's voltage is looked for until it moves by less than this share of it, or so many times. */
const closeEnough = 1e-10;
const mostLooks = 60;

/** The state at a throttle from 0 to 1. The pack sags until what the motors draw and what it gives agree. */
export function stateAtThrottle(drive: Drive, throttle: number): DriveState {
  const factor = torqueFactor(drive.propeller, drive.airDensity);
  const { openVoltage, sourceResistance } = drive;
  const spare = (voltage: number) => givenAt(drive, voltage) - drawnAt(drive, throttle, voltage, factor);
  // What is drawn without any sag is the most, and sags the pack further than it really will.
  const lowest = Math.max(0, openVoltage + sourceResistance * spare(openVoltage));
  const packVoltage = fallingThroughZero(spare, spare(lowest) > 0 ? lowest : 0, openVoltage);
  const motor = settled(drive.motor, throttle * packVoltage, factor);
  const thrust = propellerThrust(drive.propeller, motor.speed, drive.airDensity);
  return { throttle, motor, thrust, packVoltage, packCurrent: givenAt(drive, packVoltage) };
}

/**
 * Where something that falls from above 0 passes through it, between two ends: by false position with the weight
 * of an end that stays halved (Illinois method), and by halving where that leads outside.
 */
function fallingThroughZero(measure: (at: number) => number, from: number, end: number): number {
  let [low, high] = [from, end];
  let [above, below] = [measure(low), measure(high)];
  let last = high;
  for (let look = 0; look < mostLooks; look += 1) {
    const share = above / (above - below);
    const at = share > 0 && share < 1 ? low + share * (high - low) : (low + high) / 2;
    if (Math.abs(at - last) <= closeEnough * end) return at;
    last = at;
    const value = measure(at);
    if (value > 0) {
      [low, above] = [at, value];
      below /= 2;
    } else {
      [high, below] = [at, value];
      above /= 2;
    }
  }
  return last;
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
