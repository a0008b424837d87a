import { strict as assert } from 'node:assert';

/** A message as it goes over the wire. */
export function framed(message: object): string {
  return framedText(JSON.stringify({ jsonrpc: '2.0', ...message }));
}

/** Any text in a frame. */
export function framedText(text: string): string {
  return `Content-Length: ${Buffer.byteLength(text)}\r\n\r\n${text}`;
}

/** Reads strictly: a header, a blank line, as many bytes as the header says, and so on to the very end. */
export function framesIn(output: Buffer): readonly string[] {
  const messages: string[] = [];
  for (let at = 0; at < output.length; ) {
    const end = output.indexOf('\r\n\r\n', at);
    const header = output.subarray(at, end).toString('latin1');
    const match = /^Content-Length: (\d+)$/.exec(header);
    assert.ok(match, `no header but ${JSON.stringify(header.slice(0, 200))}`);
    const start = end + 4;
    at = start + Number(match[1]);
    assert.ok(at <= output.length, 'the last message is whole');
    messages.push(new TextDecoder('utf-8', { fatal: true }).decode(output.subarray(start, at)));
  }
  return messages;
}
