import type { Motor } from '../physics/motor';
import { growing, idleSpeed, type MotorPlate } from './motor-plate';
import { type Doubt, doubtOf, waysOf } from './uncertain';

/** What is not known of a motor, by its plate: each may be turned on top of the others. */
export function motorDoubts(plate: MotorPlate): readonly Doubt<Motor>[] {
  return [
    doubtOf('the motors’ winding', waysOf(plate.resistance), (motor, by) =>
      plausible({ ...motor, resistance: by * motor.resistance }),
    ),
    // In the fits of a dozen motors these two go their own ways: their logarithms correlate by -0.14.
    doubtOf(
      'what the motors lose of their speed under a load',
      waysOf(plate.underLoad.resistance),
      (motor, by) => plausible(withUnderLoad(motor, by, 1)),
    ),
    doubtOf('the motors’ kv under a load', waysOf(plate.underLoad.speedConstant), (motor, by) =>
      withUnderLoad(motor, 1, by),
    ),
    doubtOf('the motors’ current without a load', waysOf(plate.current), (motor, by) => ({
      ...motor,
      idleCurrent: by * motor.idleCurrent,
      idleSlope: by * (motor.idleSlope ?? 0),
    })),
    {
      of: 'how the motors’ current without a load grows with their speed',
      at: (motor, way) => withShare(motor, idleSpeed(plate), shareAt(way)),
    },
  ];
}

function withUnderLoad(motor: Motor, moreResistance: number, faster: number): Motor {
  const { resistance, speedConstant } = motor.underLoad ?? motor;
  const underLoad = { resistance: moreResistance * resistance, speedConstant: faster * speedConstant };
  return { ...motor, underLoad };
}

/** No motor turns more into heat than its volts lose: the pack would give less than the motor takes. */
function plausible(motor: Motor): Motor {
  const { resistance, speedConstant } = motor.underLoad ?? motor;
  return { ...motor, underLoad: { speedConstant, resistance: Math.max(motor.resistance, resistance) } };
}

function shareAt(way: number): number {
  const end = growing[way < 0 ? 'low' : 'high'];
  return growing.likely + Math.min(1, Math.abs(way)) * (end - growing.likely);
}

/** The same current without a load at a speed (rad/s), of which another share grows. */
function withShare(motor: Motor, speed: number, share: number): Motor {
  const whole = motor.idleCurrent + (motor.idleSlope ?? 0) * speed;
  return { ...motor, idleCurrent: (1 - share) * whole, idleSlope: (share * whole) / speed };
}
