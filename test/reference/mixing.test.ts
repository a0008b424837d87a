import { motorArms, motorPlaces } from '../../server/src/figures/layouts';
import { coaxialFactors, coaxialThrust, mixedArm } from '../../server/src/physics/mixing';
import { near } from '../support/near';

const names = ['quad-x', 'quad-plus', 'hex-x', 'octo-x', 'y6'];

describe('what motors do about an axis', () => {
  it('has equal sums of squares about roll and pitch in every ring: n L²/2 (plane geometry)', () => {
    for (const layout of names) {
      const arms = motorArms(layout, 2, null) ?? [];
      const each = (motorPlaces(layout)?.length ?? 0) / arms.length;
      const reach = Math.hypot(arms[0]?.ahead ?? 0, arms[0]?.aside ?? 0);
      for (const off of ['ahead', 'aside'] as const) {
        const sum = each * arms.reduce((total, arm) => total + arm[off] ** 2, 0);
        near(sum / reach ** 2, (each * arms.length) / 2, 1e-12);
      }
    }
  });

  it('turns with least effort: 1/f for a unit of torque as the pseudo-inverse of the arms has it (computed for each layout)', () => {
    // The hardest-working motor's share of a unit of torque, arms of 1 m.
    for (const [layout, roll, pitch] of [
      ['quad-x', 0.353_55, 0.353_55],
      ['quad-plus', 0.5, 0.5],
      ['hex-x', 0.333_33, 0.288_68],
      ['octo-x', 0.230_97, 0.230_97],
    ] as const) {
      const arms = motorArms(layout, 2, null) ?? [];
      near(1 / mixedArm(arms.map(({ aside }) => aside)), roll, 1e-4);
      near(1 / mixedArm(arms.map(({ ahead }) => ahead)), pitch, 1e-4);
    }
    const y6 = motorArms('y6', Math.sqrt(3), null) ?? [];
    near(1 / (2 * mixedArm(y6.map(({ aside }) => aside))), 0.288_68, 1e-4);
    near(1 / (2 * mixedArm(y6.map(({ ahead }) => ahead))), 0.333_33, 1e-4);
  });

  it('a wide frame has the leverage of its sides: 2 : 1 for twice as wide as long (plane geometry)', () => {
    const arms = motorArms('quad-wide', 1, 2) ?? [];
    near(mixedArm(arms.map(({ aside }) => aside)) / mixedArm(arms.map(({ ahead }) => ahead)), 2, 1e-12);
    near(Math.hypot(arms[0]?.ahead ?? 0, arms[0]?.aside ?? 0), 0.5, 1e-12);
  });

  it('one propeller above another gives 0.906, 0.876, 0.848 of the thrust at factors of 1.16, 1.22, 1.28 (momentum theory)', () => {
    near(coaxialThrust(coaxialFactors.low), 0.905_79, 1e-4);
    near(coaxialThrust(coaxialFactors.likely), 0.875_84, 1e-4);
    near(coaxialThrust(coaxialFactors.high), 0.848_26, 1e-4);
    near((2 + (Math.sqrt(17) - 3) / 2) / 2, coaxialFactors.high, 1e-3);
  });
});
