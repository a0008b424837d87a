// `npm run bench`: how fast, as ratios in one run on one machine. `-- --json` prints one object instead of a table.
import { arch, cpus, platform } from 'node:os';
import { join } from 'node:path';
import { testCatalog } from '../support/catalog';
import { captureMeasures } from './capture';
import type { Measure } from './measure';
import { panelMeasures } from './panel';
import { sheetMeasures } from './sheet';

const root = join(__dirname, '../..');

async function main(): Promise<void> {
  const measures: readonly Measure[] = [
    ...(await sheetMeasures(testCatalog, root)),
    ...(await captureMeasures(testCatalog, root)),
    ...(await panelMeasures(root)),
  ];
  const machine = `${cpus()[0]?.model.trim() ?? 'unknown'}, ${platform()} ${arch()}`;
  if (process.argv.includes('--json')) {
    const result = { measures, machine, versions: { node: process.version } };
    process.stdout.write(`${JSON.stringify(result, null, 2)}\n`);
  } else process.stdout.write(table(measures, machine));
  process.exitCode = measures.every(({ met }) => met) ? 0 : 1;
}

function table(measures: readonly Measure[], machine: string): string {
  const rows = measures.map(({ name, ours, p95, peer, peerName, ratio, goal, met }) =>
    [
      name,
      `${round(ours)} ms (95 %: ${round(p95)})`,
      `${peerName}: ${round(peer)} ms`,
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
