import {
  AbstractMessageReader,
  AbstractMessageWriter,
  type DataCallback,
  type Disposable,
  Message,
  type MessageReader,
  type MessageWriter,
} from 'vscode-jsonrpc';

/** What is used of a web worker. */
export interface ServerWorker {
  onmessage: ((event: { readonly data: unknown }) => void) | null;
  onerror: ((event: { readonly message?: string }) => void) | null;
  postMessage(message: unknown): void;
  terminate(): void;
}

/** Where it is said why a worker is given up. */
export interface WorkerLog {
  appendLine(text: string): void;
}

/** Runs something later, in milliseconds; gives what keeps it from running. */
export type Later = (run: () => void, delay: number) => () => void;

/**
 * No worker tells that it has stopped, and one that is caught in a loop tells nothing at all. A question that
 * gets no word back for so long, ms, has no one to answer it; no check of any script takes a part of that.
 */
const longestSilence = 30_000;

class WorkerReader extends AbstractMessageReader {
  private take: DataCallback = () => undefined;

  listen(callback: DataCallback): Disposable {
    this.take = callback;
    return { dispose: () => undefined };
  }

  received(message: Message): void {
    this.take(message);
  }

  /** For whom the messages are: the client then starts anew, as it does when a process has ended. */
  ended(): void {
    this.fireClose();
  }
}

class WorkerWriter extends AbstractMessageWriter {
  constructor(private readonly send: (message: Message) => void) {
    super();
  }

  async write(message: Message): Promise<void> {
    this.send(message);
  }

  end(): void {
    // The worker closes itself when it is told to exit.
  }
}

/** What is answered once there is something new may be left unanswered as long as there is nothing. */
function isForNews(message: Message): boolean {
  return Message.isRequest(message) && message.method === 'workspace/diagnostic';
}

/** Questions that wait for an answer, and whether any word comes back. */
class Silence {
  private readonly waiting = new Set<string | number>();
  /** What the worker asked in its turn: while it waits, it may well be silent. */
  private readonly owed = new Set<string | number>();
  private isCounting = false;
  private stop: () => void = () => undefined;

  constructor(
    private readonly later: Later,
    private readonly onTooLong: () => void,
  ) {}

  sent(message: Message): void {
    if (isForNews(message)) return;
    if (Message.isRequest(message) && message.id !== null) this.waiting.add(message.id);
    else if (Message.isResponse(message) && message.id !== null) this.owed.delete(message.id);
    else return;
    if (!this.isCounting) this.restart();
  }

  received(message: Message): void {
    if (Message.isResponse(message) && message.id !== null) this.waiting.delete(message.id);
    if (Message.isRequest(message) && message.id !== null) this.owed.add(message.id);
    this.restart();
  }

  end(): void {
    this.waiting.clear();
    this.stop();
  }

  private restart(): void {
    this.stop();
    this.isCounting = this.waiting.size > 0 && this.owed.size === 0;
    this.stop = this.isCounting ? this.later(this.onTooLong, longestSilence) : () => undefined;
  }
}

/** How the client talks to a worker; it is closed when the worker fails or falls silent. */
export function workerTransports(
  worker: ServerWorker,
  log: WorkerLog,
  later: Later = afterwards,
): { readonly reader: MessageReader; readonly writer: MessageWriter } {
  let hasEnded = false;
  const end = () => {
    hasEnded = true;
    silence.end();
    worker.onmessage = null;
    worker.onerror = null;
    worker.terminate();
    reader.ended();
  };
  const silence = new Silence(later, () => {
    log.appendLine(`the server gave no word for ${longestSilence / 1000} seconds`);
    end();
  });
  const reader = new WorkerReader();
  const writer = new WorkerWriter((message) => {
    if (hasEnded) return;
    silence.sent(message);
    worker.postMessage(message);
  });
  worker.onmessage = ({ data }) => {
    const message = data as Message;
    silence.received(message);
    reader.received(message);
  };
  worker.onerror = ({ message }) => {
    log.appendLine(`the server failed: ${message ?? 'its program could not be loaded'}`);
    end();
  };
  return { reader, writer };
}

function afterwards(run: () => void, delay: number): () => void {
  const timer = setTimeout(run, delay);
  return () => clearTimeout(timer);
}
