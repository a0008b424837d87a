import { strict as assert } from 'node:assert';
import { type Plan, plans } from '../../support/listing-shapes/generate';
import { wayFaults } from '../../support/listing-shapes/way-faults';
import { target } from '../target';

/** Listings of boards of nobody, there and back. */
export const wholeWay = target<Plan>(
  {
    name: 'whole-way',
    share: 1,
    holds: 'a listing that nobody has seen is learned, written as it stands, and each change is found',
  },
  plans(),
  async (plan) => {
    assert.deepEqual((await wayFaults(plan)) ?? [], []);
  },
);
