import { NotificationType, type Position, RequestType } from 'vscode-languageserver-protocol';
import type { Form } from './requests/form';

/**
 * A request of ours, from the client to the server: its name, what its parameters must hold, and as types what it is
 * asked with (`P`) and what it is answered with (`R`). The server answers it by a row in `requests/table.ts`; the
 * client asks with `request`.
 */
export class OwnRequest<P, R> extends RequestType<P, R, void> {
  constructor(
    method: string,
    readonly form: Form<P>,
  ) {
    super(method);
  }
}

/** The same for what asks for no answer. */
export class OwnNotification<P> extends NotificationType<P> {
  constructor(
    method: string,
    readonly form: Form<P>,
  ) {
    super(method);
  }
}

export interface AboutScript {
  readonly textDocument: { readonly uri: string };
}

export interface AboutPlace extends AboutScript {
  readonly position: Position;
}
