import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { inBase } from '../../server/src/catalog/known-parameter';
import type { MeasuredPropeller } from '../../server/src/catalog/model/hardware';
import { estimatePropeller, type Measured } from '../../server/src/physics/propeller-estimate';
import { near } from '../support/near';

const { propellers } = JSON.parse(readFileSync('schemas/propellers.json', 'utf8')) as {
  readonly propellers: readonly MeasuredPropeller[];
};
const measured: readonly Measured[] = propellers.map((one) => ({
  ...one,
  diameter: inBase(one.diameter),
  pitch: inBase(one.pitch),
}));

describe('coefficients of a propeller that nobody measured', () => {
  it('more blades raise them as for one shape with 2, 3, 4 blades: thrust 1.27, 1.49; power 1.29, 1.56 (University of Illinois Propeller Data Site, volume 2)', () => {
    const shape = { diameter: 0.127, pitch: 0.095_25 };
    const two = estimatePropeller(measured, { ...shape, blades: 2 });
    for (const [blades, thrust, power] of [
      [3, 1.27, 1.29],
      [4, 1.49, 1.56],
    ] as const) {
      const more = estimatePropeller(measured, { ...shape, blades });
      near(more.thrust.likely / two.thrust.likely, thrust, 1e-9);
      near(more.power.likely / two.power.likely, power, 1e-9);
    }
  });

  it('beyond what was measured go with a power of the blades, which brings two and four to three within 1 % (the same table)', () => {
    const of = (blades: number) => estimatePropeller(measured, { diameter: 0.127, pitch: 0.095_25, blades });
    const two = of(2);
    const law = (by: number, blades: number) => (blades / 2) ** Math.log2(by);
    near(law(1.49, 3), 1.27, 0.01);
    near(law(1.56, 3), 1.29, 0.01);
    for (const blades of [1, 5, 7, 8]) {
      near(of(blades).thrust.likely / two.thrust.likely, law(1.49, blades), 1e-9);
      near(of(blades).power.likely / two.power.likely, law(1.56, blades), 1e-9);
      assert.ok(of(blades).thrust.spread > two.thrust.spread, 'and are the less sure');
    }
  });

  it('of each measured one, guessed from the others, lie within two spreads for at least four of five (University of Illinois Propeller Data Site, volume 2)', () => {
    const hits = measured.flatMap((one) => {
      const { thrust, power } = estimatePropeller(
        measured.filter((other) => other !== one),
        one,
      );
      const isNear = (actual: number, { likely, spread }: typeof thrust) =>
        Math.abs(actual / likely - 1) <= 2 * spread;
      return [isNear(one.thrustCoefficient, thrust), isNear(one.powerCoefficient, power)];
    });
    const share = hits.filter(Boolean).length / hits.length;
    assert.ok(share >= 0.8, `${share}`);
  });
});
