import type { Bench } from './group';
import { against, interleaved, type Measure, type Times, within } from './measure';
import { equalWork } from './peers/documents';
import { edits, inScratch, type Running } from './peers/running';
import { equalSchema } from './peers/schema';
import { echo, jsonServer, ours, tomlServer, yamlServer } from './peers/servers';

/** What the findings of an edit may take, as a share of what the peer takes. */
interface Goals {
  readonly echo: number;
  readonly json: number;
  readonly debounced: number | null;
  readonly yaml: number | null;
  readonly toml: number | null;
}

const goals: ReadonlyMap<number, Goals> = new Map([
  [10_000, { echo: 1.5, json: 1 / 7, debounced: 1 / 100, yaml: 1 / 100, toml: null }],
  [100_000, { echo: 1, json: 1 / 20, debounced: null, yaml: null, toml: 1 / 200 }],
]);

/** From one more or one less character in the middle of a text to the findings that the server sends for it. */
export async function overStdioMeasures(bench: Bench): Promise<readonly Measure[]> {
  const measures: Measure[] = [];
  for (const [count, goal] of goals) measures.push(...(await measuresAt(bench, count, goal)));
  return [...measures, await hugeMeasure(bench)];
}

/** Larger than any script that a person writes, such as a log that was opened by accident (F08). */
const huge = 300_000;
/** ms: longer, and one wonders whether the editor hangs. */
const mostForHuge = 1000;

async function hugeMeasure({ root, runs }: Bench): Promise<Measure> {
  return inScratch(root, async (folder, start) => {
    const own = await start(ours(folder), equalWork(huge, root).craft, 1);
    const [times] = await interleaved(runs(20, 4), [edits(own)]);
    const name = `edit to published findings over stdio, ${huge.toLocaleString('en')} settings`;
    return within(name, present(times), mostForHuge);
  });
}

async function measuresAt(bench: Bench, count: number, goal: Goals): Promise<readonly Measure[]> {
  const work = equalWork(count, bench.root);
  const schema = equalSchema(bench.catalog, ['single', 'pair']);
  const wrong = count / 100;
  const name = `edit to published findings over stdio, ${count.toLocaleString('en')} settings`;
  return inScratch(bench.root, async (folder, start) => {
    const own = await start(ours(folder), work.craft, 1);
    const canned = { diagnostics: own.found, hover: null, completion: null };
    const fast = bench.runs(60, 10);
    const asked = count > 10_000 ? bench.runs(20, 4) : fast;
    const peers: { readonly peer: Running; readonly goal: number; readonly runs: number }[] = [
      { peer: await start(await echo(folder, canned), work.craft, 1), goal: goal.echo, runs: fast },
      { peer: await start(jsonServer(folder, schema, true), work.json, wrong), goal: goal.json, runs: asked },
    ];
    if (goal.debounced !== null) {
      const peer = await start(jsonServer(folder, schema, false), work.json, wrong);
      peers.push({ peer, goal: goal.debounced, runs: bench.runs(20, 3) });
    }
    if (goal.yaml !== null) {
      const peer = await start(yamlServer(folder, schema), work.yaml, wrong);
      peers.push({ peer, goal: goal.yaml, runs: bench.runs(20, 3) });
    }
    if (goal.toml !== null) {
      const { text, place } = work.toml;
      const options = tomlServer(folder, schema);
      const schemaUri = options.uri.replace(/[^/]*$/, 'schema.json');
      const named = { text: `#:schema ${schemaUri}\n${text}`, place: { ...place, line: place.line + 1 } };
      peers.push({ peer: await start(options, named, wrong), goal: goal.toml, runs: bench.runs(5, 2) });
    }
    const measures: Measure[] = [];
    for (const { peer, goal: most, runs } of peers) {
      const [mine, theirs] = await interleaved(runs, [edits(own), edits(peer)]);
      measures.push(against(name, present(mine), peer.server.options.name, present(theirs), most));
    }
    return measures;
  });
}

function present(times: Times | undefined): Times {
  if (times === undefined) throw new Error('nothing was measured');
  return times;
}
