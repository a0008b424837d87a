import { cpSync, symlinkSync } from 'node:fs';
import { basename, join } from 'node:path';
import { scratchFolder } from '../workbench/launch.mjs';

const root = join(__dirname, '../..');
const modules = ['node_modules', join('test', 'workbench', 'packager', 'node_modules')];
const notSource = new Set(['node_modules', '.git', 'dist']);

/** The source in another folder, with the packages that are already installed; gone when the run ends. */
export function copyOfSource(): string {
  const copy = join(scratchFolder('elsewhere'), 'a checkout');
  cpSync(root, copy, { recursive: true, filter: (path) => !notSource.has(basename(path)) });
  for (const folder of modules) symlinkSync(join(root, folder), join(copy, folder), 'junction');
  return copy;
}
