import { strict as assert } from 'node:assert';
import { PassThrough } from 'node:stream';
import fc from 'fast-check';
import { FrameReader } from '../../../server/src/lsp/transport/frame-reader';
import { framed, framedText } from '../../support/frames';

/** What a reader makes of pieces of a stream, in order. */
async function read(pieces: readonly Buffer[]): Promise<readonly string[]> {
  const input = new PassThrough();
  const told: string[] = [];
  const reader = new FrameReader(input, {
    onBroken: (why) => told.push(`broken: ${why}`),
    onNoMessage: (code) => told.push(`no message: ${code}`),
    onMessage: () => undefined,
    onEnd: (close) => close(),
  });
  const closed = new Promise<void>((resolve) => reader.onClose(() => resolve()));
  reader.listen((message) => told.push(JSON.stringify(message)));
  for (const piece of pieces) input.write(piece);
  input.end();
  await closed;
  return told;
}

function cut(bytes: Buffer, places: readonly number[]): readonly Buffer[] {
  const cuts = [0, ...places.map((place) => place % (bytes.length + 1)), bytes.length].sort((a, b) => a - b);
  return cuts.slice(1).map((end, index) => bytes.subarray(cuts[index], end));
}

const message = fc.oneof(
  fc.record({ method: fc.string(), params: fc.record({ text: fc.string({ unit: 'binary' }) }) }),
  fc.record({ id: fc.nat(), result: fc.string({ unit: 'grapheme' }) }),
);

describe('the frames of a stream', () => {
  it('are the same messages wherever the stream is cut', () =>
    fc.assert(
      fc.asyncProperty(
        fc.array(message, { maxLength: 6 }),
        fc.array(fc.nat(), { maxLength: 12 }),
        async (messages, places) => {
          const bytes = Buffer.from(messages.map(framed).join(''));
          const sent = messages.map((one) => JSON.stringify({ jsonrpc: '2.0', ...one }));
          assert.deepEqual(await read(cut(bytes, places)), sent);
        },
      ),
      { numRuns: 200 },
    ));

  it('may come byte by byte, and with other fields in the header', async () => {
    const text = '{"jsonrpc":"2.0","method":"é"}';
    const fields = 'Content-Type: application/vscode-jsonrpc; charset="utf-8"\r\nX-Other:\r\n';
    const bytes = Buffer.from(fields + framedText(text).replace('Content-Length', 'content-length'));
    assert.deepEqual(await read([...bytes].map((byte) => Buffer.from([byte]))), [text]);
  });

  it('end with the first that is broken', () =>
    fc.assert(
      fc.asyncProperty(fc.array(fc.nat(), { maxLength: 12 }), async (places) => {
        const good = framed({ method: 'exit' });
        const told = await read(cut(Buffer.from(`${good}Content-Length: x\r\n\r\n${good}`), places));
        assert.deepEqual(told, [
          '{"jsonrpc":"2.0","method":"exit"}',
          'broken: a header has a Content-Length of "x", which is no number of bytes',
        ]);
      }),
      { numRuns: 50 },
    ));

  it('that hold no message are told, and the next is read', async () => {
    const good = framed({ method: 'exit' });
    const bytes = Buffer.from(`${framedText('{')}${framedText('[]')}${good}`);
    assert.deepEqual(await read([bytes]), [
      'no message: -32700',
      'no message: -32600',
      '{"jsonrpc":"2.0","method":"exit"}',
    ]);
  });
});
