import { readdir } from 'node:fs/promises';
import { URI } from 'vscode-uri';
import { type FoundScripts, mostScripts, type Unread } from '../workspace/file-system';
import { codeOf, reasonOf } from './reasons';

/** A folder with more folders in it is no place for scripts alone: the rest is left out. */
const mostFolders = 4000;

/** The craft scripts below a folder; none where there is no such folder. */
export async function scriptsBelow(root: string): Promise<FoundScripts> {
  const scripts: string[] = [];
  const unread: Unread[] = [];
  const folders = [root.replace(/\/$/, '')];
  let next = 0;
  let isCut = false;
  for (; next < folders.length && scripts.length < mostScripts; next += 1) {
    const folder = folders[next] ?? '';
    for (const entry of await entriesOf(folder, unread)) {
      const uri = `${folder}/${encodeURIComponent(entry.name)}`;
      if (entry.isFile() && entry.name.endsWith('.craft')) scripts.push(uri);
      if (!entry.isDirectory() || isLeftOut(entry.name)) continue;
      if (folders.length < mostFolders) folders.push(uri);
      else isCut = true;
    }
  }
  return { scripts, unread, isCut: isCut || next < folders.length };
}

function isLeftOut(name: string): boolean {
  return name.startsWith('.') || name === 'node_modules';
}

/** None of one that is not there; one that may not be looked into is noted. */
async function entriesOf(folder: string, unread: Unread[]) {
  try {
    return await readdir(URI.parse(folder).fsPath, { withFileTypes: true });
  } catch (error) {
    const code = codeOf(error);
    if (code !== 'ENOENT' && code !== 'ENOTDIR') unread.push({ uri: folder, why: reasonOf(error) });
    return [];
  }
}
