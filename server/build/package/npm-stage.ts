/**
 * Lays out in an empty folder just what the package for npm holds. `npm pack` is pointed at that folder.
 * `tsx server/build/package/npm-stage.ts <folder>`
 */
import { chmodSync, mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { npmFiles, npmManifest } from './npm-contents';

/** Modes are set, so that they do not depend on whose machine it is. */
function write(path: string, content: Buffer | string): void {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, content);
  chmodSync(path, 0o644);
}

const [folder] = process.argv.slice(2);
if (folder === undefined) throw new Error('the folder to lay the package out in is missing');
const root = join(__dirname, '../../..');
for (const [path, content] of npmFiles(root)) write(join(folder, path), content);
write(join(folder, 'package.json'), `${JSON.stringify(npmManifest(root), undefined, 2)}\n`);
