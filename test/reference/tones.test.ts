import { magnitude } from '../../server/src/physics/complex';
import { firstOrderLowpass, response } from '../../server/src/physics/filter';
import { controller, filteredTone } from '../../server/src/physics/loop';
import { turnsPerSecond } from '../../server/src/physics/motor';
import { near } from '../support/near';

describe('tones and what a controller makes of them', () => {
  it('15 000 rpm are 250 turns a second (definition of the minute)', () => {
    near(turnsPerSecond((15_000 * 2 * Math.PI) / 60), 250, 1e-12);
  });

  it('P + I/s + D s with all of them 1 has a gain of 1 at 1 rad/s and of √(1 + 1.5²) at 2 rad/s (any textbook on control)', () => {
    const gains = { proportional: 1, integral: 1, derivative: 1 };
    const unfiltered = { gyroFilters: [], derivativeFilters: [] };
    const commanded = (pulse: number) =>
      magnitude(controller(gains, filteredTone(unfiltered, pulse / (2 * Math.PI))));
    near(commanded(1), 1, 1e-12);
    near(commanded(2), Math.hypot(1, 1.5), 1e-12);
  });

  it('a first-order low-pass leaves 1/√2 of a tone at its cutoff (definition)', () => {
    near(magnitude(response(firstOrderLowpass(90, 8000), 90)), Math.SQRT1_2, 1e-12);
  });
});
