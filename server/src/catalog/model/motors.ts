import { quantityText, source } from './common';
import * as z from './plain-zod';

/** A motor of which everything is printed. Makers are numbers: only which motors are of one maker counts. */
const listedMotor = z.strictObject({
  maker: z.int().check(z.positive()),
  statorDiameter: quantityText,
  statorHeight: quantityText,
  mass: quantityText,
  kv: quantityText,
  /** Between two wires. */
  resistance: quantityText,
  idleCurrent: quantityText,
});

/** A motor that was measured with several propellers: what its volts were made of. */
const loadedMotor = z.strictObject({
  statorDiameter: quantityText,
  statorHeight: quantityText,
  /** As printed. */
  kv: quantityText,
  kvUnderLoad: quantityText,
  resistanceUnderLoad: quantityText,
});

export const motorFile = z.strictObject({
  motors: z.array(listedMotor).check(z.minLength(1)),
  source,
  underLoad: z.array(loadedMotor).check(z.minLength(1)),
  underLoadSource: source,
});

export type ListedMotorRow = z.infer<typeof listedMotor>;
export type LoadedMotorRow = z.infer<typeof loadedMotor>;
export type MotorFile = z.infer<typeof motorFile>;

const measure = z.enum(['diameter', 'height', 'volume', 'mass', 'kv']);
const numbers = z.array(z.number());

/** As `physics/motor-law.ts` has it. */
const motorLaw = z.strictObject({
  from: z.array(measure),
  coefficients: numbers,
  factor: z.number(),
  inverse: z.array(numbers),
  farthest: z.number(),
});

const spread = z.strictObject({ low: z.number(), likely: z.number(), high: z.number() });

/** What the build makes of the listed motors: laws by the stator's size, and by the mass where there is no size. */
export const motorLaws = z.strictObject({
  /** ohm */
  resistance: z.strictObject({ bySize: motorLaw, byMass: motorLaw }),
  /** A */
  idleCurrent: z.strictObject({ bySize: motorLaw, byMass: motorLaw }),
  /** Torque a root of the watts that become heat, N m/√W: whatever the winding. */
  motorConstant: z.strictObject({ bySize: motorLaw, byMass: motorLaw }),
  /** g */
  mass: motorLaw,
  /** What throttle and speed see, as ratios: of the resistance that the law by size gives, and of the printed kv. */
  underLoad: z.strictObject({ resistance: spread, kv: spread }),
});

export type MotorLaws = z.infer<typeof motorLaws>;
