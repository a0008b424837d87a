import { strict as assert } from 'node:assert';
import { programListings } from '../../support/program-listings';

describe('what programs of every kind print', () => {
  it('is at least a dozen of them and a thousand settings', () => {
    const listings = programListings();
    assert.ok(listings.length >= 12);
    assert.ok(listings.reduce((sum, { settings }) => sum + settings.length, 0) > 1000);
  });
});
