/**
 * Lays out in an empty folder just what the packaged extension holds. The packer is pointed at that folder, so
 * that nothing of the source tree can slip in. `tsx server/build/package/stage.ts <folder>`
 */
import { chmodSync, copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { shippedFiles } from './contents';
import type { Manifest } from './npm-contents';

/** What is said to those who work on the source, and means nothing to an editor. */
const ours = new Set(['private', 'bin', 'files', 'scripts', 'dependencies', 'devDependencies']);

function shippedManifest(manifest: Manifest): Manifest {
  const kept = Object.fromEntries(Object.entries(manifest).filter(([key]) => !ours.has(key)));
  const { vscode } = manifest.engines as Readonly<Record<string, string>>;
  return { ...kept, engines: { vscode } };
}

/** Modes are set, so that they do not depend on whose machine it is. */
function settle(path: string): void {
  chmodSync(path, 0o644);
}

function stage(root: string, folder: string): void {
  const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as Manifest;
  for (const { path, source } of shippedFiles(root, manifest)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    copyFileSync(join(root, source), join(folder, path));
    settle(join(folder, path));
  }
  const shown = join(folder, 'package.json');
  writeFileSync(shown, `${JSON.stringify(shippedManifest(manifest), undefined, 2)}\n`);
  settle(shown);
}

const [folder] = process.argv.slice(2);
if (folder === undefined) throw new Error('the folder to lay the package out in is missing');
stage(join(__dirname, '../../..'), folder);
