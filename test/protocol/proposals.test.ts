import assert from 'node:assert/strict';
import type { CompletionItem } from 'vscode-languageserver-protocol/node';
import { salesPageRequest } from '../../server/src/lsp/protocol';
import { offered } from '../support/completion';
import { withScratch } from '../support/scratch';
import { ableClient, type TestServer, withServer } from '../support/server';

const labelling = {
  ...ableClient,
  textDocument: {
    ...ableClient.textDocument,
    completion: { completionItem: { snippetSupport: true, labelDetailsSupport: true } },
  },
};

/** What is proposed behind the first `=` of a script. */
async function proposed(server: TestServer, uri: string, text: string): Promise<readonly CompletionItem[]> {
  await server.open(uri, text);
  const line = text.split('\n').findIndex((one) => one.includes('='));
  const character = text.split('\n')[line]?.length ?? 0;
  const items = await offered(server, uri, { line, character });
  await server.close(uri);
  return items;
}

describe('what is proposed for a value', () => {
  it('says why beside its label to a client that shows it there, and as its detail to others', async () => {
    const first = (capabilities: typeof ableClient) =>
      withServer({ capabilities }, (server) => proposed(server, 'file:///a.craft', 'receiver.supply = '));
    const [labelled] = await first(labelling);
    assert.equal(labelled?.label, '5 V');
    assert.match(labelled.labelDetails?.description ?? '', /five-volt rail/);
    assert.equal(labelled.detail, undefined);
    const [plain] = await first(ableClient);
    assert.match(plain?.detail ?? '', /five-volt rail/);
    assert.equal(plain?.labelDetails, undefined);
  });

  it('holds what scripts have that nobody has opened, and says where', async () => {
    const files = {
      'robin.craft': '[receiver]\nsupply = 9 V\n',
      'wren.craft': '[receiver]\nsupply = 9 V\n',
      'faulty.craft': '[receiver]\nsupply = 99 V\n[craft]\nmass = 2 * light\n',
    };
    await withScratch(files, (scratch) =>
      withServer({ folders: [scratch.uri] }, async (server) => {
        const uri = scratch.uriOf('main.craft');
        let used: CompletionItem | undefined;
        // Nobody waits for what is read: each is there when it is there, one of the two before the other.
        while (!used?.detail?.endsWith(' and 1 more')) {
          const items = await proposed(server, uri, '[receiver]\nsupply = ');
          used = items.find(({ label }) => label === '9 V');
          assert.ok(!items.some(({ label }) => label === '99 V'));
        }
        assert.match(used.detail, /^as in (robin|wren)\.craft, line 2 and 1 more$/);
        const masses = await proposed(server, uri, '[craft]\nmass = ');
        assert.deepEqual(
          masses.map(({ label }) => label),
          ['… g'],
        );
      }),
    );
  });
});

describe('what is proposed behind include', () => {
  it('are the scripts that nobody has opened', async () => {
    const files = { 'robin.craft': '[receiver]\nsupply = 9 V\n', 'parts/motors.craft': '' };
    await withScratch(files, (scratch) =>
      withServer({ folders: [scratch.uri] }, async (server) => {
        const uri = scratch.uriOf('main.craft');
        await server.open(uri, 'include "');
        let labels: readonly string[] = [];
        // Nobody waits for what is read: it is there when it is there.
        while (labels.length < 2)
          labels = (await offered(server, uri, { line: 0, character: 9 })).map(({ label }) => label);
        assert.deepEqual(labels, ['robin.craft', 'parts/motors.craft']);
      }),
    );
  });
});

describe('a script from a sales page', () => {
  it('is made of what is told, or says what is wrong with each answer', async () => {
    await withServer({}, async ({ connection }) => {
      const told = { size: '3 in', kv: '3800', cells: '4S', propeller: '' };
      const { faults, text } = await connection.sendRequest(salesPageRequest, told);
      assert.deepEqual(faults, {});
      assert.match(text ?? '', /^kv += {1,2}3800 rpm\/V/m);
      const wrong = await connection.sendRequest(salesPageRequest, { ...told, kv: 'fast', cells: '4-6S' });
      assert.equal(wrong.text, null);
      assert.deepEqual(Object.keys(wrong.faults), ['kv', 'cells']);
    });
  });
});
