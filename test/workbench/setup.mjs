// Sets up the workbench: a whole editor from the npm registry, in this folder's own node_modules.
// Safe to run again at any time: a stamp says what was set up, and nothing is done twice.
import { createHash } from 'node:crypto';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  findProgram,
  installDebianPackages,
  mustRun,
  PlainError,
  reportAndFail,
  run,
  say,
} from './machine.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const modules = join(here, 'node_modules');
const stampPath = join(modules, '.propsoff-workbench');
const outer = join(modules, 'code-server');
const inner = join(outer, 'lib', 'vscode');

/** Raise this when `install` changes, so that what was set up the old way is set up again. */
const recipe = 1;

/** What the stamp must say: another lock, another way of setting up or another Node means doing it again. */
function wantedStamp() {
  const lock = createHash('sha256')
    .update(readFileSync(join(here, 'package-lock.json')))
    .digest('hex');
  return `recipe ${recipe}, lock ${lock}, ${process.platform} ${process.arch}, modules ${process.versions.modules}\n`;
}

function isDone() {
  return existsSync(stampPath) && readFileSync(stampPath, 'utf8') === wantedStamp();
}

/** The few native parts are compiled here, which needs a compiler, make and Python. */
async function ensureCompiler() {
  const needs = [
    ['python3', 'python3'],
    ['make', 'make'],
    ['g++', 'g++'],
  ];
  const missing = needs.filter(([program]) => findProgram(program) === undefined).map(([, name]) => name);
  if (missing.length > 0) await installDebianPackages(missing, `the workbench needs ${missing.join(', ')}`);
}

/** Compile against the headers that came with this Node where there are any, so that none are downloaded. */
function buildEnvironment() {
  const prefix = dirname(dirname(process.execPath));
  const env = { ...process.env, npm_config_build_from_source: 'true' };
  if (existsSync(join(prefix, 'include', 'node', 'node.h'))) env.npm_config_nodedir = prefix;
  return env;
}

/** The terminal's own install script wants a tool that is not there, after the compiling is done. */
async function compileTerminal(env) {
  await run('npm', ['rebuild', 'node-pty'], { cwd: inner, env, silent: true });
  if (!existsSync(join(inner, 'node_modules', 'node-pty', 'build', 'Release', 'pty.node'))) {
    say('the terminal inside the workbench could not be compiled; all else works');
  }
}

/** File search needs a program that the inner package would download; the newer package brings it along. */
async function placeSearchProgram() {
  const require = createRequire(join(here, 'package.json'));
  const name = process.platform === 'win32' ? 'rg.exe' : 'rg';
  const source = require.resolve(`@vscode/ripgrep-${process.platform}-${process.arch}/bin/${name}`);
  const folder = join(inner, 'node_modules', '@vscode', 'ripgrep', 'bin');
  mkdirSync(folder, { recursive: true });
  copyFileSync(source, join(folder, name));
}

async function install() {
  if (process.platform === 'win32') {
    throw new PlainError(
      'this workbench runs on Linux and macOS; on Windows use a desktop editor (PROPSOFF_EDITOR)',
    );
  }
  await ensureCompiler();
  const env = buildEnvironment();
  rmSync(stampPath, { force: true });
  await mustRun('npm', ['ci', '--ignore-scripts'], { cwd: here, env, quiet: true });
  await mustRun('npm', ['install', '--ignore-scripts', '--omit=dev'], { cwd: inner, env, quiet: true });
  say('compiling the native parts of the workbench');
  await mustRun('npm', ['rebuild', 'argon2'], { cwd: here, env, quiet: true });
  await mustRun('npm', ['rebuild', '@vscode/spdlog', 'native-watchdog'], { cwd: inner, env, quiet: true });
  await compileTerminal(env);
  await placeSearchProgram();
  const archive = join(inner, 'node_modules.asar');
  rmSync(archive, { force: true });
  symlinkSync('node_modules', archive);
  writeFileSync(stampPath, wantedStamp());
}

/**
 * Sets the workbench up if it is not yet.
 * @returns {Promise<string>} path of the script that starts its server with Node.
 */
export async function ensureWorkbench() {
  if (!isDone()) {
    say('setting up the workbench in test/workbench/node_modules (once; about a minute, 300 MB)');
    await install();
    say('the workbench is ready');
  }
  return join(outer, 'out', 'node', 'entry.js');
}

async function main() {
  if (isDone()) say('the workbench is already set up');
  await ensureWorkbench();
}

if (process.argv[1] === fileURLToPath(import.meta.url)) main().catch(reportAndFail);
