// `npm test`: everything that must hold, from a fresh clone. The last line says how many passed and failed.
// `npm test -- unit page` runs only the suites named. `--raise` lifts the floor of the coverage to what was reached.
//
// Suites run in two lanes side by side: a core waits while an editor in a browser does, and while packages are fetched.
import { spawn } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { needsSetUp, sum } from './suites.mjs';
import { ensureDependencies } from './workbench/dependencies.mjs';
import { atExit, PlainError, root, say, scratchFolder } from './workbench/machine.mjs';

/** In each lane one suite after the other: in the first those that need no editor, in the second the longest of all. */
const lanes = [['unit', 'reference', 'coverage', 'protocol'], ['page']];

/** What the lane takes on that is through first, the longest first: both are then done at about the same time. */
const inEither = ['sweeps', 'package', 'web', 'editors', 'workbench', 'project'];

const allSuites = [...lanes.flat(), ...inEither];

const scratch = scratchFolder('test');
const raise = process.argv.includes('--raise');

// Colours are for a terminal; in a log they are noise, and some tools colour whenever they see a CI.
const colours = process.stdout.isTTY ? { FORCE_COLOR: '1' } : { NO_COLOR: '1', FORCE_COLOR: '0' };
const environment = { ...process.env, ...colours, PROPSOFF_RUN: scratch, PROPSOFF_RAISE: raise ? '1' : '' };

/** What suites print that run at the same time: the one that began first as it comes, the others when it has ended. */
class Report {
  #turns = [];

  begin(name) {
    const turn = { kept: [], hasEnded: false };
    this.#turns.push(turn);
    this.#write(turn, `\n=== ${name} ===\n`);
    return {
      write: (text) => this.#write(turn, text),
      end: () => {
        turn.hasEnded = true;
        this.#next();
      },
    };
  }

  #write(turn, text) {
    if (turn === this.#turns[0]) process.stdout.write(text);
    else turn.kept.push(text);
  }

  #next() {
    while (this.#turns[0]?.hasEnded) {
      this.#turns.shift();
      for (const text of this.#turns[0]?.kept.splice(0) ?? []) process.stdout.write(text);
    }
  }
}

const report = new Report();

/** Runs a suite in a process of its own, so that what it prints is told apart; gives its counts. */
async function runSuite(name, ...names) {
  const output = report.begin(name);
  const start = Date.now();
  const code = await new Promise((settle, fail) => {
    const args = [join(root, 'test', 'suites.mjs'), name, ...names];
    const child = spawn(process.execPath, args, { cwd: root, env: environment });
    const callOff = atExit(() => child.kill());
    for (const stream of [child.stdout, child.stderr]) stream.setEncoding('utf8').on('data', output.write);
    child.once('error', fail);
    child.once('close', (ended) => {
      callOff();
      settle(ended);
    });
  });
  output.end();
  return { name, ...countsOf(name, code), seconds: Math.round((Date.now() - start) / 1000) };
}

function countsOf(name, code) {
  const path = join(scratch, `${name}.json`);
  if (existsSync(path)) return JSON.parse(readFileSync(path, 'utf8'));
  return { passed: 0, failed: 1, failedTests: [{ title: name, reason: `it ended with code ${code}` }] };
}

/** Runs all of a list, and takes each off it as it begins, so that two can share one. */
async function runAll(names, results) {
  for (let name = names.shift(); name !== undefined; name = names.shift()) results.push(await runSuite(name));
}

function chosenSuites(names) {
  const unknown = names.find((name) => !allSuites.includes(name));
  if (unknown !== undefined) throw new PlainError(`no suite ${unknown}; there are ${allSuites.join(', ')}`);
  return allSuites.filter((name) => names.length === 0 || names.includes(name));
}

/** Once more at the end, where it is found: the report of the suite itself has long scrolled by. */
function printFailures(results) {
  for (const { name, failedTests = [], triedTwice = [], leftOut = [] } of results) {
    for (const title of leftOut) console.log(`\n${name}: ${title}`);
    for (const { title, reason } of triedTwice)
      console.log(`\n${name}: ${title}\nfailed at first, and was tried once more: ${reason}`);
    for (const { title, reason } of failedTests) console.log(`\n${name}: ${title}\n${reason}`);
  }
}

function printSummary(results) {
  console.log('\nsuite       passed  failed  seconds');
  const order = ['set-up', 'build', ...allSuites];
  const inOrder = results.toSorted((one, other) => order.indexOf(one.name) - order.indexOf(other.name));
  for (const { name, passed, failed, seconds } of inOrder) {
    const [p, f, s] = [passed, failed, seconds].map((number) => `${number}`.padStart(8));
    console.log(`${name.padEnd(10)}${p}${f}${s}${failed > 0 ? '  <- failed' : ''}`);
  }
}

async function main() {
  const start = Date.now();
  const chosen = chosenSuites(process.argv.slice(2).filter((word) => word !== '--raise'));
  const needy = chosen.filter(needsSetUp);
  const settingUp = needy.length > 0 ? runSuite('set-up', ...needy) : undefined;
  await ensureDependencies();
  // Later suites use what is in dist/, so it is built whatever was chosen; old output must not pass for new.
  const results = [await runSuite('build')];
  const setUp = settingUp?.then((counts) => results.push(counts));
  const chosenOf = (names) => names.filter((name) => chosen.includes(name));
  const [plain, inEditors, shared] = [...lanes, inEither].map(chosenOf);
  const lane = async (names) => {
    await runAll(names, results);
    await setUp;
    await runAll(shared, results);
  };
  await Promise.all([lane(plain), Promise.resolve(setUp).then(() => lane(inEditors))]);
  printFailures(results);
  printSummary(results);
  say(`it took ${Math.round((Date.now() - start) / 1000)} s`);
  return sum(results);
}

/** A run that cannot even start is a failure with its reason. */
async function guarded() {
  try {
    return await main();
  } catch (error) {
    say(error instanceof PlainError ? error.message : `${error?.stack ?? error}`);
    return { passed: 0, failed: 1 };
  }
}

const { passed, failed } = await guarded();
rmSync(scratch, { recursive: true, force: true });
console.log(`\n${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 || passed === 0 ? 1 : 0;
