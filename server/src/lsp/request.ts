import { type CancellationToken, LSPErrorCodes, ResponseError } from 'vscode-languageserver';
import type { Snapshot } from '../features/snapshot';
import type { Session } from './session';

/** Where a request is about one script. */
interface About {
  readonly textDocument: { readonly uri: string };
}

/** What a handler gets besides the client's parameters. */
export interface Context {
  readonly session: Session;
  readonly snapshot: Snapshot;
}

/**
 * Every request about a script goes through here: it finds the script as it stands, answers null when it is
 * not open, stops when the client has lost interest, and turns a failure into one answer for that request.
 */
export function answering<P extends About, R>(
  session: Session,
  onFault: (what: string, error: unknown) => void,
  name: string,
  answer: (context: Context, params: P) => R,
): (params: P, token: CancellationToken) => R | null | ResponseError<void> {
  return (params, token) => {
    if (token.isCancellationRequested) {
      return new ResponseError(LSPErrorCodes.RequestCancelled, 'The request was cancelled.');
    }
    const snapshot = session.snapshot(params.textDocument.uri);
    if (snapshot === undefined) return null;
    try {
      return answer({ session, snapshot }, params);
    } catch (error) {
      onFault(name, error);
      return new ResponseError(LSPErrorCodes.RequestFailed, `${name} failed; the log has the reason.`);
    }
  };
}
