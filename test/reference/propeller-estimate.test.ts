import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { inBase } from '../../server/src/catalog/known-parameter';
import type { MeasuredPropeller } from '../../server/src/catalog/model/hardware';
import { estimatePropeller, type Measured, propellerLaw } from '../../server/src/physics/propeller-estimate';
import { studentNinety } from '../../server/src/physics/student';
import { near } from '../support/near';

const { propellers } = JSON.parse(readFileSync('schemas/propellers.json', 'utf8')) as {
  readonly propellers: readonly MeasuredPropeller[];
};
const measured: readonly Measured[] = propellers.map((one) => ({
  ...one,
  diameter: inBase(one.diameter),
  pitch: inBase(one.pitch),
}));

function estimated(asked: Parameters<typeof estimatePropeller>[1], rows = measured) {
  return estimatePropeller(propellerLaw(rows) ?? assert.fail('nothing to estimate from'), asked);
}

/** Whether a measured coefficient lies in the span that was estimated for it. */
function isInside(actual: number, { likely, factor }: { likely: number; factor: number }): boolean {
  return actual >= likely / factor && actual <= likely * factor;
}

/** Share of coefficients that lie in the spans that those of other groups give. */
function coverage(groupOf: (one: Measured, index: number) => number): number {
  const groups = measured.map(groupOf);
  const inside = measured.flatMap((one, index) => {
    const { thrust, power } = estimated(
      one,
      measured.filter((_, other) => groups[other] !== groups[index]),
    );
    return [isInside(one.thrustCoefficient, thrust), isInside(one.powerCoefficient, power)];
  });
  return inside.filter(Boolean).length / inside.length;
}

/**
 * Thrust coefficients of propellers that are not among the measured ones, lengths in inches. The first eight: P. Cao and
 * J. Strawson, 13 motors with five-inch propellers, 2018; the last: D. S. D’Antonio, 1105 and 1108 motors with a
 * two-inch propeller, 2020, its pitch not told.
 */
const others: readonly (readonly [diameter: number, pitch: number, blades: number, thrust: number])[] = [
  [5, 4, 3, 0.138],
  [5, 4.5, 3, 0.161],
  [5, 4.5, 3, 0.144],
  [5, 4, 2, 0.126],
  [5, 4, 4, 0.192],
  [5, 4.5, 2, 0.143],
  [5, 4, 3, 0.149],
  [5, 5.3, 3, 0.172],
  [2, 1.6, 4, 0.33],
];

const inch = 0.0254;

describe('coefficients of a propeller that nobody measured', () => {
  it('more blades raise them as for one shape with 2, 3, 4 blades: thrust 1.27, 1.49; power 1.29, 1.56 (University of Illinois Propeller Data Site, volume 2)', () => {
    const shape = { diameter: 0.127, pitch: 0.095_25 };
    const two = estimated({ ...shape, blades: 2 });
    for (const [blades, thrust, power] of [
      [3, 1.27, 1.29],
      [4, 1.49, 1.56],
    ] as const) {
      const more = estimated({ ...shape, blades });
      near(more.thrust.likely / two.thrust.likely, thrust, 1e-9);
      near(more.power.likely / two.power.likely, power, 1e-9);
    }
  });

  it('beyond what was measured go with a power of the blades, which brings two and four to three within 1 % (the same table)', () => {
    const of = (blades: number) => estimated({ diameter: 0.127, pitch: 0.095_25, blades });
    const two = of(2);
    const law = (by: number, blades: number) => (blades / 2) ** Math.log2(by);
    near(law(1.49, 3), 1.27, 0.01);
    near(law(1.56, 3), 1.29, 0.01);
    for (const blades of [1, 5, 7, 8]) {
      near(of(blades).thrust.likely / two.thrust.likely, law(1.49, blades), 1e-9);
      near(of(blades).power.likely / two.power.likely, law(1.56, blades), 1e-9);
      assert.ok(of(blades).thrust.factor > two.thrust.factor, 'and are the less sure');
    }
  });

  it('lie in their spans for 85 to 95 % of the measured ones, each guessed from the others, and from other makes alone (University of Illinois Propeller Data Site, volume 2)', () => {
    for (const share of [coverage((_, index) => index), coverage(({ make }) => make)])
      assert.ok(share >= 0.85 && share <= 0.95, `${share}`);
  });

  it('lie in their spans for propellers with two, three and four blades that others measured', () => {
    const missed = others.filter(([diameter, pitch, blades, thrust]) => {
      const { thrust: span } = estimated({ diameter: diameter * inch, pitch: pitch * inch, blades });
      return !isInside(thrust, span);
    });
    assert.deepEqual(missed, []);
  });

  it('are the less sure, the further a propeller is from the measured ones', () => {
    const factors = (diameter: number, pitch: number) => {
      const { thrust, power } = estimated({ diameter: diameter * inch, pitch: pitch * inch, blades: 2 });
      return [thrust.factor, power.factor] as const;
    };
    const among = factors(4.5, 3);
    const ways = [
      [factors(8, 5.3), factors(14, 9.3)],
      [factors(2, 1.33), factors(1.2, 0.8)],
      [factors(5, 6), factors(5, 8)],
    ] as const;
    for (const [near, far] of ways) {
      for (const index of [0, 1] as const) {
        assert.ok(near[index] > among[index], `${near[index]} and ${among[index]}`);
        assert.ok(far[index] > near[index], `${far[index]} and ${near[index]}`);
      }
    }
  });

  it('go together: blades that lift more drag more', () => {
    const { correlation } = estimated({ diameter: 5 * inch, pitch: 4 * inch, blades: 3 });
    assert.ok(correlation >= 0.6 && correlation <= 0.78, `${correlation}`);
  });

  it('are not made up of measured ones that do not lie apart', () => {
    const one = measured[0] ?? assert.fail('none is measured');
    assert.equal(propellerLaw([one, one, one, one, one, one]), null);
  });
});

describe("Student's t", () => {
  it('at 95 % is that of any table for 3, 5, 10 and 30 degrees of freedom, within half a percent', () => {
    for (const [freedom, factor] of [
      [3, 2.353],
      [5, 2.015],
      [10, 1.812],
      [30, 1.697],
    ] as const)
      near(studentNinety(freedom), factor, 5e-3);
  });
});
