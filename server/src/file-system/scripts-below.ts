import { readdir } from 'node:fs/promises';
import { URI } from 'vscode-uri';
import { mostScriptsAround } from '../workspace/file-system';

/** A folder with more folders in it is no place for scripts alone: the rest is left out. */
const mostFolders = 4000;

/** The craft scripts below a folder. Hidden folders, `node_modules` and what links lead to are left out. */
export async function scriptsBelow(root: string): Promise<readonly string[]> {
  const scripts: string[] = [];
  const folders = [root.replace(/\/$/, '')];
  for (let next = 0; next < folders.length && scripts.length < mostScriptsAround; next += 1) {
    const folder = folders[next] ?? '';
    for (const entry of await entriesOf(folder)) {
      const uri = `${folder}/${encodeURIComponent(entry.name)}`;
      if (entry.isFile() && entry.name.endsWith('.craft')) scripts.push(uri);
      if (entry.isDirectory() && !isLeftOut(entry.name) && folders.length < mostFolders) folders.push(uri);
    }
  }
  return scripts;
}

function isLeftOut(name: string): boolean {
  return name.startsWith('.') || name === 'node_modules';
}

/** None where there is no such folder, or it may not be looked into. */
async function entriesOf(folder: string) {
  try {
    return await readdir(URI.parse(folder).fsPath, { withFileTypes: true });
  } catch {
    return [];
  }
}
