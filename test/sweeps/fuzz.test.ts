import assert from 'node:assert/strict';
import { shared, targets } from '../fuzz/targets';

/** A small part of `npm run fuzz`, the same in every run. */
const seed = 20_260_514;
const inputs = 5000;
const fewest = 15;

describe('whatever others wrote (F03)', () => {
  for (const [target, share] of shared(inputs, targets))
    it(`${target.name}: ${target.holds}`, async () => {
      const find = await target.run(Math.max(fewest, share), seed);
      assert.equal(find, null, find === null ? '' : `${find.error}\n${find.input}`);
    });
});
