import * as vscode from 'vscode';
import type { FoundScripts, Unread } from '../../server/src/lsp/files-protocol';

/** More than this nobody picks from. */
const most = 500;
const deepest = 16;
const leftOut = '**/{.*,node_modules}/**';

/** The craft scripts of the workspace. */
export async function craftFiles(): Promise<readonly vscode.Uri[]> {
  const folders = vscode.workspace.workspaceFolders ?? [];
  const found = await Promise.all(folders.map(({ uri }) => scriptsBelow(uri, most)));
  return found
    .flatMap(({ scripts }) => scripts)
    .slice(0, most)
    .map((uri) => vscode.Uri.parse(uri));
}

/** The craft scripts below a folder; of very many, so many. */
export async function scriptsBelow(folder: vscode.Uri, count: number): Promise<FoundScripts> {
  const unread: Unread[] = [];
  const found = isSearchable(folder)
    ? await vscode.workspace.findFiles(new vscode.RelativePattern(folder, '**/*.craft'), leftOut, count + 1)
    : await below(folder, deepest, unread);
  const scripts = found.slice(0, count).map((uri) => uri.toString());
  return { scripts, unread, isCut: found.length > count };
}

/** Other file systems need not be searchable, and the editor then waits for a search that never comes. */
function isSearchable({ scheme }: vscode.Uri): boolean {
  return scheme === 'file' || scheme === 'vscode-remote';
}

async function below(folder: vscode.Uri, depth: number, unread: Unread[]): Promise<readonly vscode.Uri[]> {
  if (depth === 0) {
    unread.push({ uri: folder.toString(), why: vscode.l10n.t('it lies too deep') });
    return [];
  }
  const found = (await listed(folder, unread)).map(async ([name, type]) => {
    const uri = vscode.Uri.joinPath(folder, name);
    if (type === vscode.FileType.Directory)
      return name === 'node_modules' || name.startsWith('.') ? [] : below(uri, depth - 1, unread);
    return type === vscode.FileType.File && name.endsWith('.craft') ? [uri] : [];
  });
  return (await Promise.all(found)).flat();
}

/** A folder that can't be looked into is noted; one that is not there holds nothing. */
async function listed(folder: vscode.Uri, unread: Unread[]): Promise<readonly [string, vscode.FileType][]> {
  try {
    return await vscode.workspace.fs.readDirectory(folder);
  } catch (error) {
    if (!(error instanceof vscode.FileSystemError && error.code === 'FileNotFound'))
      unread.push({ uri: folder.toString(), why: error instanceof Error ? error.message : String(error) });
    return [];
  }
}
