import type { Connection, InitializeParams, InitializeResult } from 'vscode-languageserver';
import type { Bundle } from '../catalog/model/bundle';
import { AdditionFiles } from '../workspace/addition-files';
import type { FileSystem } from '../workspace/file-system';
import { Workspace } from '../workspace/workspace';
import { chosenEncoding } from './convert/encoding';
import { AdditionDocuments } from './documents/addition-documents';
import { Diagnostics } from './documents/diagnostics';
import { documentCapabilities, registerDocuments } from './documents/documents';
import { ownAbilities } from './own-abilities';
import { checkedNotification } from './protocol';
import { featureCapabilities, registerFeatures } from './requests/features';
import { registerOnDemand } from './requests/on-demand';
import { registerOwnRequests } from './requests/own-requests';
import { Session } from './session';

/** Told what failed and how; every fault is contained where it happens and logged once. */
export type OnServerFault = (what: string, error: unknown) => void;

/** Files that can learn where the workspace's folders are. */
export interface ServerFiles extends FileSystem {
  setRoots(roots: readonly string[]): void;
  /** Whether the client hands over files: it is not asked before it has said so. */
  setHandedOver(isHandedOver: boolean): void;
  /** Whether the client reads some of them: it may be asked only once it has had its answer to initialize. */
  readonly asksClient: boolean;
}

/** Serves one client. The whole surface of the server: documents, findings, features, own requests. */
export function serve(connection: Connection, builtIn: Bundle, files: ServerFiles): void {
  const onFault = onceEach(connection);
  connection.onInitialize(async (params): Promise<InitializeResult> => {
    const roots = rootsOf(params);
    const client = params.capabilities;
    const own = ownAbilities(client);
    files.setRoots(roots);
    files.setHandedOver(own.files);
    const additionFiles = new AdditionFiles(builtIn, files);
    if (!files.asksClient) await additionFiles.setRoots(roots);
    const encoding = chosenEncoding(client.general?.positionEncodings);
    let diagnostics: Diagnostics | null = null;
    const workspace = new Workspace({
      catalog: additionFiles.catalog,
      fileSystem: files,
      onAffected: (uris) => diagnostics?.affected(uris),
      onFault,
    });
    const session = new Session(workspace, client, encoding);
    const onChecked = (uri: string) => {
      if (own.checked) void connection.sendNotification(checkedNotification, { uri });
    };
    diagnostics = new Diagnostics(connection, session, onChecked, onFault);
    const additions = new AdditionDocuments(connection, session, additionFiles, onFault);
    registerDocuments(connection, session, diagnostics, additions);
    registerFeatures(connection, session, diagnostics, onFault);
    registerOwnRequests(connection, session, diagnostics, onFault);
    registerOnDemand(connection, session, onFault);
    registerFolders(connection, session, files, additions, roots);
    return {
      serverInfo: { name: 'propsoff' },
      capabilities: {
        positionEncoding: encoding,
        ...documentCapabilities,
        ...featureCapabilities(session, diagnostics),
      },
    };
  });
  connection.listen();
}

function registerFolders(
  connection: Connection,
  session: Session,
  files: ServerFiles,
  additions: AdditionDocuments,
  initial: readonly string[],
): void {
  connection.onInitialized(() => {
    if (files.asksClient) additions.setRoots(initial);
    additions.register();
    if (session.client.workspace?.workspaceFolders !== true) return;
    let roots = initial;
    connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
      const gone = new Set(removed.map((folder) => folder.uri));
      roots = [...roots.filter((root) => !gone.has(root)), ...added.map((folder) => folder.uri)];
      files.setRoots(roots);
      session.workspace.rootsChanged();
      additions.setRoots(roots);
    });
  });
}

function rootsOf({ workspaceFolders, rootUri }: InitializeParams): readonly string[] {
  const named = Array.isArray(workspaceFolders) ? workspaceFolders.map((folder) => folder?.uri) : [rootUri];
  // A client may send anything.
  return named.filter((uri) => typeof uri === 'string');
}

/** Logs each failing thing once, so that a fault in a rule does not flood the log with every keystroke. */
function onceEach(connection: Connection): OnServerFault {
  const seen = new Set<string>();
  return (what, error) => {
    if (seen.has(what)) return;
    seen.add(what);
    const detail = error instanceof Error ? (error.stack ?? error.message) : String(error);
    connection.console.error(`${what} failed and is left out where it fails: ${detail}`);
  };
}
