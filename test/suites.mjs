// What each suite of `npm test` does, and what it needs of the machine. `test/run.mjs` starts them, each in a process
// of its own: `node test/suites.mjs <suite>`, or `set-up <suite>...` to fetch what suites need. The counts go to the
// folder that PROPSOFF_RUN names.
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { ensureEditors } from './editors/install.mjs';
import { ensureChromium } from './workbench/chromium.mjs';
import { PlainError, root, run, say } from './workbench/machine.mjs';
import { ensurePacker } from './workbench/package.mjs';
import { ensureWorkbench } from './workbench/setup.mjs';

const folder = process.env.PROPSOFF_RUN ?? '';
const countsPath = join(folder, `counts-${process.pid}.json`);
const recordings = join(folder, 'recordings');

/** @typedef {{ title: string, reason: string }} FailedTest */
/** @typedef {{ passed: number, failed: number, failedTests: FailedTest[], triedTwice?: FailedTest[], leftOut?: string[] }} Counts */

const passedOnce = { passed: 1, failed: 0, failedTests: [] };

/** Something that failed as a whole counts as one test. */
function failedOnce(title, reason) {
  say(`${title}: ${reason}; counted as one failure`);
  return { passed: 0, failed: 1, failedTests: [{ title, reason }] };
}

export function sum(all) {
  const add = (key) => all.reduce((total, counts) => total + counts[key], 0);
  const list = (key) => all.flatMap((counts) => counts[key] ?? []);
  return {
    passed: add('passed'),
    failed: add('failed'),
    failedTests: list('failedTests'),
    triedTwice: list('triedTwice'),
    leftOut: list('leftOut'),
  };
}

/** Runs a command that reports counts in the file PROPSOFF_COUNTS names; silence or a bad end is a failure. */
async function countedRun(program, args, extra = {}) {
  rmSync(countsPath, { force: true });
  const code = await run(program, args, { env: { ...process.env, ...extra, PROPSOFF_COUNTS: countsPath } });
  if (!existsSync(countsPath)) return failedOnce('the run', `no result came back (exit code ${code})`);
  const counts = JSON.parse(readFileSync(countsPath, 'utf8'));
  if (code === 0 || counts.failed > 0) return counts;
  return sum([counts, failedOnce('the run', `exit code ${code} though no test failed`)]);
}

/** A command that passes or fails as a whole counts as one test. */
async function oneTest(title, program, args) {
  const command = [program, ...args].join(' ');
  say(`${title}: ${command}`);
  const code = await run(program, args);
  if (code !== 0) return failedOnce(title, `${command} ended with code ${code}`);
  say(`${title}: passed`);
  return passedOnce;
}

async function build() {
  return oneTest('build', 'npm', ['run', '--silent', 'build']);
}

async function project() {
  const colours = process.env.FORCE_COLOR === '1' ? 'force' : 'off';
  return sum([
    await oneTest('format and lint', 'npx', ['biome', 'ci', `--colors=${colours}`, '.']),
    await oneTest('types', 'npm', ['run', '--silent', 'typecheck']),
    await oneTest('dead code', 'npx', ['knip']),
  ]);
}

function testFilesIn(place) {
  if (!existsSync(place)) return [];
  return readdirSync(place, { recursive: true })
    .filter((name) => name.endsWith('.test.ts'))
    .sort()
    .map((name) => relative(root, join(place, name)));
}

/**
 * Most of what tests run they run a few times, and keep for a moment: a sixth of their time on a processor went into
 * compiling it anew for speed, which only Node 20 is as quick to do, and into collecting what was just made.
 */
const compilingLater = process.versions.node.startsWith('20.') ? ['--interrupt-budget=500000'] : [];
const forTests = [...compilingLater, '--max-semi-space-size=32'];

/** The test files of a folder in one mocha; a folder without any is a failure, for nothing was shown. */
async function mochaSuite(name, longest, extra = {}, options = [], beginsFirst = () => false) {
  const files = testFilesIn(join(root, 'test', name)).sort(
    (one, other) => Number(beginsFirst(other)) - Number(beginsFirst(one)),
  );
  if (files.length === 0) return failedOnce(`test/${name}`, 'has no tests');
  const mocha = join(root, 'node_modules', 'mocha', 'bin', 'mocha.js');
  return countedRun(
    process.execPath,
    [...forTests, mocha, '--timeout', `${longest}`, ...options, ...files],
    extra,
  );
}

