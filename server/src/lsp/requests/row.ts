import type {
  CancellationToken,
  Connection,
  NotificationType,
  ProgressToken,
  RequestType,
  ServerCapabilities,
} from 'vscode-languageserver';
import type { BoardLayer } from '../../board/layer/layer';
import type { OnFault } from '../../checks/checker';
import type { Craft } from '../../craft/craft';
import type { Snapshot } from '../../features/snapshot';
import type { FileSystem } from '../../workspace/file-system';
import { stopIfCancelled } from '../cancelled';
import type { ClientAbilities } from '../client-abilities';
import type { AdditionDocuments } from '../documents/addition-documents';
import type { BoardDocument } from '../documents/board-documents';
import type { Diagnostics } from '../documents/diagnostics';
import type { Documents } from '../documents/documents';
import type { Folders } from '../documents/folders';
import type { WholeWorkspace } from '../documents/whole-workspace';
import type { WorkspaceFindings } from '../documents/workspace-findings';
import { LSPErrorCodes, ResponseError } from '../library';
import type { AboutScript, OwnNotification, OwnRequest } from '../own-message';
import type { Session } from '../session';
import type { Form } from './form';

/** What a client's messages are dealt with by. */
export interface Served {
  readonly session: Session;
  readonly files: FileSystem;
  readonly diagnostics: Diagnostics;
  readonly documents: Documents;
  readonly folders: Folders;
  readonly additions: AdditionDocuments;
  readonly everything: WholeWorkspace;
  readonly workspaceFindings: WorkspaceFindings;
  /** Told what failed and how; every fault is contained where it happens. */
  readonly onFault: OnFault;
}

/** What the server says that it can do, to a client that can do this; null: it is not offered to that one. */
export type Capability = ServerCapabilities | ((client: ClientAbilities) => ServerCapabilities | null);

/** A message that the server takes. */
export interface MessageRow {
  readonly method: string;
  /** What its parameters must hold, of those that are read: it is never answered with others. */
  readonly form: Form<unknown>;
  readonly capability: Capability;
  register(connection: Connection, served: Served): void;
}

/** What answers a request. */
export type RequestHandler<P, R> = (
  served: Served,
  params: P,
  token: CancellationToken,
) => R | ResponseError<void> | Promise<R | ResponseError<void>>;

/** A request of the protocol. */
export function request<P, R, E>(
  type: RequestType<P, R, E>,
  form: Form<unknown>,
  answer: RequestHandler<P, R>,
  capability: Capability = {},
): MessageRow {
  return {
    method: type.method,
    form,
    capability,
    register: (connection, served) =>
      connection.onRequest(type.method, (params: P, token: CancellationToken) =>
        answered(type.method, answer, served, params, token),
      ),
  };
}

/** A request of our own. */
export function ownRequest<P, R>(type: OwnRequest<P, R>, answer: RequestHandler<P, R>): MessageRow {
  return request(type, type.form, answer);
}

/** A notification of the protocol. */
export function notification<P>(
  type: NotificationType<P>,
  form: Form<unknown>,
  take: (served: Served, params: P) => void,
): MessageRow {
  return {
    method: type.method,
    form,
    capability: {},
    register: (connection, served) => connection.onNotification(type, (params) => take(served, params)),
  };
}

/** A notification of our own. */
export function ownNotification<P>(
  type: OwnNotification<P>,
  take: (served: Served, params: P) => void,
): MessageRow {
  return notification(type, type.form, take);
}

/** What is asked about an open script is answered with, besides what the client sent. */
export interface Context {
  readonly session: Session;
  readonly snapshot: Snapshot;
}

/** What is answered from all scripts of the workspace has their crafts as well, the open ones first. */
export interface AcrossContext extends Context {
  readonly crafts: readonly Craft[];
}

/** The same about a board's text. */
export interface BoardContext extends Context {
  readonly board: BoardDocument;
  readonly layer: BoardLayer;
}

