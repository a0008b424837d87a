import assert from 'node:assert/strict';
import { URI } from 'vscode-uri';
import type * as Card from '../../../client/src/bench-card';
import { type CardKept, nothingTaken, withReading } from '../../../server/src/sheet/bench-card/taken';
import { freshWorld, type StubPanel, world } from '../../support/stub-editor';

type Context = Parameters<typeof Card.openBenchCard>[0];
type Client = Parameters<typeof Card.openBenchCard>[1];

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

async function opened(client: Client, workspaceState: object = { get: () => undefined }): Promise<StubPanel> {
  const { openBenchCard } = require('../../../client/src/bench-card') as typeof Card;
  const context = { extensionUri: URI.file('/ext'), workspaceState };
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

  it('is told what was taken elsewhere, and of what is taken on both nothing is lost', async () => {
    const { client } = checks();
    const kept: { taken: CardKept } = { taken: nothingTaken };
    const panel = await opened(client, {
      get: () => kept.taken,
      update: async (_: string, taken: CardKept) => {
        kept.taken = taken;
      },
    });
    const here = withReading(nothingTaken, 'no-short 1', '9');
    await panel.say({ kind: 'taken', before: nothingTaken, taken: here });
    assert.equal(panel.posted.length, 0, 'there is nothing that its page does not know');
    kept.taken = withReading(kept.taken, 'wire done-on', '2026-05-01');
    const { cardElsewhere, cardKey } = require('../../../client/src/bench-card') as typeof Card;
    cardElsewhere.fire(cardKey(URI.file('/cfg/other.craft')));
    assert.equal(panel.posted.length, 0, 'another card is another');
    cardElsewhere.fire(cardKey(URI.file('/cfg/main.craft')));
    assert.deepEqual(panel.posted.at(-1), { kind: 'taken', taken: kept.taken });
    await panel.say({ kind: 'taken', before: here, taken: withReading(here, 'no-short 1', '12') });
    const values = kept.taken.readings.map(({ value }) => value).sort();
    assert.deepEqual(values, ['12', '2026-05-01']);
    assert.deepEqual(panel.posted.at(-1), { kind: 'taken', taken: kept.taken });
  });
});
