import type { CancellationToken } from 'vscode-languageserver';
import { LSPErrorCodes, ResponseError } from './library';

/** @throws {ResponseError} when the client has lost interest: the request is answered with that. */
export function stopIfCancelled(token: CancellationToken): void {
  if (token.isCancellationRequested)
    throw new ResponseError(LSPErrorCodes.RequestCancelled, 'The request was cancelled.');
}