/** The answer about a script as it stands; null when it is not open. `R`: also a refusal. */
type AboutScriptAnswer<P, R> = (context: Context, params: P) => R | ResponseError<void>;

/**
 * About a craft script as it stands; null when it is not open. `forBoardText`: what answers about a board's text; null
 * without it.
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

/** What a request says that may be told how far its answer is. */
interface Tracked {
  readonly workDoneToken?: ProgressToken;
}

/** About a craft script and all others of the workspace, open or not: those are read first. */
export function acrossScripts<P, R>(
  answer: (context: AcrossContext, params: P) => R | ResponseError<void>,
): RequestHandler<P & AboutScript & Tracked, R | null> {
  return async (served, params, token) => {
    const context = await contextAcross(served, params, token);
    return context === null || context instanceof ResponseError ? context : answer(context, params);
  };
}

/** Null where there is no such script open; a refusal where it was edited while others were read. */
export async function contextAcross(
  { session, everything }: Served,
  { textDocument: { uri }, workDoneToken }: AboutScript & Tracked,
  token: CancellationToken,
): Promise<AcrossContext | ResponseError<void> | null> {
  const version = session.workspace.get(uri)?.version;
  if (version === undefined || session.boards.get(uri) !== undefined) return null;
  const crafts = await everything.crafts({ about: uri, workDoneToken, isAwaited: true }, token);
  const snapshot = session.snapshot(uri);
  // A place in the text as it was may be another one by now.
  if (snapshot === undefined || session.workspace.get(uri)?.version !== version)
    return new ResponseError(LSPErrorCodes.ContentModified, 'The script was edited meanwhile.');
  return { session, snapshot, crafts };
}

/** About a craft script or a board's text, which is answered about by the script that it comes to. */
export function aboutAnyText<P, R>(
  answer: AboutScriptAnswer<P, R>,
): RequestHandler<P & AboutScript, R | null> {
  return ({ session }, params) => {
    const snapshot = session.snapshot(params.textDocument.uri);
    return snapshot === undefined ? null : answer({ session, snapshot }, params);
  };
}

/**
 * About what goes out of the editor, or is held against what came back: it is answered once what the script includes
 * has been read, so that nothing is missing in it.
 */
export function aboutWholeScript<P, R>(
  answer: AboutScriptAnswer<P, R>,
): RequestHandler<P & AboutScript, R | null> {
  return onceInFull(aboutScript(answer));
}

/** The same about a board's text too. */
export function aboutWholeText<P, R>(
  answer: AboutScriptAnswer<P, R>,
): RequestHandler<P & AboutScript, R | null> {
  return onceInFull(aboutAnyText(answer));
}

/** The same about a board's text too, where a board may be named beside it: its profile is read first. */
export function aboutScriptOnBoard<P extends { readonly board: string | null }, R>(
  answer: AboutScriptAnswer<P, R>,
): RequestHandler<P & AboutScript, R | null> {
  const answerInFull = aboutWholeText(answer);
  return async (served, params, token) => {
    if (params.board !== null) await served.session.workspace.boardRead(params.board);
    return answerInFull(served, params, token);
  };
}

function onceInFull<P extends AboutScript, R>(answerNow: RequestHandler<P, R>): RequestHandler<P, R> {
  return async (served, params, token) => {
    await readInFull(served.session, params.textDocument.uri, token);
    return answerNow(served, params, token);
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

/** Every request goes through here: a failure becomes one answer for that request, and the log has the reason. */
async function answered<P, R>(
  method: string,
  answer: RequestHandler<P, R>,
  served: Served,
  params: P,
  token: CancellationToken,
): Promise<unknown> {
  served.session.traffic.noted();
  try {
    stopIfCancelled(token);
    return await answer(served, params, token);
  } catch (error) {
    if (error instanceof ResponseError) return error;
    served.onFault(method, error);
    return new ResponseError(LSPErrorCodes.RequestFailed, `${method} failed; the log has the reason.`);
  }
}
