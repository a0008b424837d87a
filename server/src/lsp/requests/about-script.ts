import type { CancellationToken, ProgressToken } from 'vscode-languageserver';
import type { BoardLayer } from '../../board/layer/layer';
import type { Craft } from '../../craft/craft';
import type { Snapshot } from '../../features/snapshot';
import { stopIfCancelled } from '../cancelled';
import type { BoardDocument } from '../documents/board-documents';
import { LSPErrorCodes, ResponseError } from '../library';
import type { AboutScript } from '../own-message';
import type { Session } from '../session';
import type { RequestHandler, Services } from './row';

/** What a request about an open script is answered from, besides its parameters. */
export interface ScriptContext {
  readonly session: Session;
  readonly snapshot: Snapshot;
}

/** The same with the crafts of all scripts of the workspace, the open ones first. */
export interface AcrossContext extends ScriptContext {
  readonly crafts: readonly Craft[];
}

/** What a request about an open text of a board is answered from. */
export interface BoardContext extends ScriptContext {
  readonly board: BoardDocument;
  readonly layer: BoardLayer;
}

/** Answers a request about an open script, or refuses it. */
type AboutScriptAnswer<P, R> = (context: ScriptContext, params: P) => R | ResponseError<void>;

/**
 * Finds the open craft script that a request is about; the answer is null when it is not open. `forBoardText` answers
 * about a board's text; without it that answer is null too.
 */
export function aboutScript<P, R>(
  answer: AboutScriptAnswer<P, R>,
  forBoardText: (context: BoardContext, params: P) => R | null = () => null,
): RequestHandler<P & AboutScript, R | null> {
  return ({ session }, params) => {
    const snapshot = session.snapshot(params.textDocument.uri);
    if (snapshot === undefined) return null;
    const board = session.boards.get(params.textDocument.uri);
    if (board === undefined) return answer({ session, snapshot }, params);
    return forBoardText({ session, snapshot, board, layer: board.layer }, params);
  };
}

/** A request whose client may want to see progress. */
interface WithProgress {
  readonly workDoneToken?: ProgressToken;
}

/** As `aboutScript`, with the crafts of all scripts of the workspace, open or not: they are read first. */
export function acrossScripts<P, R>(
  answer: (context: AcrossContext, params: P) => R | ResponseError<void>,
): RequestHandler<P & AboutScript & WithProgress, R | null> {
  return async (services, params, token) => {
    const context = await contextAcross(services, params, token);
    return context === null || context instanceof ResponseError ? context : answer(context, params);
  };
}

/** Null where there is no such script open; a refusal where it was edited while others were read. */
export async function contextAcross(
  { session, wholeWorkspace }: Services,
  { textDocument: { uri }, workDoneToken }: AboutScript & WithProgress,
  token: CancellationToken,
): Promise<AcrossContext | ResponseError<void> | null> {
  const version = session.workspace.get(uri)?.version;
  if (version === undefined || session.boards.get(uri) !== undefined) return null;
  const crafts = await wholeWorkspace.crafts({ about: uri, workDoneToken, isAwaited: true }, token);
  const snapshot = session.snapshot(uri);
  // A place in the text as it was may be another one by now.
  if (snapshot === undefined || session.workspace.get(uri)?.version !== version)
    return new ResponseError(LSPErrorCodes.ContentModified, 'The script was edited meanwhile.');
  return { session, snapshot, crafts };
}

/** Answers about a craft script, and about a board's text from the script that is made of it. */
export function aboutAnyText<P, R>(
  answer: AboutScriptAnswer<P, R>,
): RequestHandler<P & AboutScript, R | null> {
  return ({ session }, params) => {
    const snapshot = session.snapshot(params.textDocument.uri);
    return snapshot === undefined ? null : answer({ session, snapshot }, params);
  };
}

/**
 * Waits until all that the script includes has been read: for what goes out of the editor, or is compared with what came
 * back, nothing may be missing.
 */
export function aboutWholeScript<P, R>(
  answer: AboutScriptAnswer<P, R>,
): RequestHandler<P & AboutScript, R | null> {
  return onceInFull(aboutScript(answer));
}

/** The same, also about a board's text. */
export function aboutWholeText<P, R>(
  answer: AboutScriptAnswer<P, R>,
): RequestHandler<P & AboutScript, R | null> {
  return onceInFull(aboutAnyText(answer));
}

/** The same for a request that may name a board: the board's profile is read first. */
export function aboutScriptOnBoard<P extends { readonly board: string | null }, R>(
  answer: AboutScriptAnswer<P, R>,
): RequestHandler<P & AboutScript, R | null> {
  const answerInFull = aboutWholeText(answer);
  return async (services, params, token) => {
    if (params.board !== null) await services.session.workspace.boardRead(params.board);
    return answerInFull(services, params, token);
  };
}

function onceInFull<P extends AboutScript, R>(answerNow: RequestHandler<P, R>): RequestHandler<P, R> {
  return async (services, params, token) => {
    await readInFull(services.session, params.textDocument.uri, token);
    return answerNow(services, params, token);
  };
}

/**
 * Resolves once what an open script includes has been read.
 * @throws {ResponseError} when the client loses interest before.
 */
export async function readInFull(
  { workspace }: Session,
  uri: string,
  token: CancellationToken,
): Promise<void> {
  stopIfCancelled(token);
  const cancelled = new Promise<void>((resolve) => token.onCancellationRequested(() => resolve()));
  await Promise.race([workspace.included(uri), cancelled]);
  stopIfCancelled(token);
}
