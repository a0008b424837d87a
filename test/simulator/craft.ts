/** What the simulator needs to know of a craft; SI, angles in radians. Four motors. */
export interface SimulatedCraft {
  /** With its pack, kg. */
  readonly mass: number;
  /** kg/m³ */
  readonly density: number;
  /** kg m² */
  readonly inertia: PerAxis;
  readonly motors: readonly SimulatedMotor[];
  readonly propeller: SimulatedPropeller;
  readonly winding: SimulatedWinding;
  /** Of bell and propeller, kg m²: its reaction turns the craft. */
  readonly rotorInertia: number;
  /** With which a motor gets faster and slower, s: brakes are weaker than drive. */
  readonly lag: { readonly up: number; readonly down: number };
  /** Shares of the pack's voltage: a motor never gets less than the first once it is armed, and none more than the second. */
  readonly output: { readonly idle: number; readonly full: number };
  readonly pack: SimulatedPack;
  readonly board: SimulatedBoard;
  readonly shaking: Shaking;
  readonly wind: Wind;
  readonly link: { readonly interval: number; readonly lost: number; readonly gap: number };
}

/** About the axes roll (right is more), pitch (nose up is more) and yaw (clockwise seen from above is more). */
export interface PerAxis {
  readonly roll: number;
  readonly pitch: number;
  readonly yaw: number;
}

export interface SimulatedMotor {
  /** From the centre of mass, m. */
  readonly ahead: number;
  readonly aside: number;
  /** What the mixer takes it to be: which way it rolls, pitches and yaws the craft, −1 to 1. */
  readonly mix: PerAxis;
  readonly isClockwise: boolean;
  /** Of the thrust that a sound propeller gives. */
  readonly thrustShare: number;
  /** What its unbalance and its blades shake the gyro by in the hover, rad/s. */
  readonly shaftTone: number;
  readonly bladeTone: number;
}

export interface SimulatedPropeller {
  readonly diameter: number;
  readonly blades: number;
  readonly thrustCoefficient: number;
  readonly powerCoefficient: number;
}

export interface SimulatedWinding {
  /** rad/s a volt */
  readonly speedConstant: number;
  readonly resistance: number;
  readonly idleCurrent: number;
}

/** A pack as two resistors with a capacitor beside each, behind one that is there at once. */
export interface SimulatedPack {
  /** Open voltage at equal steps of the charge from full to empty, V. */
  readonly open: readonly number[];
  /** C */
  readonly capacity: number;
  /** Share of the charge that is gone at the start. */
  readonly used: number;
  /** With the leads, ohm. */
  readonly atOnce: number;
  readonly quick: { readonly resistance: number; readonly seconds: number };
  readonly slow: { readonly resistance: number; readonly seconds: number };
  /** What the electronics draw, A. */
  readonly standing: number;
}

export type SimulatedFilter =
  | { readonly kind: 'first-order'; readonly cutoff: number }
  | { readonly kind: 'butterworth'; readonly cutoff: number }
  | { readonly kind: 'notch'; readonly centre: number; readonly width: number }
  | { readonly kind: 'follow-motors'; readonly tones: number; readonly from: number; readonly width: number };

/** Gains in shares of the motors' range, a rad/s, a rad, a rad/s², and a rad/s² that the stick asks for. */
export interface SimulatedGains {
  readonly proportional: number;
  readonly integral: number;
  readonly derivative: number;
  readonly feedforward: number;
}

/** Above a throttle the gains become these shares of themselves, evenly up to full throttle. */
export interface GainFade {
  readonly from: number;
  readonly proportional: number;
  readonly integral: number;
  readonly derivative: number;
}

export interface SimulatedBoard {
  /** Hz; the second a whole part of the first. */
  readonly gyroRate: number;
  readonly controlRate: number;
  readonly gyroFilters: readonly SimulatedFilter[];
  readonly derivativeFilters: readonly SimulatedFilter[];
  /** What the derivative looks at: how the craft turns, or how that differs from what is asked. */
  readonly derivativeOf: 'turning' | 'error';
  readonly feedforwardFilters: readonly SimulatedFilter[];
  readonly fade: GainFade | null;
  /** How much of thrust the board takes to grow with the square of what a motor is told, 0 to 1: it undoes so much. */
  readonly shape: number;
  /** How late the gyro says how it turns, and how long what a motor is told takes to its winding, s. */
  readonly late: { readonly gyro: number; readonly output: number };
  readonly gains: {
    readonly roll: SimulatedGains;
    readonly pitch: SimulatedGains;
    readonly yaw: SimulatedGains;
  };
}

/** A weakly damped part of the frame that rings. */
export interface FrameTone {
  /** Hz */
  readonly frequency: number;
  /** Share of the critical damping. */
  readonly damping: number;
  /** In the hover, rad/s rms, about each axis. */
  readonly strength: PerAxis;
}

export interface Shaking {
  readonly frame: readonly FrameTone[];
  /** Of the sensor, rad/s/√Hz. */
  readonly sensor: number;
  /** Of air and motors in the hover, the same unit; it grows with thrust. */
  readonly air: number;
}

export interface Wind {
  /** Torque of gusts, share of the torque that the motors can give, rms. */
  readonly torque: number;
  /** Of the air up and down, m/s rms. */
  readonly lift: number;
  /** How long a gust lasts, s. */
  readonly seconds: number;
}

export const axes = ['roll', 'pitch', 'yaw'] as const;
export const gravity = 9.806_65;
export const wholeTurn = 2 * Math.PI;
