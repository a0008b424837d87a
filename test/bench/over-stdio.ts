import type { Bench } from './group';
import { against, interleaved, type Measure, type Times } from './measure';
import { type EqualWork, equalWork } from './peers/documents';
import { edits, inScratch, type Running } from './peers/running';
import { equalSchema } from './peers/schema';
import { echo, jsonServer, ours, yamlServer } from './peers/servers';

/** What the findings of an edit may take, as a share of what the echo server takes, by how many settings are open. */
const echoGoals: ReadonlyMap<number, number> = new Map([
  [400, 2],
  [2_000, 2],
  [10_000, 3],
]);

/** With so many settings, general-purpose servers are measured as well; the same as a share of what they take. */
const many = 10_000;
const goals = { asked: 1 / 10, debounced: 1 / 100, yaml: 1 / 100 };

interface Peer {
  readonly running: Running;
  readonly goal: number;
  readonly runs: number;
}

/** From one more or one less character in the middle of a text to the findings that the server sends for it. */
export async function overStdioMeasures(bench: Bench): Promise<readonly Measure[]> {
  const measures: Measure[] = [];
  for (const [count, goal] of echoGoals) measures.push(...(await measuresAt(bench, count, goal)));
  return measures;
}

async function measuresAt(bench: Bench, count: number, goal: number): Promise<readonly Measure[]> {
  const work = equalWork(count, bench.root);
  const name = `edit to published findings over stdio, ${count.toLocaleString('en')} settings`;
  return inScratch(bench.root, async (folder, start) => {
    const own = await start(ours(folder), work.craft, 1);
    const canned = { diagnostics: own.found, hover: null, completion: null };
    const echoing = await start(await echo(folder, canned), work.craft, 1);
    const peers: Peer[] = [{ running: echoing, goal, runs: bench.runs(200, 10) }];
    if (count === many) peers.push(...(await generalPeers(bench, work, folder, start)));
    const measures: Measure[] = [];
    for (const { running, goal: most, runs } of peers) {
      const [mine, theirs] = await interleaved(runs, [edits(own), edits(running)]);
      measures.push(against(name, present(mine), running.server.options.name, present(theirs), most));
    }
    return measures;
  });
}

async function generalPeers(
  bench: Bench,
  work: EqualWork,
  folder: string,
  start: Parameters<Parameters<typeof inScratch>[1]>[1],
): Promise<readonly Peer[]> {
  const schema = equalSchema(bench.catalog, ['single', 'pair']);
  const wrong = many / 100;
  const [asked, rarely] = [bench.runs(60, 10), bench.runs(20, 3)];
  return [
    {
      running: await start(jsonServer(folder, schema, true), work.json, wrong),
      goal: goals.asked,
      runs: asked,
    },
    {
      running: await start(jsonServer(folder, schema, false), work.json, wrong),
      goal: goals.debounced,
      runs: rarely,
    },
    { running: await start(yamlServer(folder, schema), work.yaml, wrong), goal: goals.yaml, runs: rarely },
  ];
}

function present(times: Times | undefined): Times {
  if (times === undefined) throw new Error('nothing was measured');
  return times;
}
