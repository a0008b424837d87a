// Installs the project's own packages when they are missing or not the ones that the lock names.
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { mustRun, root, say } from './machine.mjs';

function packagesIn(path) {
  return existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')).packages : {};
}

/** Compared by content, since a checkout gives the lock a new date. Optional packages depend on the machine. */
function isInstalled() {
  const wanted = packagesIn(join(root, 'package-lock.json'));
  const present = packagesIn(join(root, 'node_modules', '.package-lock.json'));
  return Object.entries(wanted).every(([path, { version, optional, devOptional }]) => {
    if (path === '' || ((optional || devOptional) && present[path] === undefined)) return true;
    return present[path]?.version === version;
  });
}

/** Runs `npm ci` in the project if it is needed. */
export async function ensureDependencies() {
  if (isInstalled()) return;
  say("installing the project's packages from the npm registry (about 20 s)");
  await mustRun('npm', ['ci'], { quiet: true });
}
