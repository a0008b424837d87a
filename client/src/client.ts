import type * as vscode from 'vscode';
import type { OwnNotification, OwnRequest } from '../../server/src/lsp/own-message';

/** The language server as what asks it sees it, in whatever the server runs and whoever shows the scripts. */
export interface Client {
  /** `starting` also while the server comes back after a crash; `stopped` when it will not by itself. */
  readonly state: 'starting' | 'running' | 'stopped';
  /** `state` is another one now. */
  readonly onStateChanged: vscode.Event<void>;
  /** A script has been checked again. */
  readonly onChecked: vscode.Event<vscode.Uri>;
  /** A hover has been shown. */
  readonly onHovered: vscode.Event<void>;
  readonly log: ClientLog;
  /** Starts another server, whatever became of the one before: it has stopped, or gives no word any more. */
  startAgain(): Promise<void>;
  /** An answer, or null where there is no server to give one; one that is about to start is waited for. */
  request<P, R>(type: OwnRequest<P, R>, params: P, token?: vscode.CancellationToken): Promise<R | null>;
  /** The same for what takes long: it is told how far it is, from 0 to 1, and with what. */
  requestWithProgress<P extends { readonly workDoneToken?: string | number }, R>(
    type: OwnRequest<P, R>,
    params: P,
    token: vscode.CancellationToken,
    onProgress: (share: number, doing: string) => void,
  ): Promise<R | null>;
  notify<P>(type: OwnNotification<P>, params: P): Promise<void>;
}

/** Resolves once the server answers, or will not by itself. */
export async function settled(client: Pick<Client, 'state' | 'onStateChanged'>): Promise<void> {
  while (client.state === 'starting')
    await new Promise<void>((resolve) => {
      const listening = client.onStateChanged(() => {
        listening.dispose();
        resolve();
      });
    });
}

/** Where the client writes down what nobody needs to see at once. */
export interface ClientLog {
  info(line: string): void;
  show(): void;
}
