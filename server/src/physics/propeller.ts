/**
 * A propeller that stands still in the air: coefficients of thrust and of power, T = CT ρ n² D⁴ and
 * P = CP ρ n³ D⁵ with n in turns a second, and the diameter in m.
 * Source of the convention: University of Illinois Propeller Data Site (Brandt, Deters, Ananda, Dantsker, Selig).
 */
export interface Propeller {
  readonly diameter: number;
  readonly thrustCoefficient: number;
  readonly powerCoefficient: number;
}

const turn = 2 * Math.PI;

// Multiplied out: powers in general take several times as long.
function cube(value: number): number {
  return value * value * value;
}

function fourth(value: number): number {
  return (value * value) ** 2;
}

/** Thrust (N) at a speed (rad/s) in air of a density (kg/m³). */
export function propellerThrust(
  { diameter, thrustCoefficient }: Propeller,
  speed: number,
  density: number,
): number {
  return thrustCoefficient * density * (speed / turn) ** 2 * fourth(diameter);
}

/** Shaft power (W) at a speed (rad/s). */
export function propellerPower(
  { diameter, powerCoefficient }: Propeller,
  speed: number,
  density: number,
): number {
  return powerCoefficient * density * cube(speed / turn) * fourth(diameter) * diameter;
}

/** Torque (Nm) a square of speed (rad/s)²: the propeller asks for this times speed². */
export function torqueFactor({ diameter, powerCoefficient }: Propeller, density: number): number {
  return (powerCoefficient * density * fourth(diameter) * diameter) / cube(turn);
}

/** Speed (rad/s) at which the propeller gives a thrust (N). */
export function speedForThrust(
  { diameter, thrustCoefficient }: Propeller,
  thrust: number,
  density: number,
): number {
  return turn * Math.sqrt(thrust / (thrustCoefficient * density * fourth(diameter)));
}

/** Speed of the blade tips (m/s). */
export function tipSpeed(diameter: number, speed: number): number {
  return (speed * diameter) / 2;
}

/** Speed (m/s) at which the propeller would screw itself forward through something firm: pitch × turns a second. */
export function pitchSpeed(pitch: number, speed: number): number {
  return (pitch * speed) / turn;
}

/** Disc loading (N/m²): thrust over the area that so many propellers sweep. */
export function discLoading(thrust: number, diameter: number, count: number): number {
  return thrust / (count * Math.PI * (diameter / 2) ** 2);
}

/**
 * Least power (W) that a thrust (N) through a disc (m²) can take: T^1.5 / √(2 ρ A).
 * Source: momentum theory, e.g. J. G. Leishman, Principles of Helicopter Aerodynamics, chapter 2.
 */
export function idealPower(thrust: number, area: number, density: number): number {
  return thrust ** 1.5 / Math.sqrt(2 * density * area);
}
