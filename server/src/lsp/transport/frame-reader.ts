import type { Readable } from 'node:stream';
import type { DataCallback, Disposable } from 'vscode-languageserver-protocol';
import { AbstractMessageReader, ErrorCodes, Message } from '../library';

/** What becomes of what is no message, and of the end. */
export interface FrameEvents {
  /** The stream can't be read any further: where the next message begins is not known. `why`: the end of a sentence. */
  onBroken(why: string): void;
  /** A frame was whole, but what it holds is no message: the next one may be read. */
  onNoMessage(code: typeof ErrorCodes.ParseError | typeof ErrorCodes.InvalidRequest, why: string): void;
  /** A message came in. */
  onMessage(message: Message): void;
  /** Nothing more comes in. `close`: to be called once what came in has been dealt with. */
  onEnd(close: () => void): void;
}

/** All fields of a header together need no more. */
const longestHeader = 4096;
/** A message longer than this, in bytes, is not read into memory: twice the longest document that editors open. */
const longestMessage = 256 * 1024 * 1024;

const lineEnd = '\r\n';

/**
 * Reads the frames of the protocol from a stream: a header that says how long the message is, an empty line, and the
 * message. What can't be a frame ends the reading at once, rather than to wait for more of it.
 */
export class FrameReader extends AbstractMessageReader {
  private callback: DataCallback = () => undefined;
  /** Of the header that is being read, what is there. */
  private header = '';
  /** The message that is being read, as far as it is there; null between messages. */
  private body: { readonly length: number; missing: number; readonly chunks: Buffer[] } | null = null;
  private isBroken = false;

  constructor(
    private readonly input: Readable,
    private readonly events: FrameEvents,
  ) {
    super();
  }

  listen(callback: DataCallback): Disposable {
    this.callback = callback;
    const take = (chunk: Buffer) => this.take(chunk);
    this.input.on('data', take);
    this.input.on('error', (error) => this.fireError(error));
    // A stream that failed only closes; one that came to its end may stay open.
    this.input.once('end', () => this.events.onEnd(() => this.fireClose()));
    this.input.once('close', () => this.input.readableEnded || this.fireClose());
    return { dispose: () => void this.input.off('data', take) };
  }

  private take(chunk: Buffer): void {
    let rest = chunk;
    while (rest.length > 0 && !this.isBroken) {
      rest = this.body === null ? this.takeHeader(rest) : this.takeBody(rest);
    }
  }

  /** Takes what belongs to the header, and gives the rest. */
  private takeHeader(chunk: Buffer): Buffer {
    const before = this.header.length;
    // Byte for byte: what is not ASCII is reported as such.
    this.header += chunk.toString('latin1', 0, longestHeader + 4);
    const end = this.header.indexOf(lineEnd + lineEnd);
    const said = end < 0 ? this.header : this.header.slice(0, end);
    const fault = headerFault(said, end >= 0);
    if (fault !== null) return this.broken(fault);
    if (end < 0) return chunk.subarray(chunk.length);
    const length = lengthIn(said);
    if (typeof length === 'string') return this.broken(length);
    this.header = '';
    this.body = { length, missing: length, chunks: [] };
    if (length === 0) this.received(Buffer.alloc(0));
    return chunk.subarray(end + 4 - before);
  }

  private takeBody(chunk: Buffer): Buffer {
    const { body } = this;
    if (body === null) return chunk;
    const taken = chunk.subarray(0, body.missing);
    body.chunks.push(taken);
    body.missing -= taken.length;
    if (body.missing === 0) this.received(Buffer.concat(body.chunks, body.length));
    return chunk.subarray(taken.length);
  }

  private received(bytes: Buffer): void {
    this.body = null;
    const message = parsed(bytes);
    if (message === undefined) this.events.onNoMessage(ErrorCodes.ParseError, 'a message is no JSON');
    else if (isMessage(message)) {
      this.events.onMessage(message);
      this.callback(message);
    } else
      this.events.onNoMessage(
        ErrorCodes.InvalidRequest,
        'a message is no request, no notification and no answer',
      );
  }

  private broken(why: string): Buffer {
    this.isBroken = true;
    this.header = '';
    this.events.onBroken(why);
    return Buffer.alloc(0);
  }
}

/** What was sent; undefined: no JSON. */
function parsed(bytes: Buffer): Message | unknown {
  try {
    return JSON.parse(bytes.toString('utf8'));
  } catch {
    return undefined;
  }
}

/** Whether something that was sent has the form of a message. */
function isMessage(value: unknown): value is Message {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
  const message: Message = { jsonrpc: '2.0', ...value };
  if (!Message.isRequest(message) && !Message.isNotification(message)) return Message.isResponse(message);
  return message.method !== '$/cancelRequest' || namesRequest(message.params);
}

/** The library looks for what is to be cancelled without another look. */
function namesRequest(params: unknown): boolean {
  if (typeof params !== 'object' || params === null || !('id' in params)) return false;
  return typeof params.id === 'string' || typeof params.id === 'number';
}

/** What is wrong with a header as far as it is there; null where nothing is, so far. */
function headerFault(said: string, isWhole: boolean): string | null {
  if (said.length > longestHeader) return `a header has more than ${longestHeader} bytes`;
  const lines = said.split(lineEnd);
  const open = isWhole ? undefined : lines.pop();
  const wrong = said === '' ? undefined : lines.find((line) => !/^[!-9;-~]+:[\t -~]*$/.test(line));
  if (wrong !== undefined) return `a header begins with ${shownLine(wrong)}, which is no field`;
  // Half a field may still become one, unless it holds what no field does.
  if (open !== undefined && !/^(?:[!-9;-~]+(?::[\t -~]*)?)?\r?$/.test(open))
    return `a header begins with ${shownLine(open)}, which is no field`;
  return null;
}

/** The length that a header tells; a text says why it tells none. */
function lengthIn(header: string): number | string {
  const fields = header.split(lineEnd).map((line) => {
    const colon = line.indexOf(':');
    return { name: line.slice(0, colon).toLowerCase(), value: line.slice(colon + 1).trim() };
  });
  const type = fields.find(({ name }) => name === 'content-type')?.value ?? '';
  const charset = /charset\s*=\s*"?([^\s;"]*)/i.exec(type)?.[1] ?? 'utf-8';
  if (!/^utf-?8$/i.test(charset)) return `a header says the charset ${shownLine(charset)}; utf-8 is read`;
  const lengths = new Set(fields.filter(({ name }) => name === 'content-length').map(({ value }) => value));
  const [length] = lengths;
  if (length === undefined) return 'a header has no Content-Length';
  if (lengths.size > 1 || !/^\d+$/.test(length))
    return `a header has a Content-Length of ${shownLine([...lengths].join(' and '))}, which is no number of bytes`;
  if (Number(length) > longestMessage)
    return `a header announces ${length} bytes; a message has at most ${longestMessage}`;
  return Number(length);
}

/** What was sent, so that it takes one short line whatever it is. */
function shownLine(text: string): string {
  return JSON.stringify(text.length > 60 ? `${text.slice(0, 60)}…` : text);
}
