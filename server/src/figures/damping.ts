import { coastingDamping, speedDamping } from '../physics/motor';
import { torqueFactor } from '../physics/propeller';
import type { Carried } from './carried';

/** Torque a rad/s (Nm s) that holds a change of the motors' speed (rad/s) back: their inertia over it is their lag. */
export function dampingAt({ drive, brakes }: Carried, speed: number): number {
  const factor = torqueFactor(drive.propeller, drive.airDensity);
  return (brakes ? speedDamping : coastingDamping)(drive.motor, speed, factor);
}
