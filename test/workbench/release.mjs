// `npm run release`: makes everything to hand out in dist/release, from a commit: the extension, the page, the package
// for npm, what they are made of, notes and checksums. The same commit gives the same bytes. It publishes nothing.
import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { ensureDependencies } from './dependencies.mjs';
import { mustRun, PlainError, reportAndFail, root, run, say } from './machine.mjs';
import { makePackage } from './package.mjs';
import { makeNpmPackage } from './package-npm.mjs';

const folder = join(root, 'dist', 'release');
const tsx = join(root, 'node_modules', 'tsx', 'dist', 'cli.mjs');
const rest = join(root, 'server', 'build', 'release', 'release.ts');

/** What is handed out can be made again by whoever has the commit, and by nobody else. */
function mustBeCommitted() {
  const status = () =>
    execFileSync('git', ['status', '--porcelain'], { cwd: root, encoding: 'utf8', stdio: 'pipe' });
  let changed;
  try {
    changed = status().trimEnd();
  } catch {
    throw new PlainError('there is no Git checkout here: a release is made of a commit');
  }
  if (changed === '') return;
  const names = changed.split('\n');
  const some = names.slice(0, 5).map((line) => line.slice(3));
  const more = names.length > some.length ? ` and ${names.length - some.length} more` : '';
  throw new PlainError(
    `a release is made of a commit, and these are not in one: ${some.join(', ')}${more}. Commit them or put them away`,
  );
}

async function main() {
  const { name, version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  mustBeCommitted();
  await ensureDependencies();
  // It says itself what is missing.
  if ((await run(process.execPath, [tsx, rest])) !== 0) throw new PlainError('nothing was made');
  await mustRun('npm', ['run', '--silent', 'page']);
  mkdirSync(folder, { recursive: true });
  await makePackage(join(folder, `${name}-${version}.vsix`));
  await makeNpmPackage(join(folder, `${name}-${version}.tgz`));
  await mustRun(process.execPath, [tsx, rest, folder]);
  say(`made in ${folder}:`);
  for (const file of readdirSync(folder))
    say(`  ${file}, ${Math.ceil(statSync(join(folder, file)).size / 1024)} KB`);
}

main().catch(reportAndFail);
