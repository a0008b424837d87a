import { strict as assert } from 'node:assert';
import { CancellationTokenSource } from 'vscode-languageserver-protocol/node';
import { inProcessServer } from '../inputs/in-process-server';
import { type Sent, session, uris } from '../inputs/messages';
import { target } from '../target';

/** Refused, cancelled, and overtaken: answers like any other. */
const honest: ReadonlySet<number> = new Set([-32800, -32801, -32803]);
/** Parameters that are none: for a message of a wrong form only. */
const ofWrongForm: ReadonlySet<number> = new Set([...honest, -32602]);

function codeOf(error: unknown): number {
  return typeof error === 'object' && error !== null && 'code' in error ? Number(error.code) : 0;
}

/** Every range of an answer goes forward, wherever in the answer it stands. */
function goesForward(answer: unknown, method: string): void {
  if (typeof answer !== 'object' || answer === null) return;
  if ('start' in answer && 'end' in answer) {
    const [start, end] = [answer.start, answer.end].map(placeOf);
    if (start !== null && end !== null && start !== undefined && end !== undefined)
      assert.ok(
        start.line < end.line || (start.line === end.line && start.character <= end.character),
        `${method}: ${JSON.stringify(answer)}`,
      );
  }
  for (const inner of Object.values(answer)) goesForward(inner, method);
}

function placeOf(value: unknown): { line: number; character: number } | null {
  if (typeof value !== 'object' || value === null || !('line' in value && 'character' in value)) return null;
  const place = { line: Number(value.line), character: Number(value.character) };
  assert.ok(Number.isInteger(place.line) && place.line >= 0 && place.line < 2 ** 31, JSON.stringify(value));
  assert.ok(place.character >= 0 && place.character < 2 ** 31, JSON.stringify(value));
  return place;
}

async function send({ method, isRequest, params, isRight, isCancelled }: Sent): Promise<void> {
  const { client } = await inProcessServer();
  if (!isRequest) return client.sendNotification(method, params);
  const source = new CancellationTokenSource();
  const answer = client.sendRequest(method, params, source.token);
  if (isCancelled) source.cancel();
  try {
    const told: unknown = await answer;
    if (isRight) goesForward(told, method);
  } catch (error) {
    if (!(isRight ? honest : ofWrongForm).has(codeOf(error)))
      throw new Error(`${method} with ${JSON.stringify(params)}`, { cause: error });
  }
}

/** Sessions of a few messages to the server, right ones and wrong ones. */
export const messages = target<readonly Sent[]>(
  {
    name: 'messages',
    share: 5,
    holds: 'every request is answered, a right one without a fault, and the server goes on',
  },
  session,
  async (sent) => {
    const { client, errors } = await inProcessServer();
    errors.length = 0;
    try {
      await Promise.all(sent.map(send));
      await client.sendNotification('textDocument/didOpen', {
        textDocument: { uri: uris[1], languageId: 'craft-script', version: 1, text: 'gyro.rate = 3 ms\n' },
      });
      const summary: unknown = await client.sendRequest('propsoff/summary', {
        textDocument: { uri: uris[1] },
      });
      assert.match(JSON.stringify(summary), /"must-fix":1/, 'the server goes on');
      if (sent.every(({ isRight }) => isRight)) assert.deepEqual(errors, []);
    } finally {
      for (const uri of uris)
        await client.sendNotification('textDocument/didClose', { textDocument: { uri } });
    }
  },
);
