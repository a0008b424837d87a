// `npm test`: everything that must hold, from a fresh clone. The last line says how many passed and failed.
// `npm test -- unit page` runs only the suites named; they stand in the list `suites` below. `--raise` lifts the
// floor of the coverage to what was reached.
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';
import { ensureEditors } from './editors/install.mjs';
import { ensureChromium } from './workbench/chromium.mjs';
import { ensureDependencies } from './workbench/dependencies.mjs';
import { PlainError, root, run, say, scratchFolder } from './workbench/machine.mjs';
import { ensurePacker } from './workbench/package.mjs';
import { ensureWorkbench } from './workbench/setup.mjs';

const scratch = scratchFolder('test');
const countsPath = join(scratch, 'counts.json');
const recordings = join(scratch, 'recordings');
const raise = process.argv.includes('--raise');

// Colours are for a terminal; in a log they are noise, and some tools colour whenever they see a CI.
const plain = !process.stdout.isTTY;
const environment = plain ? { ...process.env, NO_COLOR: '1', FORCE_COLOR: '0' } : process.env;

/** Runs a command that reports counts in the file PROPSOFF_COUNTS names; silence or a bad end is a failure. */
async function countedRun(program, args, extra = {}) {
  rmSync(countsPath, { force: true });
  const code = await run(program, args, { env: { ...environment, ...extra, PROPSOFF_COUNTS: countsPath } });
  if (!existsSync(countsPath)) {
    say(`no result came back (exit code ${code}); counted as one failure`);
    return { passed: 0, failed: 1 };
  }
  const counts = JSON.parse(readFileSync(countsPath, 'utf8'));
  if (code === 0 || counts.failed > 0) return counts;
  say(`exit code ${code} though no test failed; counted as one failure`);
  return { ...counts, failed: 1 };
}

/** A command that passes or fails as a whole counts as one test. */
async function oneTest(title, program, args) {
  say(`${title}: ${[program, ...args].join(' ')}`);
  const failed = (await run(program, args, { env: environment })) === 0 ? 0 : 1;
  say(`${title}: ${failed === 0 ? 'passed' : 'FAILED'}`);
  return { passed: 1 - failed, failed };
}

function sum(all) {
  const add = (key) => all.reduce((total, counts) => total + counts[key], 0);
  const failedTests = all.flatMap((counts) => counts.failedTests ?? []);
  return { passed: add('passed'), failed: add('failed'), failedTests };
}

async function project() {
  return sum([
    await oneTest('format and lint', 'npx', ['biome', 'ci', `--colors=${plain ? 'off' : 'force'}`, '.']),
    await oneTest('types', 'npm', ['run', '--silent', 'typecheck']),
    await oneTest('dead code', 'npx', ['knip']),
  ]);
}

function testFilesIn(folder) {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { recursive: true })
    .filter((name) => name.endsWith('.test.ts'))
    .sort()
    .map((name) => relative(root, join(folder, name)));
}

/** The test files of a folder in one mocha; a folder without any is a failure, for nothing was shown. */
async function mochaSuite(folder, longest, extra = {}, options = []) {
  const files = testFilesIn(join(root, 'test', folder));
  if (files.length === 0) {
    say(`test/${folder} has no tests; counted as one failure`);
    return { passed: 0, failed: 1 };
  }
  const mocha = join(root, 'node_modules', 'mocha', 'bin', 'mocha.js');
  return countedRun(process.execPath, [mocha, '--timeout', `${longest}`, ...options, ...files], extra);
}

/** For suites of many files that need nothing of each other: two files at a time. */
const inPairs = ['--parallel', '--jobs', '2'];

/** A suite in whose run V8 notes which code was run through. */
function recordedSuite(name) {
  const folder = join(recordings, name);
  mkdirSync(folder, { recursive: true });
  return mochaSuite(name, 30_000, { NODE_V8_COVERAGE: folder }, inPairs);
}

