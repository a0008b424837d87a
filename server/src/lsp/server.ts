import type { Connection, InitializeParams, InitializeResult } from 'vscode-languageserver';
import { checksOf } from '../catalog/catalog';
import type { Bundle } from '../catalog/model/bundle';
import type { OnFault } from '../checks/checker';
import { AdditionFiles } from '../workspace/addition-files';
import { Workspace } from '../workspace/workspace';
import { clientAbilities } from './client-abilities';
import { CheckStories } from './convert/check-stories';
import { chosenEncoding } from './convert/encoding';
import { AdditionDocuments } from './documents/addition-documents';
import { Diagnostics } from './documents/diagnostics';
import { Documents, documentCapabilities } from './documents/documents';
import type { ServerFiles } from './documents/editor-files';
import { Folders } from './documents/folders';
import { WholeWorkspace } from './documents/whole-workspace';
import { WorkspaceFindings } from './documents/workspace-findings';
import { checkedNotification } from './files-protocol';
import { register } from './requests/table';
import { Session } from './session';

/**
 * Serves one client: what its messages are dealt with by is made here, and the table of messages is registered.
 * `checksPage`: the URI of the page on which all checks are explained; null where there is none.
 */
export function serve(
  connection: Connection,
  builtIn: Bundle,
  files: ServerFiles,
  checksPage: () => string | null = () => null,
): void {
  const onFault = onceEach(connection);
  connection.onInitialize(async (params): Promise<InitializeResult> => {
    const roots = rootsOf(params);
    const client = clientAbilities(params.capabilities);
    const { own } = client;
    files.setRoots(roots);
    files.setHandedOver(own.files);
    const additionFiles = new AdditionFiles(builtIn, files);
    if (!files.asksClient) await additionFiles.setRoots(roots);
    const encoding = chosenEncoding(client.positionEncodings);
    let diagnostics: Diagnostics | null = null;
    const workspace = new Workspace({
      catalog: additionFiles.catalog,
      fileSystem: files,
      onAffected: (uris) => diagnostics?.affected(uris),
      onFault,
    });
    const shipped = new Set(checksOf(builtIn).map(({ id }) => id));
    const stories = new CheckStories(client, shipped, checksPage);
    const session = new Session(workspace, client, encoding, stories);
    const onChecked = (uri: string) => {
      if (own.checked) void connection.sendNotification(checkedNotification, { uri });
    };
    diagnostics = new Diagnostics(connection, session, onChecked, onFault);
    const additions = new AdditionDocuments(connection, session, additionFiles, onFault);
    const wholeWorkspace = new WholeWorkspace(connection, session, additions);

    const workspaceFindings = new WorkspaceFindings(connection, session, diagnostics, wholeWorkspace);
    const documents = new Documents(session, diagnostics, workspaceFindings, additions);
    const folders = new Folders(session, files, additions, roots);
    const services = {
      session,
      files,
      diagnostics,
      documents,
      folders,
      additions,
      wholeWorkspace,
      workspaceFindings,
      onFault,
    };
    const capabilities = register(connection, services);
    return {
      serverInfo: { name: 'propsoff' },
      capabilities: { positionEncoding: encoding, ...documentCapabilities, ...capabilities },
    };
  });
  connection.listen();
}

function rootsOf({ workspaceFolders, rootUri }: InitializeParams): readonly string[] {
  const named = Array.isArray(workspaceFolders) ? workspaceFolders.map((folder) => folder?.uri) : [rootUri];
  // A client may send anything.
  return named.filter((uri) => typeof uri === 'string');
}

/** Logs each failing thing once, so that a fault in a rule does not flood the log with every keystroke. */
function onceEach(connection: Connection): OnFault {
  const seen = new Set<string>();
  return (what, error) => {
    if (seen.has(what)) return;
    seen.add(what);
    const detail = error instanceof Error ? (error.stack ?? error.message) : String(error);
    connection.console.error(`${what} failed and is left out where it fails: ${detail}`);
  };
}
