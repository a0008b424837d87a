import type { SimulatedCraft } from './craft';
import type { Random } from './random';

const degree = Math.PI / 180;

/** A craft as it comes back from some afternoons: a tone of the frame (Hz), one weak propeller, unbalance all over. */
export function ailing(craft: SimulatedCraft, tone: number, random: Random): SimulatedCraft {
  const weak = Math.floor(craft.motors.length * random.unit());
  const strength = 2.4 * degree;
  return {
    ...craft,
    motors: craft.motors.map((motor, index) => ({
      ...motor,
      thrustShare: index === weak ? 0.88 : random.between(0.98, 1.02),
      shaftTone: random.between(0.5, 2.5) * degree,
      bladeTone: random.between(0.2, 0.8) * degree,
    })),
    shaking: {
      frame: [
        {
          frequency: tone,
          damping: 0.004,
          strength: { roll: strength, pitch: 0.5 * strength, yaw: 0.1 * strength },
        },
      ],
      sensor: 0.006 * degree,
      air: 0.04 * degree,
    },
  };
}
