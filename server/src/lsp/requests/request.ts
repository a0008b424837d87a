import { type CancellationToken, LSPErrorCodes, ResponseError } from 'vscode-languageserver';
import type { Translation } from '../../board/translation';
import type { Snapshot } from '../../features/snapshot';
import type { BoardDocument } from '../documents/board-documents';
import type { OnServerFault } from '../server';
import type { Session } from '../session';

/** Where a request is about one script. */
interface About {
  readonly textDocument: { readonly uri: string };
}

/** What a handler gets besides the client's parameters. */
export interface Context {
  readonly session: Session;
  readonly snapshot: Snapshot;
}

/** What a handler gets about a board's text. */
export interface BoardContext extends Context {
  readonly board: BoardDocument;
  readonly translation: Translation;
}

/**
 * Every request about a script goes through here: it finds the script as it stands, answers null when it is
 * not open, stops when the client has lost interest, and turns a failure into one answer for that request.
 * `forBoardText`: what answers for a board's text: nothing, the same, or something of its own.
 */
export function answering<P extends About, R>(
  session: Session,
  onFault: OnServerFault,
  name: string,
  answer: (context: Context, params: P) => R,
  forBoardText: 'same' | ((context: BoardContext, params: P) => R) | null = null,
): (params: P, token: CancellationToken) => R | null | ResponseError<void> {
  return (params, token) => {
    session.traffic.noted();
    if (token.isCancellationRequested) {
      return new ResponseError(LSPErrorCodes.RequestCancelled, 'The request was cancelled.');
    }
    const snapshot = session.snapshot(params.textDocument.uri);
    if (snapshot === undefined) return null;
    const board = session.boards.get(params.textDocument.uri);
    try {
      if (board === undefined || forBoardText === 'same') return answer({ session, snapshot }, params);
      const { translation } = board;
      if (translation === null || forBoardText === null) return null;
      return forBoardText({ session, snapshot, board, translation }, params);
    } catch (error) {
      return failed(onFault, name, error);
    }
  };
}

/**
 * The same for what goes out of the editor, or is held against what came back: it is answered once what the script
 * includes has been read, so that nothing is missing in it.
 */
export function answeringInFull<P extends About, R>(
  session: Session,
  onFault: OnServerFault,
  name: string,
  answer: (context: Context, params: P) => R,
): (params: P, token: CancellationToken) => Promise<R | null | ResponseError<void>> {
  const answerNow = answering(session, onFault, name, answer);
  return async (params, token) => {
    await readInFull(session, params.textDocument.uri, token);
    return answerNow(params, token);
  };
}

/** Resolves once what an open script includes has been read, or the client has lost interest. */
export async function readInFull(
  { workspace }: Session,
  uri: string,
  token: CancellationToken,
): Promise<void> {
  // A token that was cancelled before anybody looked at it tells nobody.
  if (token.isCancellationRequested) return;
  const cancelled = new Promise<void>((resolve) => token.onCancellationRequested(() => resolve()));
  await Promise.race([workspace.included(uri), cancelled]);
}

/** What a client is told of a request that failed; the log has the rest. */
export function failed(onFault: OnServerFault, name: string, error: unknown): ResponseError<void> {
  onFault(name, error);
  return new ResponseError(LSPErrorCodes.RequestFailed, `${name} failed; the log has the reason.`);
}
