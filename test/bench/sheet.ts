import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Workspace } from '../../server/src/workspace/workspace';
import { demoFiles } from './demo-files';
import type { Bench } from './group';
import { against, calibration, type Measure, timed } from './measure';

/** The demo craft with the most to compute: two packs, position receiver, log. */
const largest = 'bittern.craft';
const runs = 200;
/**
 * A sheet may take so many calibration loops: 10 ms for the whole and 2 ms after one change on a machine where a
 * million sines take 20 ms.
 */
const goals = { whole: 10 / 20, changed: 2 / 20 };

/** The build sheet of the largest demo craft: all of it, and again after one filter value has changed. */
export async function sheetMeasures({ engine, catalog, root }: Bench): Promise<readonly Measure[]> {
  const demo = join(root, 'test/demo');
  const fileSystem = demoFiles(demo);
  const text = readFileSync(join(demo, largest), 'utf8');
  const uri = `file:///demo/${largest}`;
  const opened = async () => {
    const workspace = new engine.Workspace({ catalog, fileSystem });
    workspace.openScript(uri, text, 0);
    await workspace.settled();
    return workspace;
  };
  const findings = (await opened()).findings(uri);
  const sheetOf = (workspace: Workspace) => {
    const craft = workspace.get(uri)?.craft;
    if (craft === undefined) throw new Error(`${largest} is not open`);
    return engine.buildSheet(craft, findings, craft.packs()[0] ?? null);
  };

  const fresh: Workspace[] = [];
  for (let run = 0; run < runs + runs / 10; run += 1) fresh.push(await opened());
  const loop = calibration();
  const take = (): Workspace => {
    const workspace = fresh.pop();
    if (workspace === undefined) throw new Error('too few crafts were opened');
    return workspace;
  };
  const whole = timed(runs, take, sheetOf);

  const workspace = await opened();
  sheetOf(workspace);
  const line = text.split('\n').findIndex((each) => /^cutoff += 3 \* slow-tones/.test(each));
  if (line < 0) throw new Error(`${largest} has no filter to change`);
  const at = (text.split('\n')[line] ?? '').indexOf('3 *');
  const changed = timed(
    runs,
    (run) => {
      const [start, end] = [at, at + 1].map((character) => ({ line, character }));
      if (start !== undefined && end !== undefined)
        workspace.change(uri, [{ start, end, text: String(2 + (run % 2)) }], run);
      return workspace;
    },
    sheetOf,
  );
  const peer = 'a million sines';
  return [
    against('build sheet of the largest demo craft', whole, peer, loop, goals.whole),
    against('the same after one filter value has changed', changed, peer, loop, goals.changed),
  ];
}
