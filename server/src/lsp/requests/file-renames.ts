import type {
  CancellationToken,
  RenameFile,
  RenameFilesParams,
  TextDocumentEdit,
  WorkspaceEdit,
} from 'vscode-languageserver';
import { boardNameEdits, chosenPathEdits } from '../../additions/named-files';
import { fileName } from '../../craft/include-path';
import type { Script } from '../../craft/script';
import { type FileRename, followRenames, placeAfter } from '../../features/navigation/file-renames';
import { scriptsOf } from '../../features/navigation/named-at';
import { canonicalUri } from '../../workspace/canonical-uri';
import { besideFileOf, recordEndings } from '../../workspace/kept-beside';
import { jsonEdit } from '../convert/json-edit';
import { workspaceEdit } from '../convert/workspace-edit';
import type { Session } from '../session';
import type { Services } from './row';

/** A folder of very many scripts is looked through again only so often while it keeps changing. */
const mostTries = 3;

/** What names files that are to be renamed follows: in all scripts, open or not, and in the files beside them. */
export async function renamesFollowed(
  services: Services,
  { files }: RenameFilesParams,
  token: CancellationToken,
): Promise<WorkspaceEdit | null> {
  const { session, wholeWorkspace, additions } = services;
  const renames = files.map(({ oldUri, newUri }) => ({ from: plain(oldUri), to: plain(newUri) }));
  for (let tries = 1; ; tries += 1) {
    const crafts = await wholeWorkspace.crafts({ about: null, isAwaited: true }, token);
    // Only now the boards of the workspace have been read for sure.
    const boards = additions.boardsAfter((file) => placeAfter(renames, file));
    const scripts = scriptsOf(crafts);
    const own = scripts.filter(({ isBoardText }) => !isBoardText);
    const { files: edited, left } = followRenames(own, renames, boards);
    const edit = workspaceEdit(session, edited);
    const uris = edited.map(({ uri }) => uri);
    // What is not open has no version: it is looked at on the disk once more.
    if (tries < mostTries && (await session.workspace.closed.areOutdated(uris))) continue;
    if (left.length > 0)
      wholeWorkspace.show(leftText(left.map(({ script, line }) => placeText(script, line))));
    return withFiles(session, edit, [
      ...(await besideEdits(session, scripts, boards)),
      ...additions.choiceEdits((text, folder) => chosenPathEdits(text, pathAfter(folder, renames))),
      ...(await recordRenames(session, renames)),
    ]);
  }
}

function plain(uri: string): string {
  return canonicalUri(uri).replace(/\/$/, '');
}

function placeText(script: Script, line: Parameters<Script['lineNumber']>[0]): string {
  return `line ${script.lineNumber(line) + 1} of ${fileName(script.uri)}`;
}

function leftText(places: readonly string[]): string {
  return `What is included there can’t be named by a path from the script any more: ${places.join(', ')}.`;
}

type DocumentChange = TextDocumentEdit | RenameFile;

/** Null where nothing follows. A client that takes no versions takes no renames either, and edits by their files. */
function withFiles(
  session: Session,
  edit: WorkspaceEdit,
  more: readonly DocumentChange[],
): WorkspaceEdit | null {
  if (session.client.versionedEdits) {
    const documentChanges = [...(edit.documentChanges ?? []), ...more];
    return documentChanges.length === 0 ? null : { documentChanges };
  }
  const changes = { ...edit.changes };
  for (const one of more)
    if ('edits' in one)
      changes[one.textDocument.uri] = one.edits.flatMap((each) => ('newText' in each ? [each] : []));
  return Object.keys(changes).length === 0 ? null : { changes };
}

/** Whose board a text is may be said in the file beside it. */
async function besideEdits(
  session: Session,
  scripts: readonly Script[],
  boards: ReadonlyMap<string, string>,
): Promise<readonly TextDocumentEdit[]> {
  if (boards.size === 0) return [];
  const files = scripts.filter(({ isBoardText }) => isBoardText).map(({ uri }) => besideFileOf(uri));
  const edits = files.map(async (uri) => {
    const text = await session.workspace.fileText(uri);
    const found = text === null ? [] : boardNameEdits(text, boards);
    return text === null || found.length === 0
      ? []
      : [jsonEdit({ uri, version: null, text }, found, session.encoding)];
  });
  return (await Promise.all(edits)).flat();
}

/** A path below a folder, where it leads after the renames; undefined where that is the same, or elsewhere. */
function pathAfter(folder: string, renames: readonly FileRename[]): (path: string) => string | undefined {
  return (path) => {
    const uri = canonicalUri(`${folder}/${path.replace(/^\.\//, '').replace(/\/$/, '')}`);
    const after = placeAfter(renames, uri);
    if (after === uri || !after.startsWith(`${folder}/`)) return undefined;
    return after
      .slice(folder.length + 1)
      .split('/')
      .map(fileName)
      .join('/');
  };
}

/** What is kept beside a script or a board's text goes where it goes; a folder takes with it what is in it. */
async function recordRenames(
  session: Session,
  renames: readonly FileRename[],
): Promise<readonly RenameFile[]> {
  if (!session.client.renamesFiles) return [];
  const moving = new Set(renames.map(({ from }) => from));
  const all = renames.map(async ({ from, to }): Promise<RenameFile[]> => {
    if (!/\.(craft|boardtext)$/.test(from)) return [];
    const there = await session.workspace.filesIn(from.slice(0, from.lastIndexOf('/')));
    const kept = recordEndings.filter(
      (ending) => there.includes(from + ending) && !moving.has(from + ending),
    );
    return kept.map((ending) => ({
      kind: 'rename',
      oldUri: from + ending,
      newUri: to + ending,
      options: { overwrite: false, ignoreIfExists: true },
    }));
  });
  return (await Promise.all(all)).flat();
}
