/**
 * A motor as the first-order model has it: speed constant in rad/s a volt, resistance in ohm, current without a
 * load in A, and by how much that grows a rad/s (A s; not at all unless it is told).
 * Source: M. Drela, First-Order DC Electric Motor Model (MIT, 2007), from memory; proved against a printout of
 * his program QPROP 1.22.
 */
export interface Motor {
  readonly speedConstant: number;
  readonly resistance: number;
  readonly idleCurrent: number;
  readonly idleSlope?: number;
  readonly underLoad?: UnderLoad;
}

/**
 * What stands between a motor's mean voltage and its speed on a real controller: V = Ω/K' + R' I, with a resistance
 * (ohm) above and a speed constant (rad/s a volt) below those of the winding. What the voltage loses by them is not all
 * heat: torque and power keep to the motor's own constant and resistance. Without it both are the motor's own.
 * Source: fits of bench tables, of the volts and of the power (Seoul National University; P. Cao and J. Strawson, 2018).
 */
export interface UnderLoad {
  readonly speedConstant: number;
  readonly resistance: number;
}

/** A no-load current as it was measured: at a voltage (V). A share of it, from 0 to 1, grows with the speed. */
export interface MeasuredIdle {
  readonly current: number;
  readonly voltage: number;
  readonly growing: number;
}

/**
 * The motor that draws a current without a load at a voltage: friction and hysteresis take the same torque at any
 * speed, eddy currents one that grows with it. Domain: the voltage drives the current, voltage > resistance × current.
 * Source: the second-order form of the model, M. Drela, Second-Order DC Electric Motor Model (MIT, 2006), from memory.
 */
export function withIdle(motor: Omit<Motor, 'idleCurrent' | 'idleSlope'>, idle: MeasuredIdle): Motor {
  const { current, voltage, growing } = idle;
  const speed = motor.speedConstant * (voltage - motor.resistance * current);
  return { ...motor, idleCurrent: (1 - growing) * current, idleSlope: (growing * current) / speed };
}

/** Current (A) without a load at a speed (rad/s). */
export function idleCurrentAt({ idleCurrent, idleSlope = 0 }: Motor, speed: number): number {
  return idleCurrent + idleSlope * speed;
}

/** How a motor turns at one moment; SI, speed in rad/s. */
export interface MotorState {
  readonly speed: number;
  readonly current: number;
  /** Mean voltage at the motor. */
  readonly voltage: number;
  /** What it takes, W: less than voltage times current where some of the voltage is lost without heat. */
  readonly power: number;
}

function underLoadOf(motor: Motor): UnderLoad {
  return motor.underLoad ?? motor;
}

/** What a current (A) takes at a speed (rad/s), W: Ω I/K + R I². */
function motorPower({ speedConstant, resistance }: Motor, current: number, speed: number): number {
  return (speed * current) / speedConstant + resistance * current ** 2;
}

/** Torque (Nm) at a current (A) and a speed (rad/s): (I − I0) / K. */
export function motorTorque(motor: Motor, current: number, speed: number): number {
  return (current - idleCurrentAt(motor, speed)) / motor.speedConstant;
}

/**
 * What a motor settles at with a voltage (V) and a load whose torque (Nm) is `factor` × speed²: the positive
 * root of factor Ω² + Ω (1/(K K' R') + I1/K) = (V/R' − I0)/K, I1 the growth of the current without a load, K' and R'
 * those under a load. Standing still where the voltage does not even bear the current without a load.
 */
export function settled(motor: Motor, voltage: number, factor: number): MotorState {
  const { speedConstant: k, idleCurrent } = motor;
  const { resistance: r } = underLoadOf(motor);
  const drag = ownDamping(motor);
  const push = (voltage / r - idleCurrent) / k;
  if (push <= 0) return { speed: 0, current: voltage / r, voltage, power: motorPower(motor, voltage / r, 0) };
  // Written so that a vanishing load gives no zero over zero.
  const speed = (2 * push) / (drag + Math.sqrt(drag * drag + 4 * factor * push));
  const current = loadedCurrent(motor, speed, factor);
  return { speed, current, voltage, power: motorPower(motor, current, speed) };
}

/** Current (A) with such a load at a speed (rad/s). */
function loadedCurrent(motor: Motor, speed: number, factor: number): number {
  return idleCurrentAt(motor, speed) + motor.speedConstant * factor * speed * speed;
}

/** Voltage and current with which a motor turns such a load at a speed (rad/s). */
export function turning(motor: Motor, speed: number, factor: number): MotorState {
  const current = loadedCurrent(motor, speed, factor);
  const { speedConstant, resistance } = underLoadOf(motor);
  const voltage = speed / speedConstant + resistance * current;
  return { speed, current, voltage, power: motorPower(motor, current, speed) };
}

/** Power over the shaft as a share of the power from the supply. */
export function motorEfficiency(motor: Motor, { speed, current, power }: MotorState): number {
  return (motorTorque(motor, current, speed) * speed) / power;
}

/**
 * Torque (Nm) a rad/s by which a change of speed about a speed (rad/s) is held back: 1/(K K' R') + I1/K + 2 × factor ×
 * speed, I1 the growth of the current without a load. The inertia (kg m²) of rotor and propeller over it is the time
 * constant (s) with which the speed follows the voltage: without a load the J R / K² of any data sheet.
 * Source: the model above, linearised.
 */
export function speedDamping(motor: Motor, speed: number, factor: number): number {
  return ownDamping(motor) + dragSlope(speed, factor);
}

/**
 * The same of a motor that is driven up and coasts down: nothing but the propeller and its own losses slow it then.
 * Its lag is taken as the mean of both ways, and this as what belongs to that lag.
 */
export function coastingDamping(motor: Motor, speed: number, factor: number): number {
  const driven = speedDamping(motor, speed, factor);
  const coasting = (motor.idleSlope ?? 0) / motor.speedConstant + dragSlope(speed, factor);
  return coasting <= 0 ? driven : 2 / (1 / driven + 1 / coasting);
}

/** The motor's own part of it, at any speed. */
function ownDamping(motor: Motor): number {
  const { speedConstant: k, idleSlope = 0 } = motor;
  const { speedConstant, resistance } = underLoadOf(motor);
  return 1 / (k * speedConstant * resistance) + idleSlope / k;
}

/** Torque (Nm) of the propeller's drag a rad/s of a change about a speed (rad/s): 2 × factor × speed. */
export function dragSlope(speed: number, factor: number): number {
  return 2 * factor * speed;
}

/** Speed (rad/s) that one volt more adds about a speed (rad/s) with such a load, once the motor has followed. */
export function speedPerVolt(motor: Motor, speed: number, factor: number): number {
  const { resistance } = underLoadOf(motor);
  return 1 / (motor.speedConstant * resistance * speedDamping(motor, speed, factor));
}

/**
 * By how much the reaction of rotors that speed up runs ahead of their drag, s: the body feels drag + inertia × dΩ/dt,
 * (1 + s × lead) times the change of the drag, with the inertia (kg m²) over the drag's slope (Nm a rad/s). The zero
 * lies at 1 / lead, in rad/s; at its start a step of torque is lead / response time times what it comes to.
 * Source: Newton's third law; both terms as in the model of a five-inch racer by R. Ferede and others (TU Delft, 2025),
 * which proves it.
 */
export function reactionLead(inertia: number, slope: number): number {
  return inertia / slope;
}

/** Turns a second of a speed in rad/s. */
export function turnsPerSecond(speed: number): number {
  return speed / (2 * Math.PI);
}
