import { setTimeout as pause } from 'node:timers/promises';
import type { Bench } from './group';
import { against, type Measure, timesOf } from './measure';
import { equalWork } from './peers/documents';
import { edits, inScratch, type Running } from './peers/running';
import { equalSchema } from './peers/schema';
import { jsonServer, ours } from './peers/servers';

const settings = 10_000;
const goal = 1;

/** What the process holds with a large document open, and after many edits of it. */
export async function memoryMeasures({ root, catalog, runs }: Bench): Promise<readonly Measure[]> {
  const work = equalWork(settings, root);
  const schema = equalSchema(catalog, ['single', 'pair']);
  const opened: [number[], number[]] = [[], []];
  const edited: [number[], number[]] = [[], []];
  for (let run = 0; run < runs(3, 1); run += 1) {
    await inScratch(root, async (folder, start) => {
      const own = await start(ours(folder), work.craft, 1);
      await held(own, runs(1000, 100), opened[0], edited[0]);
      // The peer takes a hundred times as long for an edit: after so many its memory grows no more.
      const peer = await start(jsonServer(folder, schema, true), work.json, settings / 100);
      await held(peer, runs(100, 10), opened[1], edited[1]);
    });
  }
  const name = `memory with ${settings.toLocaleString('en')} settings open`;
  return [
    against(name, timesOf(opened[0]), 'JSON server', timesOf(opened[1]), goal, 'MB'),
    against(`${name}, after 1,000 edits`, timesOf(edited[0]), 'JSON server', timesOf(edited[1]), goal, 'MB'),
  ];
}

async function held(running: Running, count: number, before: number[], after: number[]): Promise<void> {
  await pause(1000);
  before.push(running.server.memory());
  const edit = edits(running);
  for (let run = 0; run < count; run += 1) await edit(run);
  after.push(running.server.memory());
}
