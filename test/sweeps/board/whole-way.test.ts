import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { plans } from '../../support/listing-shapes/generate';
import { shapeNames } from '../../support/listing-shapes/shapes';
import { wayFaults } from '../../support/listing-shapes/way-faults';

const seed = 20_310_508;
const each = Math.ceil(300 / shapeNames.length);

describe('a listing that nobody has seen, on its whole way', () => {
  for (const shape of shapeNames) {
    it(`is learned, checked, written, changed and proved: ${shape}`, async () => {
      let gone = 0;
      for (const plan of fc.sample(plans([shape]), { seed, numRuns: each })) {
        const faults = await wayFaults(plan);
        assert.deepEqual(faults ?? [], [], JSON.stringify(plan));
        if (faults !== null) gone += 1;
      }
      assert.ok(gone > each / 2, `only ${gone} of ${each} were read`);
    });
  }
});
