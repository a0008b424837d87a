import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { demoFiles } from './demo-files';
import type { Bench } from './group';
import { against, calibration, type Measure, timesOf } from './measure';

/** Two packs, each with its own filters. */
const racer = 'sandmartin.craft';
/** On a machine where a million sines take 20 ms: two seconds for all of it, 50 ms until others get their turn. */
const goals = { whole: 2000 / 20, piece: 50 / 20 };

/** What to set for a racer with all its packs, from a craft that was just opened; and the longest piece of that work. */
export async function findMeasures({ engine, catalog, root, runs }: Bench): Promise<readonly Measure[]> {
  const demo = join(root, 'test/demo');
  const text = readFileSync(join(demo, racer), 'utf8');
  const uri = `file:///demo/${racer}`;
  const taken: { readonly whole: number; readonly piece: number }[] = [];
  const loop = calibration();
  for (let run = 0; run < runs(5, 3); run += 1) {
    const workspace = new engine.Workspace({ catalog, fileSystem: demoFiles(demo) });
    workspace.openScript(uri, text, 0);
    await workspace.settled();
    const craft = workspace.get(uri)?.craft;
    if (craft === undefined) throw new Error(`${racer} is not open`);
    const findings = workspace.findings(uri);
    const work = engine.find(craft, engine.wishFor(craft), findings, (one) => workspace.check(one));
    taken.push(longest(work));
  }
  const peer = 'a million sines';
  return [
    against('values found for a racer', timesOf(taken.map(({ whole }) => whole)), peer, loop, goals.whole),
    against('its longest piece', timesOf(taken.map(({ piece }) => piece)), peer, loop, goals.piece),
  ];
}

/** Runs a work to its end: what all of it takes of a processor, and the longest of its pieces between two pauses, ms. */
function longest(work: Generator): { readonly whole: number; readonly piece: number } {
  const start = spent();
  let [since, piece] = [start, 0];
  for (let isDone = false; !isDone; ) {
    isDone = work.next().done === true;
    const now = spent();
    piece = Math.max(piece, now - since);
    since = now;
  }
  return { whole: since - start, piece };
}

/** Of a processor since this process began, ms. */
function spent(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}
