import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** What Propsoff is measured against, in a folder beside: none of our files may find its packages in place of our own. */
const folder = join(__dirname, '../installed');

interface Packages {
  readonly packages: Readonly<Record<string, { readonly version?: string; readonly optional?: boolean }>>;
}

/** Installs the peers when they are missing or not those that the lock names. */
export async function ensurePeers(): Promise<void> {
  if (isInstalled()) return;
  process.stderr.write('installing the servers to measure against from the npm registry (about 20 s)\n');
  // Not `npm ci`: the lock names one of the packages for this kind of machine alone.
  execFileSync('npm', ['install', '--no-save'], { cwd: folder, stdio: ['ignore', 'ignore', 'inherit'] });
}

/** The versions that were measured, by the packages' names. */
export function peerVersions(): Readonly<Record<string, string>> {
  const { packages } = read('package-lock.json');
  const wanted = Object.keys((packages[''] as { dependencies?: object } | undefined)?.dependencies ?? {});
  return Object.fromEntries(
    wanted.map((name) => [name, packages[`node_modules/${name}`]?.version ?? 'unknown']),
  );
}

/** Optional packages depend on the machine. */
function isInstalled(): boolean {
  const present = existsSync(join(folder, 'node_modules/.package-lock.json'))
    ? read('node_modules/.package-lock.json').packages
    : {};
  return Object.entries(read('package-lock.json').packages).every(
    ([path, { version, optional }]) =>
      path === '' || (optional === true && present[path] === undefined) || present[path]?.version === version,
  );
}

function read(file: string): Packages {
  return JSON.parse(readFileSync(join(folder, file), 'utf8')) as Packages;
}
