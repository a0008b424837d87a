import { type Drag, dragAt } from './drag';

/** Velocity (m/s) that a thrust (N) gives the air in a disc (m²) that stands still in it: √(T / (2 ρ A)). */
export function hoverInflow(thrust: number, area: number, density: number): number {
  return Math.sqrt(thrust / (2 * density * area));
}

/** Of the share: what is left after such a step is its square. */
const closeEnough = 1e-8;
const mostLooks = 60;

/**
 * Induced velocity as a share of that in the hover, with the same thrust: x √((v cos α)² + (v sin α + x)²) = 1 with v
 * the airspeed over the hover's induced velocity, 0 or more, and α (rad) the tilt of the disc into the wind, 0 to π/2.
 * By Newton's method from the level disc, which lies above; the equation bends upwards, so each step comes nearer.
 * Source: H. Glauert's momentum theory, as in J. G. Leishman, Principles of Helicopter Aerodynamics, chapter 2.
 */
export function inflowShare(speed: number, tilt: number): number {
  const across = (speed * Math.cos(tilt)) ** 2;
  const along = speed * Math.sin(tilt);
  const half = speed ** 2 / 2;
  // √(√(¼ v⁴ + 1) − ½ v²), in a form that loses no digits at high speed.
  let share = 1 / Math.sqrt(Math.sqrt(half ** 2 + 1) + half);
  for (let look = 0; look < mostLooks; look += 1) {
    const through = along + share;
    const over = share ** 2 * (across + through ** 2) - 1;
    const step = over / (2 * share * (across + through ** 2) + 2 * share ** 2 * through);
    share -= step;
    if (step <= closeEnough * share) break;
  }
  return share;
}

/** By how much faster air makes the profile power of a rotor grow: 1 + 3 (V / tip speed)². Source: Leishman, chapter 5. */
export function profileRise(speed: number, tipSpeed: number): number {
  return 1 + 3 * (speed / tipSpeed) ** 2;
}

/** A craft as the air sees it. */
export interface Airframe {
  /** N */
  readonly weight: number;
  readonly drag: Drag;
  /** That all propellers sweep, m². */
  readonly discArea: number;
  /** kg/m³ */
  readonly airDensity: number;
}

/** Level flight at a steady speed. */
export interface LevelFlight {
  /** rad, nose down. */
  readonly tilt: number;
  /** N */
  readonly drag: number;
  /** Of all propellers, N. */
  readonly thrust: number;
  /** Induced velocity, m/s, and as a share of that of the same thrust in the hover. */
  readonly induced: number;
  readonly inflowShare: number;
  /** Least power that it can take, T (vi + V sin θ) = T vi + D V, W. */
  readonly idealPower: number;
}

/**
 * Level flight at an airspeed (m/s, 0 or more): the craft tilts until its thrust carries the weight and overcomes the
 * drag, tan θ = D / W, T = √(W² + D²).
 */
export function levelFlight({ weight, drag, discArea, airDensity }: Airframe, speed: number): LevelFlight {
  const held = dragAt(drag, speed, airDensity);
  const tilt = Math.atan2(held, weight);
  // `Math.hypot` takes as long as all the rest.
  const thrust = Math.sqrt(weight * weight + held * held);
  const hover = hoverInflow(thrust, discArea, airDensity);
  const share = inflowShare(speed / hover, tilt);
  const induced = share * hover;
  return {
    tilt,
    drag: held,
    thrust,
    induced,
    inflowShare: share,
    idealPower: thrust * induced + held * speed,
  };
}
