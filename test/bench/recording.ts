import { execFileSync } from 'node:child_process';
import { closeSync, mkdirSync, openSync, rmSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { asServersShip } from './built-engine';
import type { Bench } from './group';
import { against, calibration, interleaved, type Measure, timesOf, within } from './measure';

const rows = 1_200_000;
const columns = 16;
/**
 * Of the time in which the file is read and its lines are split; MB; of the time that a general reader takes; 10 ms until
 * others get their turn, on a machine where a million sines take 20 ms.
 */
const goals = { lines: 4, memory: 300, reader: 0.7, piece: 10 / 20, told: 1.5 };

interface Taken {
  readonly rows: number;
  readonly ms: number;
  readonly piece: number;
  readonly mb: number;
}

/** Ten minutes of a board's log at 2 kHz: what its columns hold learnt, and all of them read. */
export async function recordingMeasures({ root, catalog, runs }: Bench): Promise<readonly Measure[]> {
  const folder = join(root, 'dist/bench');
  mkdirSync(folder, { recursive: true });
  const file = join(folder, 'flight.csv');
  writeFlight(file);
  const program = join(folder, 'recording-run.js');
  await build({
    ...asServersShip,
    entryPoints: [join(root, 'test/bench/recording-run.ts')],
    outfile: program,
  });
  const words = JSON.stringify(catalog.recordings);
  const reader = join(root, 'test/bench/installed/node_modules/papaparse');
  const memory: number[] = [];
  const pieces: number[] = [];
  const steps: number[] = [];
  const loop = calibration();
  const run = (way: string) => () => {
    const taken = JSON.parse(
      execFileSync(process.execPath, [program, way, file, words, reader], { encoding: 'utf8' }),
    ) as Taken;
    if (Math.abs(taken.rows - rows) > 2) throw new Error(`${way} found ${taken.rows} rows`);
    if (way === 'ours') {
      memory.push(taken.mb);
      pieces.push(taken.piece);
    }
    if (way === 'told') steps.push(taken.piece);
    return taken.ms;
  };
  const ways = ['ours', 'told', 'split', 'papaparse'];
  const [own, told, lines, other] = await interleaved(runs(9, 3), ways.map(run));
  rmSync(file);
  if (own === undefined || told === undefined || lines === undefined || other === undefined)
    throw new Error('nothing was measured');
  const name = 'a recording of 1.2 million rows, 16 columns, learnt and read';
  return [
    against(name, own, 'the file read and its lines split', lines, goals.lines),
    against('the same', own, 'its numbers by papaparse', other, goals.reader),
    against(
      'until others get their turn, 99 times in 100',
      timesOf(pieces),
      'a million sines',
      loop,
      goals.piece,
    ),
    against('what it tells, with its noise by throttle', told, 'the same read', own, goals.told),
    against('until others get their turn meanwhile', timesOf(steps), 'a million sines', loop, goals.piece),
    within('memory at most while it is read', timesOf(memory), goals.memory, 'MB'),
  ];
}

/** About 130 MB; written in pieces, for the bench is to hold no more than what it measures. */
function writeFlight(file: string): void {
  const handle = openSync(file, 'w');
  const names = ['gyro roll', 'gyro pitch', 'gyro yaw', 'unfiltered gyro roll', 'unfiltered gyro pitch'];
  const more = ['unfiltered gyro yaw', 'motor 1', 'motor 2', 'motor 3', 'motor 4', 'throttle', 'voltage'];
  const last = ['wanted roll', 'wanted pitch', 'current'];
  writeSync(handle, `${['time us', ...names, ...more, ...last].join(',')}\n`);
  const sizes = [300, 250, 90, 400, 350, 120, 0, 0, 0, 0, 0, 0, 280, 240, 0];
  let text = '';
  for (let row = 0; row < rows; row += 1) {
    text += row * 500;
    for (let column = 0; column < columns - 1; column += 1) {
      const swing = Math.sin(row * 0.001 * (column + 1));
      const size = sizes[column] ?? 0;
      if (column >= 6 && column <= 10) text += `,${(0.5 + 0.4 * swing).toFixed(4)}`;
      else if (column === 11) text += `,${(15.5 + 0.5 * swing).toFixed(2)}`;
      else if (column === 14) text += `,${(20 + 15 * swing).toFixed(2)}`;
      else text += `,${(size * swing).toFixed(2)}`;
    }
    text += '\n';
    if (text.length > 1 << 20) {
      writeSync(handle, text);
      text = '';
    }
  }
  writeSync(handle, text);
  closeSync(handle);
}
