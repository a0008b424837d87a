import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { demoFiles } from './demo-files';
import type { Bench } from './group';
import { against, calibration, type Measure, timed } from './measure';

const runs = 5;
const lines = { small: 10_000, large: 100_000 };
/** Two seconds on a machine where a million sines take 20 ms. */
const most = 2000 / 20;
/** Ten times the lines may take a little more than ten times as long: caches are as small as they were. */
const linear = 12;

/** A long capture read into a script, that script checked, and the capture proved against the racer. */
export async function captureMeasures({ engine, catalog, root }: Bench): Promise<readonly Measure[]> {
  const { CraftView, Workspace, entriesOf, makeScript, profileOf, prove, readListing, writeText } = engine;
  const demo = join(root, 'test/demo');
  const fileSystem = demoFiles(demo);
  const workspace = new Workspace({ catalog, fileSystem });
  const { craft } = workspace.openScript(
    'file:///demo/sandmartin.craft',
    readFileSync(join(demo, 'sandmartin.craft'), 'utf8'),
    0,
  );
  await workspace.settled();
  const board = catalog.board('heron');
  const profile = board === undefined ? null : profileOf(board);
  if (profile === null) throw new Error('heron has no text half');
  const view = new CraftView(craft, 'sprint');
  const entries = entriesOf(profile, view);
  const { lines: own } = writeText({ profile, entries, captured: null, since: null, cautions: [] });

  const work = (text: string) => {
    const made = makeScript(profile, catalog, text);
    const checked = new Workspace({ catalog, fileSystem });
    checked.openScript('file:///demo/read.craft', made.text, 0);
    checked.findings('file:///demo/read.craft');
    const listing = readListing(text, profile.text.forms);
    prove({ profile, entries, captured: null, capture: listing, except: new Set(), ignoresExtra: false });
  };
  const timesOf = (count: number) => timed(runs, () => capture(own, count), work);
  const loop = calibration();
  const [small, large] = [timesOf(lines.small), timesOf(lines.large)];
  return [
    against('100,000 lines of a capture read, checked and proved', large, 'a million sines', loop, most),
    against('the same, of 100,000 lines against 10,000', large, '10,000 lines', small, linear),
  ];
}

/** The racer's own lines over and over, with settings that nobody knows and remarks in between. */
function capture(own: readonly string[], count: number): string {
  const all: string[] = [];
  for (let line = 0; all.length < count; line += 1) {
    const setting = own[line % own.length]?.trimEnd() ?? '';
    all.push(setting);
    if (line % 7 === 0) all.push(`spare lever ${line} is ${line % 100};`);
    if (line % 11 === 0) all.push(`;; remark ${line}`);
  }
  return all.slice(0, count).join('\n');
}
