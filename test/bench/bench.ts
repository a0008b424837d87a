// `npm run bench`: how fast, as ratios in one run on one machine, side by side with general-purpose servers.
// `-- --json` prints one object instead of a table; `--only name` takes one group; `--quick` takes fewer runs.
import { arch, cpus, platform } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { compileCatalog } from '../../server/build/compile-catalog';
import { answerMeasures } from './answers';
import { builtEngine } from './built-engine';
import { captureMeasures } from './capture';
import { commandLineMeasures } from './command-line';
import { findMeasures } from './find';
import type { Group } from './group';
import { inProcessMeasures } from './in-process';
import { learnMeasures } from './learn';
import type { Measure } from './measure';
import { memoryMeasures } from './memory';
import { onePageMeasures } from './one-page';
import { overStdioMeasures } from './over-stdio';
import { ownMeasures } from './own';
import { panelMeasures } from './panel';
import { ensurePeers, peerVersions } from './peers/install';
import { recordingMeasures } from './recording';
import { sheetMeasures } from './sheet';
import { sizeMeasures } from './sizes';
import { startMeasures } from './start';
import { workspaceMeasures } from './workspace';

const root = join(__dirname, '../..');

const groups: readonly Group[] = [
  { name: 'in-process', hasPeers: true, measure: inProcessMeasures },
  { name: 'stdio', hasPeers: true, measure: overStdioMeasures },
  { name: 'answers', hasPeers: false, measure: answerMeasures },
  { name: 'own', hasPeers: false, measure: ownMeasures },
  { name: 'start', hasPeers: false, measure: startMeasures },
  { name: 'memory', hasPeers: true, measure: memoryMeasures },
  { name: 'command-line', hasPeers: false, measure: commandLineMeasures },
  { name: 'size', hasPeers: false, measure: sizeMeasures },
  { name: 'sheet', hasPeers: false, measure: sheetMeasures },
  { name: 'find', hasPeers: false, measure: findMeasures },
  { name: 'capture', hasPeers: false, measure: captureMeasures },
  { name: 'learn', hasPeers: false, measure: learnMeasures },
  { name: 'recording', hasPeers: true, measure: recordingMeasures },
  { name: 'workspace', hasPeers: false, measure: workspaceMeasures },
  { name: 'one-page', hasPeers: false, measure: onePageMeasures },
  { name: 'panel', hasPeers: false, measure: ({ root }) => panelMeasures(root) },
];

async function main(): Promise<void> {
  const { values } = parseArgs({
    options: {
      json: { type: 'boolean', default: false },
      quick: { type: 'boolean', default: false },
      only: { type: 'string', multiple: true },
    },
  });
  const picked = pickedGroups(values.only);
  if (picked.some(({ hasPeers }) => hasPeers)) await ensurePeers();
  const runs = (full: number, quick: number) => (values.quick ? quick : full);
  const engine = await builtEngine(root);
  const catalog = engine.loadCatalog(compileCatalog(root).bundle);
  const measures: Measure[] = [];
  for (const { name, measure } of picked) {
    process.stderr.write(`measuring: ${name}\n`);
    measures.push(...(await measure({ engine, catalog, root, runs })));
  }
  const machine = `${cpus()[0]?.model.trim() ?? 'unknown'}, ${cpus().length} cores, ${platform()} ${arch()}`;
  const versions = { node: process.version, ...peerVersions() };
  if (values.json) process.stdout.write(`${JSON.stringify({ measures, machine, versions }, null, 2)}\n`);
  else process.stdout.write(table(measures, machine));
  process.exitCode = measures.every(({ met }) => met) ? 0 : 1;
}

function pickedGroups(only: readonly string[] | undefined): readonly Group[] {
  const names = groups.map(({ name }) => name);
  const unknown = only?.find((name) => !names.includes(name));
  if (unknown !== undefined)
    throw new Error(`there is no group "${unknown}" to measure; there are: ${names.join(', ')}`);
  return only === undefined ? groups : groups.filter(({ name }) => only.includes(name));
}

function table(measures: readonly Measure[], machine: string): string {
  const rows = measures.map(({ name, unit, ours, p95, peer, peerName, ratio, goal, met }) =>
    [
      name,
      `${round(ours)} ${unit} (95 %: ${round(p95)})`,
      `${peerName}: ${round(peer)} ${unit}`,
      `ratio ${round(ratio)}`,
      `goal ${round(goal)}`,
      met ? 'met' : 'NOT MET',
    ].join(' | '),
  );
  return `${[machine, ...rows].join('\n')}\n`;
}

function round(value: number): string {
  return String(Number(value.toPrecision(3)));
}

main().catch((error: unknown) => {
  console.error(error);
  process.exitCode = 2;
});
