import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { clientAbilities } from '../../../server/src/lsp/client-abilities';
import { ownClient } from '../../support/server';

const unable = clientAbilities({});

/** Something of a wrong kind wherever a capability has a value. */
function spoiled(capabilities: unknown, by: unknown): unknown {
  if (typeof capabilities !== 'object' || capabilities === null || Array.isArray(capabilities)) return by;
  return Object.fromEntries(Object.entries(capabilities).map(([name, value]) => [name, spoiled(value, by)]));
}

describe('what a client can do', () => {
  it('is what it says', () => {
    const able = clientAbilities(ownClient);
    assert.equal(able.hoverMarkdown, true);
    assert.equal(able.itemSnippets, true);
    assert.equal(able.own.checked, true);
  });

  it('is nothing where it says so in no form of the protocol', () => {
    // What only has to be there is: the objects around the values are left.
    for (const by of [5, -1, 'yes', null, 'true', 0, {}, [null, 7]])
      assert.deepEqual(clientAbilities(spoiled(ownClient, by)), { ...unable, codeActions: true });
  });

  it('is read from anything', () => {
    fc.assert(fc.property(fc.anything(), (said) => assert.ok(clientAbilities(said).own)));
    for (const said of [null, undefined, 7, [], 'all']) assert.deepEqual(clientAbilities(said), unable);
    assert.deepEqual(clientAbilities({ textDocument: 3, workspace: null, general: [] }), unable);
  });
});
