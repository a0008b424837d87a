import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { layoutIn } from '../../server/src/additions/read-layout';
import { layoutOf, layoutText } from '../../server/src/recording/layout';
import { learnTable } from '../../server/src/recording/open-recording';
import { unhurried } from '../../server/src/recording/read/source';
import { scriptAt } from '../simulator/craft-from-script';
import { demoRecording, demoRecordingPath } from '../simulator/demo-recording';
import { testCatalog } from '../support/catalog';
import { recordingOf, sourceOf, wholeReport } from '../support/recorded';

const bytes = readFileSync(demoRecordingPath);
const demo = dirname(dirname(demoRecordingPath));
const layoutPath = join(demo, 'recordings', 'heron.json');

describe('the demo’s recording', () => {
  it('is small, says that it is simulated, and how to make it anew', () => {
    assert.ok(bytes.length < 1e6, `${bytes.length} bytes`);
    const [first, second] = bytes.toString('utf8', 0, 200).split('\n');
    assert.equal(first, '# simulated');
    assert.equal(second, '# made by: npm run simulate -- --demo');
  });

  // Sines differ in their last digit from one engine to the next, and a flight lets that grow: not byte by byte.
  it('is what the simulator makes', async () => {
    const [kept, made] = [await recordingOf(bytes, []), await recordingOf(demoRecording().bytes, [])];
    assert.equal(kept.time.length, made.time.length);
    assert.deepEqual([...kept.channels.keys()], [...made.channels.keys()]);
    for (const [channel, values] of kept.channels) {
      const [was, is] = [statistics(values), statistics(made.channels.get(channel)!)];
      const size = Math.hypot(is.mean, is.deviation);
      assert.ok(Math.abs(was.mean - is.mean) < 0.03 * size, `${channel}: mean ${was.mean} for ${is.mean}`);
      assert.ok(
        Math.abs(was.deviation / is.deviation - 1) < 0.1,
        `${channel}: ${was.deviation} for ${is.deviation}`,
      );
    }
  });

  it('has its columns confirmed as they are learnt', async () => {
    const text = readFileSync(layoutPath, 'utf8');
    const table = await learnTable(sourceOf('demo.csv', bytes), [], testCatalog.recordings, unhurried);
    assert.equal(text, layoutText(layoutOf(table.proposed)));
    assert.equal(layoutIn(text).fault, null);
  });

  it('is of a flight of the racer', () => {
    const view = scriptAt(join(demo, 'sandmartin.craft'), null);
    assert.equal(view.text('flight.before-the-rain.recording'), 'flights/before-the-rain.csv');
    assert.equal(view.word('flight.before-the-rain.pack'), 'sprint');
  });

  it('shows a tone of the frame that the racer’s filters let through', async () => {
    const view = scriptAt(join(demo, 'sandmartin.craft'), 'sprint');
    const report = wholeReport(await recordingOf(bytes, []), 1, view);
    assert.equal(report.isSimulated, true);
    const roll = report.noise.told?.find(({ axis }) => axis === 'roll');
    const standing = roll?.peaks.find(({ source }) => source === 'standing');
    assert.ok(standing !== undefined && standing.frequency.low <= 118 && 118 <= standing.frequency.high);
    assert.ok((standing.left ?? -80) > -3);
    const turning = roll?.peaks.find(({ order }) => order !== null && order.low <= 1 && order.high >= 1);
    assert.ok(turning !== undefined && (turning.left ?? 0) < -20, 'the motors’ own tone is filtered');
  });
});

function statistics(values: Float32Array) {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const square = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
  return { mean, deviation: Math.sqrt(square) };
}
