import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { packFile } from '../../server/src/catalog/model/packs';
import { coldCharge, coldResistance } from '../../server/src/physics/cold-cell';
import { parseQuantity } from '../../server/src/units/quantity';
import { near } from '../support/near';

const { cold } = packFile.parse(JSON.parse(readFileSync('schemas/packs.json', 'utf8')));
const rows = cold.charge.map((row) => ({
  ...row,
  temperature: parseQuantity(row.temperature)?.value ?? Number.NaN,
}));
/** J/mol */
const activations = {
  low: 1000 * cold.activation.low,
  likely: 1000 * cold.activation.likely,
  high: 1000 * cold.activation.high,
};

const celsius = (degrees: number) => 273.15 + degrees;

/** What 25 °C have less than the 15 °C that our ratios begin at, by the same law. */
function ratioTo25(degrees: number, activation: number): number {
  const warm = Math.exp((activation / 8.314_463) * (1 / celsius(15) - 1 / celsius(25)));
  return coldResistance(celsius(degrees), celsius(15), activation) * warm;
}

describe('a cold cell', () => {
  it('has by the law of Arrhenius with 20 kJ/mol 1.53, 2.09, 2.93 and 4.20 times the resistance of 25 °C at 10, 0, -10 and -20 °C (the law by hand)', () => {
    for (const [degrees, ratio] of [
      [10, 1.533],
      [0, 2.093],
      [-10, 2.925],
      [-20, 4.196],
    ] as const)
      near(ratioTo25(degrees, 20e3), ratio, 1e-3);
  });

  it('has a resistance between those of cylindrical cells and of phone cells (laboratory tests of six cells, 2024; Linux kernel, ab8500_bmdata.c)', () => {
    for (const [degrees, least, most] of [
      [0, 1.4, 3.3],
      [-10, 1.2, 3],
      [-20, 1.4, 9],
    ] as const) {
      const likely = ratioTo25(degrees, activations.likely);
      assert.ok(likely > least && likely < most, `${likely} at ${degrees}`);
    }
    // Cylindrical cells 1.44 and 1.76 at the start of a load, phone cells 2.97 and 3.97 under a long one.
    for (const [degrees, quick, long] of [
      [-10, 1.44, 2.97],
      [-20, 1.76, 3.97],
    ] as const) {
      assert.ok(ratioTo25(degrees, activations.low) < 1.3 * quick);
      assert.ok(ratioTo25(degrees, activations.high) > long);
    }
  });

  it('gives 80 % (68 to 87) of its charge at -10 °C and 67 % (42 to 77) at -20 °C (the same six cells)', () => {
    for (const [degrees, ...shares] of [
      [-10, 0.68, 0.8, 0.87],
      [-20, 0.42, 0.67, 0.77],
    ] as const) {
      const { low, likely, high } = coldCharge(rows, celsius(degrees));
      for (const [index, share] of [low, likely, high].entries()) near(share, shares[index] ?? 0, 1e-9);
    }
    near(coldCharge(rows, celsius(-15)).likely, 0.735, 1e-9);
  });

  it('is as it is known from 15 °C up, and no worse than the coldest that was measured', () => {
    assert.equal(coldResistance(celsius(20), celsius(15), activations.likely), 1);
    assert.deepEqual(coldCharge(rows, celsius(30)), { low: 1, likely: 1, high: 1 });
    assert.equal(coldCharge(rows, celsius(-60)).likely, 0.51);
    assert.equal(coldCharge([], celsius(-60)).likely, 1);
  });
});