async function coverage() {
  const folder = join(recordings, 'all');
  for (const name of ['unit', 'reference']) {
    const recorded = join(recordings, name);
    if (!existsSync(recorded)) throw new PlainError(`coverage needs the suite ${name} in the same run`);
    cpSync(recorded, folder, { recursive: true });
  }
  // What it needs is there only once the dependencies are.
  const { checkCoverage } = await import('./coverage.mjs');
  const holds = await checkCoverage(folder, { raise });
  return { passed: holds ? 1 : 0, failed: holds ? 0 : 1 };
}

async function inEditor() {
  await ensureChromium();
  await ensureWorkbench();
  return countedRun(process.execPath, [join(root, 'test', 'workbench', 'in-editor.mjs')]);
}

async function inPage() {
  await ensureChromium();
  await ensureWorkbench();
  // On a busy machine the editor itself now and then leaves a page empty: a test in it may be tried once more.
  return mochaSuite('workbench/page', 120_000, {}, ['--retries', '1']);
}

async function packaged() {
  await ensureChromium();
  await ensureWorkbench();
  await ensurePacker();
  return mochaSuite('package', 120_000);
}

async function inOtherEditors() {
  await ensureEditors();
  return mochaSuite('editors', 60_000);
}

/** The editor as a web page alone: tests in its extension host, then what a person sees. */
async function inWeb() {
  await ensureChromium();
  await ensureWorkbench();
  return sum([
    await countedRun(process.execPath, [join(root, 'test', 'workbench', 'web', 'in-browser.mjs')]),
    await mochaSuite('workbench/web', 120_000),
  ]);
}

const suites = [
  ['project', project],
  ['unit', () => recordedSuite('unit')],
  ['reference', () => recordedSuite('reference')],
  ['coverage', coverage],
  ['protocol', () => mochaSuite('protocol', 60_000, {}, inPairs)],
  ['editors', inOtherEditors],
  ['workbench', inEditor],
  ['page', inPage],
  ['package', packaged],
  ['web', inWeb],
];

function chosenSuites(names) {
  const unknown = names.find((name) => !suites.some(([known]) => known === name));
  if (unknown !== undefined) {
    throw new PlainError(`no suite ${unknown}; there are ${suites.map(([name]) => name).join(', ')}`);
  }
  return suites.filter(([name]) => names.length === 0 || names.includes(name));
}

/** A step that cannot even start is a failure with its reason, and the next step still runs. */
async function guarded(step) {
  try {
    return await step();
  } catch (error) {
    say(error instanceof PlainError ? error.message : `${error?.stack ?? error}`);
    return { passed: 0, failed: 1 };
  }
}

async function timed(name, step) {
  console.log(`\n=== ${name} ===`);
  const start = Date.now();
  const counts = await guarded(step);
  return { name, ...counts, seconds: Math.round((Date.now() - start) / 1000) };
}

/** Once more at the end, where it is found: the report of the suite itself has long scrolled by. */
function printFailures(results) {
  for (const { name, failedTests = [] } of results) {
    for (const { title, reason } of failedTests) console.log(`\n${name}: ${title}\n${reason}`);
  }
}

function printSummary(results) {
  console.log('\nsuite       passed  failed  seconds');
  for (const { name, passed, failed, seconds } of results) {
    const [p, f, s] = [passed, failed, seconds].map((number) => `${number}`.padStart(8));
    console.log(`${name.padEnd(10)}${p}${f}${s}${failed > 0 ? '  <- failed' : ''}`);
  }
}

async function main() {
  const chosen = chosenSuites(process.argv.slice(2).filter((word) => word !== '--raise'));
  await ensureDependencies();
  // Later suites use what is in dist/, so it is built whatever was chosen; old output must not pass for new.
  const results = [await timed('build', () => oneTest('build', 'npm', ['run', '--silent', 'build']))];
  for (const [name, step] of chosen) results.push(await timed(name, step));
  printFailures(results);
  printSummary(results);
  return sum(results);
}

const { passed, failed } = await guarded(main);
rmSync(scratch, { recursive: true, force: true });
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 || passed === 0 ? 1 : 0;
