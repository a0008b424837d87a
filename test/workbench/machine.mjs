// What the other scripts here ask of the machine: run a program, install a Debian package, find a free port.
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's root folder. */
export const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

/** A failure whose message is all that the person needs: no stack trace. */
export class PlainError extends Error {}

/** Last resort of a script: says why it failed, without a stack trace where the message is all. */
export function reportAndFail(error) {
  console.error(error instanceof PlainError ? `[propsoff] ${error.message}` : error);
  process.exitCode = 1;
}

/** Prints one line that says what is being done. */
export function say(text) {
  console.log(`[propsoff] ${text}`);
}

/** Full path of a program on PATH, or undefined. */
export function findProgram(name) {
  const folders = (process.env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  const endings = process.platform === 'win32' ? ['.cmd', '.exe', ''] : [''];
  for (const folder of folders) {
    for (const ending of endings) {
      const path = join(folder, name + ending);
      if (existsSync(path)) return path;
    }
  }
  return undefined;
}

/**
 * Runs a program to its end, its output shown (or, when quiet, kept and shown only if it fails;
 * when silent, not even then).
 * @returns {Promise<number>} its exit code; 1 if it was ended by a signal.
 */
export function run(program, args, { cwd = root, env = process.env, quiet = false, silent = false } = {}) {
  return new Promise((resolve, reject) => {
    const stdio = quiet || silent ? ['ignore', 'pipe', 'pipe'] : ['ignore', 'inherit', 'inherit'];
    const shell = process.platform === 'win32' && !program.endsWith('.exe');
    const child = spawn(program, args, { cwd, env, stdio, shell });
    const callOff = atExit(() => child.kill());
    const kept = [];
    child.stdout?.on('data', (data) => kept.push(data));
    child.stderr?.on('data', (data) => kept.push(data));
    child.on('error', (error) => reject(new PlainError(`cannot run ${program}: ${error.message}`)));
    child.on('close', (code) => {
      callOff();
      if (quiet && !silent && code !== 0) process.stderr.write(Buffer.concat(kept));
      resolve(code ?? 1);
    });
  });
}

/** Runs a program that must succeed. */
export async function mustRun(program, args, options = {}) {
  const code = await run(program, args, options);
  if (code !== 0) throw new PlainError(`${[program, ...args].join(' ')} ended with code ${code}`);
}

/** Installs Debian packages if this machine allows it; throws a PlainError with the way out if not. */
export async function installDebianPackages(packages, why) {
  const list = packages.join(' ');
  const isRoot = process.getuid?.() === 0;
  if (!isRoot || findProgram('apt-get') === undefined) {
    throw new PlainError(`${why}. Install it first; on Debian: apt-get install ${list}`);
  }
  say(`${why}: installing Debian's ${list} (up to a minute)`);
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  // An old package index names versions that are gone from the mirror, so it is renewed first.
  await mustRun('apt-get', ['update'], { env, quiet: true });
  await mustRun('apt-get', ['install', '-y', '--no-install-recommends', ...packages], { env, quiet: true });
}

/** Whether nothing listens on this loopback port. */
export function portIsFree(port) {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once('error', () => resolve(false));
    probe.listen(port, '127.0.0.1', () => probe.close(() => resolve(true)));
  });
}

/** A loopback port that was free a moment ago. */
export function freePort() {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address();
      probe.close(() => resolve(port));
    });
  });
}

/** What must be undone however this process ends; one set, since a process ends only once. */
const exitTasks = new Set();

let watching = false;

function watchForExit() {
  if (watching) return;
  watching = true;
  process.once('exit', () => {
    for (const task of exitTasks) task();
  });
  for (const name of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.once(name, () => process.exit(1));
}

/** Has a task done when this process ends, on a signal too; gives a function that calls that off. */
export function atExit(task) {
  watchForExit();
  exitTasks.add(task);
  return () => exitTasks.delete(task);
}

/** Makes an empty folder that is gone when this process ends, if nobody removes it before. */
export function scratchFolder(name) {
  const path = mkdtempSync(join(tmpdir(), `propsoff-${name}-`));
  atExit(() => rmSync(path, { recursive: true, force: true }));
  return path;
}

/**
 * Asks again until the answer is truthy, and gives it back.
 * @throws {Error} naming what was waited for, once the deadline (milliseconds from now) is past.
 */
export async function until(what, deadline, ask) {
  const end = Date.now() + deadline;
  for (;;) {
    const answer = await ask();
    if (answer) return answer;
    if (Date.now() > end) throw new Error(`waited ${Math.round(deadline / 1000)} s in vain for ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}
