import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { built } from '../support/built';
import type { Bench } from './group';
import { against, interleaved, type Measure } from './measure';

const goal = 2.2;
const craft = 'wagtail.craft';

/** One craft checked by one call of the command line, against a process of Node that does nothing. */
export async function commandLineMeasures({ root, runs }: Bench): Promise<readonly Measure[]> {
  const [mine, theirs] = await interleaved(runs(60, 5), [
    () => ended([built('propsoff.js'), 'check', join(root, 'test/demo', craft)]),
    () => ended(['-e', '0']),
  ]);
  if (mine === undefined || theirs === undefined) throw new Error('nothing was measured');
  return [against('check of one craft on the command line', mine, 'node -e 0', theirs, goal)];
}

/** From the start of a process to its end; findings are no failure. */
export async function ended(args: readonly string[]): Promise<number> {
  const start = performance.now();
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'pipe'] });
  let errors = '';
  child.stdout.resume();
  child.stderr.on('data', (chunk: Buffer) => {
    errors += chunk.toString();
  });
  const [code] = (await once(child, 'close')) as [number | null];
  if (code !== 0 && code !== 1) throw new Error(`${args.join(' ')} ended with ${code}: ${errors}`);
  return performance.now() - start;
}
