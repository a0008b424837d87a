import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { deflateRawSync } from 'node:zlib';
import { built } from '../support/built';
import type { Bench } from './group';
import { type Measure, timesOf, within } from './measure';

/** KB of 1,000 bytes. */
const goals = { server: 600, package: 1500 };
/** What an extension package holds beside what is built. */
const shipped = [
  'README.md',
  'CHANGELOG.md',
  'LICENSE',
  'package.json',
  'syntaxes',
  'schemas',
  'client/media',
  'client/starters',
];

/** How much has to be loaded and sent. */
export async function sizeMeasures({ root }: Bench): Promise<readonly Measure[]> {
  const files = [
    ...filesIn(join(built('server.js'), '..')),
    ...shipped.flatMap((name) => filesIn(join(root, name))),
  ];
  const packed = files.reduce(
    (sum, file) => sum + deflateRawSync(readFileSync(file), { level: 9 }).length,
    0,
  );
  const one = (bytes: number) => timesOf([bytes / 1000]);
  return [
    within('server bundle', one(statSync(built('server.js')).size), goals.server, 'KB'),
    within('extension, every file packed', one(packed), goals.package, 'KB'),
  ];
}

function filesIn(path: string): readonly string[] {
  if (!statSync(path).isDirectory()) return [path];
  return readdirSync(path).flatMap((name) => filesIn(join(path, name)));
}
