import { strict as assert } from 'node:assert';
import { readListing } from '../../../../server/src/board/listing/read-listing';

describe('reading a listing', () => {
  it('finds nothing in an empty text', () => {
    assert.deepEqual(readListing('', null).settings, []);
  });
});
