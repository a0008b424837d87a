import { type Drive, type DriveState, packPower, stateTurning, voltageToSpare } from './drive';
import { type Airframe, hoverInflow, type LevelFlight, levelFlight, profileRise } from './forward-flight';
import { type MotorState, turning as turningWith } from './motor';
import { propellerPower, speedForThrust, tipSpeed } from './propeller';

/** Motors, propellers and pack with the craft that they carry forward. */
export interface DriveInFlight {
  readonly drive: Drive;
  readonly airframe: Airframe;
  /** How far the air may come through the propellers in a turn before they give no thrust any more, m. */
  readonly advance: number;
  /**
   * By how much of itself the induced power grows, once the craft is fast, beyond what momentum theory says of discs
   * that stand alone: the rear ones work in the wash of those in front. 0: not at all.
   */
  readonly inflowRise: number;
}

const turn = 2 * Math.PI;

/**
 * Induced power of a rotor in the hover over the least that it can be. Source: J. G. Leishman, Principles of Helicopter
 * Aerodynamics, chapter 2: 1.15 as usual.
 */
const inducedFactor = 1.15;
/** Of what the shafts give in the hover no less than this goes into dragging blades. An assumption. */
const leastProfile = 0.1;

/** So much farther than in the hover the air may come through in a turn at the least. An assumption, for flat blades. */
const leastAdvance = 1.25;

/**
 * Motor speed (rad/s) at which the propellers give a thrust (N, all together) while air comes through them at a speed
 * (m/s, what they induce with it): thrust falls in a straight line with the advance, from what it is in still air,
 * where only the induced velocity comes through, to nothing.
 * Source: blade element theory, as in Leishman, chapter 3; University of Illinois Propeller Data Site, volume 2, 39
 * propellers up to 5.6 inches: nothing at 1.07 times the pitch.
 */
export function speedThrough(drive: Drive, thrust: number, through: number, advance: number): number {
  const { diameter, thrustCoefficient } = drive.propeller;
  const still = speedForThrust(drive.propeller, thrust / drive.count, drive.airDensity) / turn;
  const hovering = Math.sqrt((2 * thrustCoefficient) / Math.PI) * diameter;
  const whole = Math.max(advance, leastAdvance * hovering);
  const rest = 4 * whole * (whole - hovering) * still ** 2;
  return (turn * (through + Math.sqrt(through ** 2 + rest))) / (2 * whole);
}

/**
 * What the shafts give together (W) in level flight: induced power, with the rise at speed, what drag takes, and what
 * dragging blades takes. The last goes with thrust times motor speed, for blades that lift less drag less: with T^1.5
 * in still air (D. Liu and others, 2017). In the hover all is what the propellers' coefficients say.
 */
export function shaftPower(
  craft: DriveInFlight,
  level: LevelFlight,
  speed: number,
  turning = turningAt(craft, level, speed),
): number {
  const { drive, airframe, inflowRise } = craft;
  const { weight, discArea, airDensity } = airframe;
  const hovering = speedForThrust(drive.propeller, weight / drive.count, airDensity);
  const hover = drive.count * propellerPower(drive.propeller, hovering, airDensity);
  const ideal = weight * hoverInflow(weight, discArea, airDensity);
  const induced = Math.min(inducedFactor * ideal, (1 - leastProfile) * hover);
  const rise = 1 + inflowRise * (1 - level.inflowShare ** 2);
  const across = speed * Math.cos(level.tilt);
  const profile =
    (hover - induced) *
    (level.thrust / weight) *
    (turning / hovering) *
    profileRise(across, tipSpeed(drive.propeller.diameter, turning));
  return (induced / ideal) * rise * level.thrust * level.induced + level.drag * speed + profile;
}

/** Motor speed (rad/s) in level flight: the air comes through the discs by the tilt, and by what they induce. */
function turningAt({ drive, advance }: DriveInFlight, level: LevelFlight, speed: number): number {
  const through = speed * Math.sin(level.tilt) + level.induced;
  return speedThrough(drive, level.thrust, through, advance);
}

/** The craft in level flight at an airspeed (m/s); null where motors or pack can't hold it. */
export function stateInFlight(craft: DriveInFlight, speed: number): DriveState | null {
  const { drive } = craft;
  const level = levelFlight(craft.airframe, speed);
  return stateTurning(drive, level.thrust / drive.count, motorIn(craft, level, speed));
}

/** Power (W) from the pack there at a throttle of no more than `most` (0 to 1); infinite where they can't hold it. */
export function packPowerInFlight(craft: DriveInFlight, speed: number, most: number): number {
  return packPower(craft.drive, motorIn(craft, levelFlight(craft.airframe, speed), speed), most);
}

/** How much lower (V) the pack's voltage could be there at a throttle (0 to 1); below 0 where they can't hold it. */
export function voltageToSpareInFlight(craft: DriveInFlight, speed: number, throttle: number): number {
  const level = levelFlight(craft.airframe, speed);
  return voltageToSpare(craft.drive, motorIn(craft, level, speed), throttle);
}

/** How each motor turns in level flight. */
function motorIn(craft: DriveInFlight, level: LevelFlight, speed: number): MotorState {
  const turning = turningAt(craft, level, speed);
  const { motor, count } = craft.drive;
  // Multiplied out: powers in general take several times as long.
  const cube = turning * turning * turning;
  return turningWith(motor, turning, shaftPower(craft, level, speed, turning) / (count * cube));
}
