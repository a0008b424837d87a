import { strict as assert } from 'node:assert';
import { join } from 'node:path';
import fc from 'fast-check';
import { restored } from '../../../../client/one-page/restored';
import { compacted } from '../../../../server/build/compact';
import { compileCatalog } from '../../../../server/build/compile-catalog';

describe('JSON in its compact form', () => {
  it('is given back as it was', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const json = JSON.stringify(value);
        assert.deepEqual(JSON.parse(restored(compacted(json))), JSON.parse(json));
      }),
    );
    const json = '{"a":["","x"],"b":{"a":"y","toString":"z"},"c":[[{"a":null}],0,true,"w"]}';
    assert.equal(restored(compacted(json)), json);
  });

  it('holds the whole catalogue', () => {
    const json = JSON.stringify(compileCatalog(join(__dirname, '../../../..')).bundle);
    assert.equal(restored(compacted(json)), json);
  });
});
