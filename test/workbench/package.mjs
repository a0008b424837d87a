// `npm run package`: makes propsoff-<version>.vsix from a fresh clone; `--out <path>` puts it elsewhere.
// The same source gives the same bytes, whoever builds it and when.
import { existsSync, readFileSync, rmSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ensureDependencies } from './dependencies.mjs';
import { mustRun, PlainError, reportAndFail, root, say, scratchFolder } from './machine.mjs';

const here = join(root, 'test', 'workbench', 'packager');
const packer = join(here, 'node_modules', '@vscode', 'vsce');

/** The first moment that a zip can hold, in a place and a language that are nobody's. */
const sameEverywhere = { SOURCE_DATE_EPOCH: '315532800', TZ: 'UTC', LC_ALL: 'C' };

function versionIn(path) {
  return existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')).version : undefined;
}

/** Installs the packer in a folder of its own if it is not there in the version that is asked for. */
export async function ensurePacker() {
  const wanted = JSON.parse(readFileSync(join(here, 'package.json'), 'utf8')).dependencies['@vscode/vsce'];
  if (versionIn(join(packer, 'package.json')) === wanted) return;
  say('installing the packer from the npm registry (about 10 s)');
  // None of what it would compile or download is needed to pack.
  await mustRun('npm', ['ci', '--ignore-scripts', '--omit=optional'], { cwd: here, quiet: true });
}

/**
 * Packs what is in dist/ and beside it. Call `npm run build` before.
 * @returns {Promise<void>} once the package is at `path`.
 */
export async function makePackage(path) {
  await ensurePacker();
  const folder = scratchFolder('package');
  const env = { ...process.env, ...sameEverywhere };
  const tsx = join(root, 'node_modules', 'tsx', 'dist', 'cli.mjs');
  const stage = join(root, 'server', 'build', 'package', 'stage.ts');
  await mustRun(process.execPath, [tsx, stage, folder], { env });
  const args = ['package', '--no-dependencies', '--allow-missing-repository', '--out', path];
  await mustRun(process.execPath, [join(packer, 'vsce'), ...args], { cwd: folder, env, quiet: true });
  rmSync(folder, { recursive: true });
}

/** Where a package goes: the path behind `--out`, else the root, under its name and version. */
export function wantedPath(args, ending) {
  const { name, version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  const at = args.indexOf('--out');
  if (at < 0) return join(root, `${name}-${version}.${ending}`);
  if (args[at + 1] === undefined) throw new PlainError('--out needs the path of the package to make');
  return resolve(args[at + 1]);
}

async function main() {
  const path = wantedPath(process.argv.slice(2), 'vsix');
  await ensureDependencies();
  await mustRun('npm', ['run', '--silent', 'build']);
  await makePackage(path);
  say(`made ${path}, ${Math.round(statSync(path).size / 1024)} KB`);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) main().catch(reportAndFail);
