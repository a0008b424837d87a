import { spawnSync } from 'node:child_process';
import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { deflateRawSync } from 'node:zlib';
import { shippedFiles } from '../../server/build/package/contents';
import { built } from '../support/built';
import type { Bench } from './group';
import { type Measure, timesOf, within } from './measure';

/** KB of 1,000 bytes. */
const goals = { server: 600, package: 1500 };
/** How much has to be loaded and sent. */
export async function sizeMeasures({ root }: Bench): Promise<readonly Measure[]> {
  const manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as Record<string, unknown>;
  const files = shippedFiles(root, manifest).map(({ source }) => join(root, source));
  const packed = files.reduce(
    (sum, file) => sum + deflateRawSync(readFileSync(file), { level: 9 }).length,
    0,
  );
  const one = (bytes: number) => timesOf([bytes / 1000]);
  return [
    within('server bundle, all that its start loads', one(loadedAtStart()), goals.server, 'KB'),
    within('extension, every file packed', one(packed), goals.package, 'KB'),
  ];
}

/** The bytes of all files that the server loads when it starts; what it loads on demand comes later. */
function loadedAtStart(): number {
  const load = `require(${JSON.stringify(built('server.js'))});
    process.stderr.write(JSON.stringify(Object.keys(require.cache)), () => process.exit());`;
  const { stderr } = spawnSync(process.execPath, ['-e', load, 'server', '--stdio'], { encoding: 'utf8' });
  return (JSON.parse(stderr) as string[]).reduce((sum, file) => sum + statSync(file).size, 0);
}
