import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, relative } from 'node:path';
import { parseArgs } from 'node:util';
import { ailing } from './ailing';
import { craftFromScript, scriptAt } from './craft-from-script';
import { csvOf } from './csv';
import { demoRecording, demoRecordingPath } from './demo-recording';
import { layouts } from './layouts';
import { flightOf } from './pilot';
import { Random } from './random';
import { randomRecorder } from './random-craft';
import type { Rows } from './recorder';
import { simulated } from './simulated-flight';
import type { Truth } from './truth';

// `npm run simulate -- --craft my.craft --out flight.csv`: flies a craft by the clock and writes what its board would
// have written down. The first line of the file says that it is simulated; what is true of the flight is printed.
// `npm run simulate -- --demo` makes the demo's recording anew.

const { values } = parseArgs({
  options: {
    demo: { type: 'boolean', default: false },
    craft: { type: 'string' },
    pack: { type: 'string' },
    out: { type: 'string' },
    seconds: { type: 'string', default: '30' },
    rate: { type: 'string', default: '400' },
    seed: { type: 'string', default: '1' },
    layout: { type: 'string', default: 'bracketed' },
    tone: { type: 'string', default: '120' },
  },
});

function numberOf(name: string, text: string, least: number): number {
  const value = Number(text);
  if (Number.isFinite(value) && value >= least) return value;
  throw new Error(`--${name} takes a number from ${least}, not "${text}"`);
}

function needed(name: 'craft' | 'out'): string {
  const value = values[name];
  if (value === undefined) throw new Error(`--${name} is missing: --craft my.craft --out flight.csv`);
  return value;
}

function main(): void {
  if (values.demo) {
    const { bytes, rows, truth } = demoRecording();
    mkdirSync(dirname(demoRecordingPath), { recursive: true });
    writeDown(relative('.', demoRecordingPath), bytes, rows, truth);
    return;
  }
  const layout = layouts.get(values.layout);
  if (layout === undefined)
    throw new Error(`there is no layout ${values.layout}; there are ${[...layouts.keys()].join(', ')}`);
  const [path, out] = [needed('craft'), needed('out')];
  const seed = numberOf('seed', values.seed, 0);
  const seconds = numberOf('seconds', values.seconds, 8);
  const random = new Random(seed);
  const view = scriptAt(path, values.pack ?? null);
  const craft = ailing(craftFromScript(view), numberOf('tone', values.tone, 1), random);
  const acts = flightOf(seconds, 0.8, random);
  const recorder = randomRecorder(craft.board.gyroRate, numberOf('rate', values.rate, 10), seconds, random);
  const { rows, truth } = simulated(craft, acts, { ...recorder, gaps: [] }, seed);
  writeDown(out, csvOf(rows, layout), rows, truth);
}

function writeDown(out: string, bytes: Uint8Array, rows: Rows, truth: Truth): void {
  writeFileSync(out, bytes);
  console.log(
    `${out}: ${rows.count} rows, ${Math.round(bytes.length / 1000)} kB. What is true of it, in SI:`,
  );
  console.log(JSON.stringify(truth, null, 2));
}

try {
  main();
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
