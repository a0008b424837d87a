import type {
  LogMessageParams,
  MessageStrategy,
  MessageWriter,
  NotificationMessage,
  RequestMessage,
  ResponseMessage,
} from 'vscode-languageserver-protocol';
import { ErrorCodes, LogMessageNotification, Message, MessageType } from '../library';
import { paramsFault } from '../requests/table';

type Next = Parameters<MessageStrategy['handleMessage']>[1];
type Dealt = ReturnType<MessageStrategy['handleMessage']>;

/**
 * Lets a message through when its time is and its parameters are of the right form. Its time is between the answer
 * to `initialize` and `shutdown`. Otherwise a request is refused, with the code that the protocol has for it, and a
 * notification is left aside.
 */
export class LifeCycle implements MessageStrategy {
  private phase: 'new' | 'starting' | 'running' | 'shut-down' = 'new';
  /** Resolves once `initialize` has been answered: what came too early is dealt with then, in its order. */
  private started: Promise<void> = Promise.resolve();

  constructor(private readonly writer: MessageWriter) {}

  /** Whether the client said that it will end the server. */
  get isShutDown(): boolean {
    return this.phase === 'shut-down';
  }

  handleMessage(message: Message, next: Next): Dealt {
    if (Message.isRequest(message)) return this.request(message, next);
    if (Message.isNotification(message)) return this.notification(message, next);
    return next(message);
  }

  private request(message: RequestMessage, next: Next): Dealt {
    const isInitialize = message.method === 'initialize';
    if (this.phase === 'shut-down')
      return this.refuse(message, ErrorCodes.InvalidRequest, 'The server has been shut down.');
    if (this.phase === 'new' && !isInitialize)
      return this.refuse(message, ErrorCodes.ServerNotInitialized, 'The first request is initialize.');
    if (isInitialize && this.phase !== 'new')
      return this.refuse(message, ErrorCodes.InvalidRequest, 'The server has been initialized already.');
    if (this.phase === 'starting') return this.started.then(() => this.request(message, next));
    const fault = paramsFault(message.method, message.params);
    if (fault !== null) return this.refuse(message, ErrorCodes.InvalidParams, `${message.method}: ${fault}.`);
    if (isInitialize) return this.start(message, next);
    if (message.method === 'shutdown') this.phase = 'shut-down';
    return next(message);
  }

  private notification(message: NotificationMessage, next: Next): Dealt {
    // Asks for an end, or for no answer: that is always in time.
    if (message.method === 'exit' || message.method === '$/cancelRequest') return next(message);
    if (this.phase === 'starting') return this.started.then(() => this.notification(message, next));
    if (this.phase !== 'running') return undefined;
    const fault = paramsFault(message.method, message.params);
    return fault === null ? next(message) : this.log(`${message.method} was left aside: ${fault}`);
  }

  private start(message: RequestMessage, next: Next): Dealt {
    this.phase = 'starting';
    this.started = Promise.resolve(next(message)).then(() => {
      this.phase = 'running';
    });
    return this.started;
  }

  /** One line in the client's log. */
  private log(message: string): Promise<void> {
    const params: LogMessageParams = { type: MessageType.Warning, message };
    const note = { jsonrpc: '2.0', method: LogMessageNotification.method, params };
    return this.writer.write(note);
  }

  private refuse({ id }: RequestMessage, code: number, message: string): Promise<void> {
    return this.writer.write(refusal(id, code, message));
  }
}

/** An answer that refuses; `id`: null where it is not known what is refused. */
export function refusal(id: string | number | null, code: number, message: string): ResponseMessage {
  return { jsonrpc: '2.0', id, error: { code, message } };
}
