import type { Transport } from '@codemirror/lsp-client';
import type { CancellationToken } from 'vscode';
import { Disposable } from './host/values';

/** A message of JSON-RPC as it comes in. */
interface Message {
  readonly id?: number | string;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
  readonly error?: { readonly message: string };
}

type WireHandler = (params: never) => unknown;

interface WaitingCall {
  readonly resolve: (result: unknown) => void;
  readonly reject: (error: Error) => void;
}

/** What our own requests are called, beside those of the editor component's client, which counts. */
const own = 'own-';
const methodNotFound = -32601;

/**
 * The connection to the server's worker, for two: the editor component's client of the language server, and ours,
 * which asks for all else and answers what the server asks.
 */
export class Wire implements Transport {
  private worker: Worker | null = null;
  private readonly listeners = new Set<(message: string) => void>();
  private readonly answers = new Map<string, WireHandler>();
  private readonly hearers = new Map<string, (params: never) => void>();
  private readonly waiting = new Map<string, WaitingCall>();
  /** What is sent before there is a worker. */
  private early: unknown[] = [];
  private count = 0;

  /** `onFailed`: the worker has stopped, and why. */
  start(worker: Worker, onFailed: (why: string) => void): void {
    this.worker = worker;
    worker.onmessage = ({ data }: MessageEvent<Message>) => this.received(data);
    worker.onerror = ({ message }) => {
      this.stop();
      onFailed(message);
    };
    for (const message of this.early.splice(0)) worker.postMessage(message);
  }

  stop(): void {
    this.worker?.terminate();
    this.worker = null;
    this.early = [];
    for (const { reject } of this.waiting.values()) reject(new Error('the checks have stopped'));
    this.waiting.clear();
  }

  send(message: string): void {
    this.post(JSON.parse(message));
  }

  subscribe(listener: (message: string) => void): void {
    this.listeners.add(listener);
  }

  unsubscribe(listener: (message: string) => void): void {
    this.listeners.delete(listener);
  }

  async request<R>(method: string, params: unknown, token?: CancellationToken): Promise<R> {
    this.count += 1;
    const id = own + this.count;
    const cancelling = token?.onCancellationRequested(() =>
      this.post({ jsonrpc: '2.0', method: '$/cancelRequest', params: { id } }),
    );
    try {
      return await new Promise<R>((resolve, reject) => {
        this.waiting.set(id, { resolve: (result) => resolve(result as R), reject });
        this.post({ jsonrpc: '2.0', id, method, params });
      });
    } finally {
      cancelling?.dispose();
    }
  }

  notify(method: string, params: unknown): void {
    this.post({ jsonrpc: '2.0', method, params });
  }

  /** What the server asks is answered so. */
  onRequest<P>(type: { readonly method: string }, answer: (params: P) => unknown): Disposable {
    this.answers.set(type.method, answer);
    return new Disposable(() => this.answers.delete(type.method));
  }

  onNotification<P>(type: { readonly method: string }, hear: (params: P) => void): Disposable {
    this.hearers.set(type.method, hear);
    return new Disposable(() => this.hearers.delete(type.method));
  }

  private post(message: unknown): void {
    if (this.worker === null) this.early.push(message);
    else this.worker.postMessage(message);
  }

  private received(message: Message): void {
    const { id, method } = message;
    if (method !== undefined && id !== undefined) void this.answer(id, method, message.params);
    else if (method !== undefined && this.hearers.has(method))
      this.hearers.get(method)?.(message.params as never);
    else if (typeof id === 'string' && id.startsWith(own)) this.settle(id, message);
    else for (const tell of this.listeners) tell(JSON.stringify(message));
  }

  private settle(id: string, { result, error }: Message): void {
    const waiting = this.waiting.get(id);
    this.waiting.delete(id);
    if (error === undefined) waiting?.resolve(result ?? null);
    else waiting?.reject(new Error(error.message));
  }

  private async answer(id: number | string, method: string, params: unknown): Promise<void> {
    const answer = this.answers.get(method);
    if (answer === undefined) {
      this.post({
        jsonrpc: '2.0',
        id,
        error: { code: methodNotFound, message: `${method} is not answered here` },
      });
      return;
    }
    try {
      this.post({ jsonrpc: '2.0', id, result: (await answer(params as never)) ?? null });
    } catch (error) {
      const message = error instanceof Error ? error.message : String(error);
      this.post({ jsonrpc: '2.0', id, error: { code: -32603, message } });
    }
  }
}
