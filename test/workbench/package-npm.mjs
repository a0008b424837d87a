// `npm run package:npm`: makes propsoff-<version>.tgz from a fresh clone; `--out <path>` puts it elsewhere. From that file
// `npx --yes ./propsoff-<version>.tgz` runs the command line in a folder that holds it; behind a whole path npm looks for
// a program. The same source gives the same bytes, whoever builds it and when.
import { copyFileSync, readdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ensureDependencies } from './dependencies.mjs';
import { mustRun, reportAndFail, root, say, scratchFolder } from './machine.mjs';
import { wantedPath } from './package.mjs';

/**
 * Packs the programs that are in dist/ with npm. Call `npm run build` before.
 * @returns {Promise<void>} once the package is at `path`.
 */
export async function makeNpmPackage(path) {
  const [folder, packed] = [scratchFolder('npm'), scratchFolder('packed')];
  const tsx = join(root, 'node_modules', 'tsx', 'dist', 'cli.mjs');
  await mustRun(process.execPath, [tsx, join(root, 'server', 'build', 'package', 'npm-stage.ts'), folder]);
  const args = ['pack', '--ignore-scripts', '--offline', '--pack-destination', packed];
  await mustRun('npm', args, { cwd: folder, quiet: true });
  const [name] = readdirSync(packed);
  copyFileSync(join(packed, name), path);
  for (const made of [folder, packed]) rmSync(made, { recursive: true });
}

async function main() {
  const path = wantedPath(process.argv.slice(2), 'tgz');
  await ensureDependencies();
  await mustRun('npm', ['run', '--silent', 'build']);
  await makeNpmPackage(path);
  say(
    `made ${path}, ${Math.round(statSync(path).size / 1024)} KB; try it: npx --yes --package ${path} propsoff --help`,
  );
}

if (process.argv[1] === fileURLToPath(import.meta.url)) main().catch(reportAndFail);
