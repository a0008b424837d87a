// How much of the engine the suites `unit` and `reference` run through, held at a floor that only rises.
// `npm run coverage` runs both and this; `npm run coverage -- --raise` lifts the floor to what was reached.
// The rooms lsp, cli and file-system are left out: the protocol suite runs them, but as the bundles that ship.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { transform } from 'esbuild';
import { mustRun, PlainError, root, say } from './workbench/machine.mjs';

const require = createRequire(import.meta.url);
const floorPath = join(dirname(fileURLToPath(import.meta.url)), 'coverage-floor.json');
const reports = join(root, 'dist', 'coverage');
const measures = ['lines', 'branches', 'functions'];

/** Property tests take other ways each time, so the floor stays this much below what a run has reached. */
const slack = 0.3;

/** @returns coverage by file, of all files of the engine, also those that no test has loaded. */
async function report(recorded) {
  mkdirSync(reports, { recursive: true });
  const rooms = ['lsp', 'cli', 'file-system'].flatMap((room) => ['--exclude', `server/src/${room}/**`]);
  const folders = ['--temp-directory', recorded, '--reports-dir', reports];
  const kinds = ['--reporter', 'json-summary', '--reporter', 'html'];
  const args = ['report', '--all', '--include', 'server/src/**/*.ts', ...rooms, ...folders, ...kinds];
  await mustRun(process.execPath, [require.resolve('c8/bin/c8.js'), ...args], { quiet: true });
  const { total: _, ...files } = JSON.parse(readFileSync(join(reports, 'coverage-summary.json'), 'utf8'));
  return Object.entries(files);
}

/** A file of types alone leaves nothing to run, so that nothing of it can be run through. */
async function holdsCode([path]) {
  const { code } = await transform(readFileSync(path, 'utf8'), { loader: 'ts' });
  return code.trim() !== '';
}

function reachedIn(files) {
  const share = (measure) => {
    const add = (key) => files.reduce((sum, [, counts]) => sum + counts[measure][key], 0);
    return Math.floor((1000 * add('covered')) / add('total')) / 10;
  };
  return Object.fromEntries(measures.map((measure) => [measure, share(measure)]));
}

/** Reads the floor. A measure that the file does not name has none. */
function readFloor() {
  return JSON.parse(readFileSync(floorPath, 'utf8'));
}

/** Lifts each measure to what was reached, less the slack; never lowers one. */
export function raised(floor, reached) {
  const lifted = (measure) => Math.floor(10 * (reached[measure] - slack)) / 10;
  return Object.fromEntries(
    measures.map((measure) => [measure, Math.max(floor[measure] ?? 0, lifted(measure))]),
  );
}

/** What is below the floor, as sentences. */
export function belowFloor(floor, reached) {
  return measures
    .filter((measure) => reached[measure] < (floor[measure] ?? 0))
    .map((measure) => `${measure}: ${reached[measure]} %, and the floor is ${floor[measure]} %`);
}

function showLeast(files) {
  const least = files
    .map(([path, { lines }]) => ({ path: relative(root, path), lines: lines.pct }))
    .sort((a, b) => a.lines - b.lines)
    .slice(0, 8);
  for (const { path, lines } of least) console.log(`  ${`${lines}`.padStart(6)} %  ${path}`);
}

/**
 * Reports what the recorded runs went through.
 * @param {string} recorded folder with what V8 recorded
 * @param {{raise: boolean}} options
 * @returns {Promise<readonly string[]>} what is below its floor
 */
export async function checkCoverage(recorded, { raise }) {
  const all = await report(recorded);
  const withCode = await Promise.all(all.map(holdsCode));
  const files = all.filter((_, at) => withCode[at]);
  if (files.length === 0) throw new PlainError('nothing of the engine was recorded');
  const reached = reachedIn(files);
  say(measures.map((measure) => `${measure} ${reached[measure]} %`).join(', '));
  say(`least covered of ${files.length} files (all in ${relative(root, join(reports, 'index.html'))}):`);
  showLeast(files);
  const below = belowFloor(readFloor(), reached);
  for (const sentence of below) say(sentence);
  if (raise) writeFileSync(floorPath, `${JSON.stringify(raised(readFloor(), reached), undefined, 2)}\n`);
  return below;
}
