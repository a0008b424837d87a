import * as vscode from 'vscode';

const most = 500;
const deepest = 8;

/** The craft scripts of the workspace. */
export async function craftFiles(): Promise<readonly vscode.Uri[]> {
  const folders = vscode.workspace.workspaceFolders ?? [];
  if (folders.every(({ uri }) => isSearchable(uri)))
    return vscode.workspace.findFiles('**/*.craft', '**/node_modules/**', most);
  const found = await Promise.all(folders.map(({ uri }) => below(uri, deepest)));
  return found.flat().slice(0, most);
}

/** Other file systems need not be searchable, and the editor then waits for a search that never comes. */
function isSearchable({ scheme }: vscode.Uri): boolean {
  return scheme === 'file' || scheme === 'vscode-remote';
}

async function below(folder: vscode.Uri, depth: number): Promise<readonly vscode.Uri[]> {
  if (depth === 0) return [];
  const entries = await listed(folder);
  const found = entries.map(async ([name, type]) => {
    const uri = vscode.Uri.joinPath(folder, name);
    if (type === vscode.FileType.Directory) return name === 'node_modules' ? [] : below(uri, depth - 1);
    return name.endsWith('.craft') ? [uri] : [];
  });
  return (await Promise.all(found)).flat();
}

/** A folder that can't be looked into holds nothing that could be offered. */
async function listed(folder: vscode.Uri): Promise<readonly [string, vscode.FileType][]> {
  try {
    return await vscode.workspace.fs.readDirectory(folder);
  } catch {
    return [];
  }
}
