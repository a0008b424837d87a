import { fallingThroughZero } from '../../server/src/physics/falling-through-zero';
import { near } from '../support/near';

describe('where something passes through 0', () => {
  it('is at 2.0945514815423265 for 5 + 2 x − x³ (J. Wallis, A Treatise of Algebra, 1685), at √2 for 2 − x², at 0.7390851332151607 for cos x − x', () => {
    near(
      fallingThroughZero((x) => 5 + 2 * x - x ** 3, 2, 3, 1e-12),
      2.094_551_481_542_326_5,
      1e-12,
    );
    near(
      fallingThroughZero((x) => 2 - x * x, 0, 100, 1e-12),
      Math.SQRT2,
      1e-12,
    );
    near(
      fallingThroughZero((x) => Math.cos(x) - x, 0, 3, 1e-12),
      0.739_085_133_215_160_7,
      1e-12,
    );
  });

  it('is found at a step, and beyond which all is infinitely short (by halving)', () => {
    near(
      fallingThroughZero((x) => (x < 7 ? 1 : -1), 0, 10, 1e-9),
      7,
      1e-8,
    );
    near(
      fallingThroughZero((x) => (x < 7 ? 1 : Number.NEGATIVE_INFINITY), 0, 10, 1e-9),
      7,
      1e-8,
    );
  });
});
