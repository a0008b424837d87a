import assert from 'node:assert/strict';
import { URI } from 'vscode-uri';
import type { openBenchCard as Opening } from '../../../client/src/bench-card';
import { freshWorld, type StubPanel, world } from '../../support/stub-editor';

type Context = Parameters<typeof Opening>[0];
type Client = Parameters<typeof Opening>[1];

/** Checks whose answer changes while the page is still starting. */
function checks() {
  let told: ((uri: URI) => void) | null = null;
  const state = { card: 'the first' };
  const client = {
    state: 'running',
    request: async () => ({ card: state.card, page: '', markdown: '' }),
    onChecked: (listener: (uri: URI) => void) => {
      told = listener;
      return { dispose: () => undefined };
    },
  };
  return { client: client as unknown as Client, state, check: () => told?.(URI.file('/cfg/main.craft')) };
}

async function opened(client: Client): Promise<StubPanel> {
  const { openBenchCard } = require('../../../client/src/bench-card') as { openBenchCard: typeof Opening };
  const context = { extensionUri: URI.file('/ext'), workspaceState: { get: () => undefined } };
  await openBenchCard(context as unknown as Context, client);
  const [panel] = world.panels;
  assert.ok(panel);
  return panel;
}

describe('a page that starts late (J02)', () => {
  beforeEach(() => void freshWorld());

  it('is given what holds by then as soon as it asks, though all that was sent before was lost', async () => {
    const { client, state, check } = checks();
    const panel = await opened(client);
    for (const card of ['the second', 'the third']) {
      state.card = card;
      check();
    }
    await new Promise(setImmediate);
    panel.posted.length = 0; // nobody listened yet
    await panel.say({ kind: 'ready' });
    assert.deepEqual(
      panel.posted.map((message) => [message.kind, message.card]),
      [['card', 'the third']],
    );
  });

  it('follows from then on', async () => {
    const { client, state, check } = checks();
    const panel = await opened(client);
    await panel.say({ kind: 'ready' });
    state.card = 'another';
    check();
    await new Promise(setImmediate);
    assert.equal(panel.posted.at(-1)?.card, 'another');
  });
});
