// One way of reading a recording, in a process of its own whose memory is its own: `node recording-run.js <way> <file>
// <words> <the other reader>`. Prints how long it took, ms, the piece between two turns of others that 99 in 100 are
// shorter than, and the most memory that it held, MB.
import { createReadStream, readFileSync, statSync } from 'node:fs';
import type { RecordingColumns } from '../../server/src/catalog/model/recording-columns';
import { learnTable, readLearnt } from '../../server/src/recording/open-recording';
import type { Recording } from '../../server/src/recording/recording';
import { reportOf } from '../../server/src/recording/report-of';

const [, , way = '', file = '', words = '', reader = ''] = process.argv;

/** How long others had to wait for their turn, ms. */
const pieces: number[] = [];

/** Of the time that was taken, so much was for something else, ms. */
let beside = 0;

async function ours(): Promise<number> {
  return (await read()).time.length;
}

/** What the recording tells, without the time in which it is read. */
async function told(): Promise<number> {
  const start = performance.now();
  const recording = await read();
  beside = performance.now() - start;
  pieces.length = 0;
  const work = reportOf(recording, 1, null, (JSON.parse(words) as RecordingColumns).findings);
  for (let since = performance.now(); work.next().done !== true; since = performance.now())
    pieces.push(performance.now() - since);
  return recording.time.length;
}

async function read(): Promise<Recording> {
  const source = {
    name: file,
    size: statSync(file).size,
    bytes: () => createReadStream(file, { highWaterMark: 1 << 20 }),
  };
  let since = performance.now();
  const pace = {
    turn: () => {
      const now = performance.now();
      pieces.push(now - since);
      since = now;
      return undefined;
    },
  };
  const table = await learnTable(source, [], JSON.parse(words), pace);
  return readLearnt(source, table, pace);
}

function split(): number {
  return readFileSync(file, 'utf8').split('\n').length - 2;
}

/** As its own documents say that numbers of a long file are read: in pieces, each row handed over. */
function papaparse(): Promise<number> {
  const { parse } = require(reader) as {
    parse(stream: NodeJS.ReadableStream, options: object): void;
  };
  const columns = Array.from({ length: 16 }, () => new Float32Array(2_000_000));
  let rows = 0;
  return new Promise((resolve, reject) => {
    parse(createReadStream(file, { highWaterMark: 1 << 20, encoding: 'utf8' }), {
      header: false,
      chunk: ({ data }: { data: readonly (readonly string[])[] }) => {
        for (const row of data) {
          for (let at = 0; at < 16; at += 1) (columns[at] as Float32Array)[rows] = Number(row[at]);
          rows += 1;
        }
      },
      complete: () => resolve(rows - 2),
      error: reject,
    });
  });
}

const ways: Readonly<Record<string, () => Promise<number> | number>> = { ours, told, split, papaparse };

async function main(): Promise<void> {
  const start = performance.now();
  const rows = await ways[way]?.();
  const ms = performance.now() - start - beside;
  const sorted = pieces.sort((one, other) => one - other);
  const piece = sorted[Math.floor(0.99 * sorted.length)] ?? 0;
  process.stdout.write(JSON.stringify({ rows, ms, piece, mb: process.resourceUsage().maxRSS / 1024 }));
}

main().catch((error: unknown) => {
  console.error(error);
  process.exitCode = 1;
});
