import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { copyFileSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { built } from '../support/built';
import type { Bench } from './group';
import { against, interleaved, type Measure } from './measure';
import { scratch } from './peers/servers';

const scripts = 1000;
const lines = 200;
const goal = 5;
const demo = ['bittern', 'sandmartin', 'wagtail'];

/** Many scripts checked by one call of the command line, against a process that reads them and looks at each character. */
export async function commandLineMeasures({ root, runs }: Bench): Promise<readonly Measure[]> {
  const folder = scratch();
  try {
    const crafts = join(folder, 'crafts');
    mkdirSync(crafts);
    copyFileSync(join(root, 'test/demo/club-habits.craft'), join(crafts, 'club-habits.craft'));
    const texts = demo.map((name) => readFileSync(join(root, 'test/demo', `${name}.craft`), 'utf8'));
    for (let index = 0; index < scripts; index += 1)
      writeFileSync(join(crafts, `craft-${index}.craft`), script(texts[index % texts.length] ?? '', index));
    const [mine, theirs] = await interleaved(runs(8, 1), [
      () => ended([built('propsoff.js'), 'check', crafts]),
      () => ended([join(__dirname, 'scan-files.mjs'), crafts]),
    ]);
    if (mine === undefined || theirs === undefined) throw new Error('nothing was measured');
    const name = `cold check on the command line, ${scripts.toLocaleString('en')} scripts of ${lines} lines`;
    return [against(name, mine, 'reading the files and scanning their characters', theirs, goal)];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** A demo craft of its own weight and with notes of its own flights, so that no two scripts are alike. */
function script(text: string, index: number): string {
  const own = text
    .trimEnd()
    .replace(/^(mass +=) (\d+) g/m, (_, name, mass) => `${name} ${Number(mass) + index / 100} g`);
  const all = own.split('\n').slice(0, lines - 1);
  for (let flight = 1; all.length < lines - 1; flight += 1) {
    const more = [
      '',
      `[flight.day-${flight}]`,
      `minutes = ${10 + (index % 50)} min`,
      `wind = ${flight % 7} m/s`,
    ];
    all.push(...more.slice(0, lines - 1 - all.length));
  }
  return `${all.join('\n')}\n`;
}

/** From the start of a process to its end; findings are no failure. */
async function ended(args: readonly string[]): Promise<number> {
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
