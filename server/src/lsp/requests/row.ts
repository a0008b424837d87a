import type {
  CancellationToken,
  Connection,
  NotificationType,
  RequestType,
  ServerCapabilities,
} from 'vscode-languageserver';
import type { OnFault } from '../../checks/checker';
import type { FileSystem } from '../../workspace/file-system';
import { stopIfCancelled } from '../cancelled';
import type { ClientAbilities } from '../client-abilities';
import type { AdditionDocuments } from '../documents/addition-documents';
import type { Diagnostics } from '../documents/diagnostics';
import type { Documents } from '../documents/documents';
import type { Folders } from '../documents/folders';
import type { WholeWorkspace } from '../documents/whole-workspace';
import type { WorkspaceFindings } from '../documents/workspace-findings';
import { LSPErrorCodes, ResponseError } from '../library';
import type { OwnNotification, OwnRequest } from '../own-message';
import type { Session } from '../session';
import type { Form } from './form';

/** What handlers of messages work with: one of each for the client that is served. */
export interface Services {
  readonly session: Session;
  readonly files: FileSystem;
  readonly diagnostics: Diagnostics;
  readonly documents: Documents;
  readonly folders: Folders;
  readonly additions: AdditionDocuments;
  readonly wholeWorkspace: WholeWorkspace;
  readonly workspaceFindings: WorkspaceFindings;
  /** Told what failed and how; every fault is contained where it happens. */
  readonly onFault: OnFault;
}

/** What the server offers, as it says at the start; by what the client can do: null where it is not offered. */
export type Capability = ServerCapabilities | ((client: ClientAbilities) => ServerCapabilities | null);

/** A message that the server takes, as a row of the table. */
export interface MessageRow {
  readonly method: string;
  /** What the parameters that are read must hold; a message with others is refused. */
  readonly form: Form<unknown>;
  readonly capability: Capability;
  register(connection: Connection, services: Services): void;
}

/** Answers a request. */
export type RequestHandler<P, R> = (
  services: Services,
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
    register: (connection, services) =>
      connection.onRequest(type.method, (params: P, token: CancellationToken) =>
        answered(type.method, answer, services, params, token),
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
  take: (services: Services, params: P) => void,
): MessageRow {
  return {
    method: type.method,
    form,
    capability: {},
    register: (connection, services) => connection.onNotification(type, (params) => take(services, params)),
  };
}

/** A notification of our own. */
export function ownNotification<P>(
  type: OwnNotification<P>,
  take: (services: Services, params: P) => void,
): MessageRow {
  return notification(type, type.form, take);
}

/** Every request goes through here: a failure becomes one answer for that request, and the log has the reason. */
async function answered<P, R>(
  method: string,
  answer: RequestHandler<P, R>,
  services: Services,
  params: P,
  token: CancellationToken,
): Promise<unknown> {
  services.session.traffic.noted();
  try {
    stopIfCancelled(token);
    return await answer(services, params, token);
  } catch (error) {
    if (error instanceof ResponseError) return error;
    services.onFault(method, error);
    return new ResponseError(LSPErrorCodes.RequestFailed, `${method} failed; the log has the reason.`);
  }
}
