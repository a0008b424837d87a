import { gravity, type SimulatedCraft, type SimulatedMotor, wholeTurn } from './craft';

// Motors and propellers at rest in their speed: plain algebra of a direct-current motor and of coefficients.

/** N of a sound propeller in still air. */
export function thrustAt({ density, propeller }: SimulatedCraft, speed: number): number {
  return propeller.thrustCoefficient * density * (speed / wholeTurn) ** 2 * propeller.diameter ** 4;
}

/** Nm a (rad/s)². */
export function dragFactor({ density, propeller }: SimulatedCraft): number {
  return (propeller.powerCoefficient * density * propeller.diameter ** 5) / wholeTurn ** 3;
}

/** The speed at which a motor stays with so many volts, rad/s: R k q ω² + ω / k + R i0 = U, solved for ω. */
export function settling(craft: SimulatedCraft): (volts: number) => number {
  const { speedConstant, resistance, idleCurrent } = craft.winding;
  const a = resistance * speedConstant * dragFactor(craft);
  const b = 1 / speedConstant;
  return (volts) => {
    const c = resistance * idleCurrent - volts;
    return c >= 0 ? 0 : (Math.sqrt(b * b - 4 * a * c) - b) / (2 * a);
  };
}

export function speedAt(craft: SimulatedCraft, volts: number): number {
  return settling(craft)(volts);
}

/** Volts that hold a speed. */
export function voltsFor(craft: SimulatedCraft, speed: number): number {
  const { speedConstant, resistance, idleCurrent } = craft.winding;
  return speed / speedConstant + resistance * (idleCurrent + speedConstant * dragFactor(craft) * speed ** 2);
}

/** Torque a rad/s that holds a motor at its speed, Nm s: its rotor's inertia over it is its lag. */
export function holdingTorque(craft: SimulatedCraft, speed: number): number {
  const { speedConstant, resistance } = craft.winding;
  return 2 * dragFactor(craft) * speed + 1 / (speedConstant ** 2 * resistance);
}

/** Clockwise propellers turn the craft the other way. */
export function turnsCraft({ isClockwise }: SimulatedMotor): 1 | -1 {
  return isClockwise ? -1 : 1;
}

/** Thrusts with which it hovers without turning, N: four equations for four motors, by elimination. */
function hoverThrusts(craft: SimulatedCraft): readonly number[] {
  const { motors } = craft;
  const torqueAThrust = dragFactor(craft) / (thrustAt(craft, 1) || 1);
  const rows = [
    motors.map(() => 1),
    motors.map(({ aside }) => -aside),
    motors.map(({ ahead }) => ahead),
    motors.map((motor) => (turnsCraft(motor) * torqueAThrust) / motor.thrustShare),
  ];
  return solved(rows, [craft.mass * gravity, 0, 0, 0]);
}

/** What each motor is told in a calm hover, 0 to 1, while the pack shows so many volts. */
export function hoverOutputs(craft: SimulatedCraft, volts: number): readonly number[] {
  return hoverSpeeds(craft).map((speed) => voltsFor(craft, speed) / volts);
}

/** rad/s */
export function hoverSpeeds(craft: SimulatedCraft): readonly number[] {
  return hoverThrusts(craft).map((thrust, index) =>
    Math.sqrt(thrust / (craft.motors[index]!.thrustShare * thrustAt(craft, 1))),
  );
}

function solved(rows: readonly (readonly number[])[], right: readonly number[]): readonly number[] {
  const size = right.length;
  const table = rows.map((row, index) => [...row, right[index]!]);
  for (let column = 0; column < size; column += 1) {
    const best = table
      .slice(column)
      .sort((one, other) => Math.abs(other[column]!) - Math.abs(one[column]!))[0]!;
    const at = table.indexOf(best);
    [table[at], table[column]] = [table[column]!, best];
    for (let row = 0; row < size; row += 1) {
      if (row === column) continue;
      const share = table[row]![column]! / best[column]!;
      table[row] = table[row]!.map((value, index) => value - share * best[index]!);
    }
  }
  return table.map((row, index) => row[size]! / row[index]!);
}