/** For suites of many files that need nothing of each other: two files at a time. */
const inPairs = ['--parallel', '--jobs', '2'];

/** A suite in whose run V8 notes which code was run through. */
function recordedSuite(name) {
  const recorded = join(recordings, name);
  mkdirSync(recorded, { recursive: true });
  return mochaSuite(name, 90_000, { NODE_V8_COVERAGE: recorded }, inPairs);
}

/**
 * What goes through very much, each case as any other: hundreds of random craft, edits, listings and flights, every
 * setting, whatever is odd. V8 notes nothing of it: it counts in every loop, and what is run through here the ordinary
 * tests run through as well. The two hundred flights take longest of all, and begin first.
 */
function sweeps() {
  return mochaSuite('sweeps', 180_000, {}, inPairs, (path) => path.includes('flights'));
}

async function coverage() {
  const all = join(recordings, 'all');
  for (const name of ['unit', 'reference']) {
    const recorded = join(recordings, name);
    if (!existsSync(recorded)) throw new PlainError(`coverage needs the suite ${name} in the same run`);
    cpSync(recorded, all, { recursive: true });
  }
  // What it needs is there only once the dependencies are.
  const { checkCoverage } = await import('./coverage.mjs');
  const below = await checkCoverage(all, { raise: process.env.PROPSOFF_RAISE === '1' });
  return below.length === 0 ? passedOnce : failedOnce('coverage', below.join('; '));
}

async function workbench() {
  return countedRun(process.execPath, [join(root, 'test', 'workbench', 'in-editor.mjs')]);
}

async function page() {
  // On a busy machine the editor itself now and then leaves a page empty: a test in it may be tried once more.
  return mochaSuite('workbench/page', 180_000, {}, ['--retries', '1']);
}

/** The editor as a web page alone: tests in its extension host, then what a person sees. */
async function web() {
  return sum([
    await countedRun(process.execPath, [join(root, 'test', 'workbench', 'web', 'in-browser.mjs')]),
    await mochaSuite('workbench/web', 180_000),
  ]);
}

const browserAndEditor = [ensureChromium, ensureWorkbench];

/** Each suite with what it needs of the machine. */
const suites = new Map([
  ['build', { run: build }],
  ['project', { run: project }],
  ['unit', { run: () => recordedSuite('unit') }],
  ['reference', { run: () => recordedSuite('reference') }],
  ['sweeps', { run: sweeps }],
  ['coverage', { run: coverage }],
  // Processes of their own, and answers that race: one may be tried once more, and the end says which was.
  ['protocol', { run: () => mochaSuite('protocol', 180_000, {}, [...inPairs, '--retries', '1']) }],
  [
    'editors',
    {
      run: () => mochaSuite('editors', 60_000),
      needs: [ensureEditors, () => ensureChromium({ whole: true })],
    },
  ],
  ['workbench', { run: workbench, needs: browserAndEditor }],
  ['page', { run: page, needs: browserAndEditor }],
  ['package', { run: () => mochaSuite('package', 180_000), needs: [...browserAndEditor, ensurePacker] }],
  ['web', { run: web, needs: browserAndEditor }],
]);

/** Whether a suite needs more of the machine than Node and the project's packages. */
export function needsSetUp(name) {
  return suites.get(name)?.needs !== undefined;
}

async function ensureNeedsOf(names) {
  const needs = new Set(names.flatMap((name) => suites.get(name)?.needs ?? []));
  for (const ensure of needs) await ensure();
}

function wordsOf(error) {
  return error instanceof PlainError ? error.message : `${error?.stack ?? error}`;
}

/** Fetches what suites need. What can't be had is no failure here: it fails each suite that needs it. */
async function setUp(names) {
  await ensureNeedsOf(names).catch((error) => say(wordsOf(error)));
  return sum([]);
}

/** A suite that cannot even start is a failure with its reason. */
async function suite(name) {
  try {
    await ensureNeedsOf([name]);
    return await suites.get(name).run();
  } catch (error) {
    return failedOnce(name, wordsOf(error));
  }
}

async function main([name, ...names]) {
  const counts = await (name === 'set-up' ? setUp(names) : suite(name));
  writeFileSync(join(folder, `${name}.json`), JSON.stringify(counts));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await main(process.argv.slice(2));
