import assert from 'node:assert/strict';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readFrom, sourceOf, wholeReport } from '../../support/recorded';

/** D. Hurwitz, I. Klein, Quadrotor Dead Reckoning with Multiple Inertial Sensors (2023), one flight of it; CC BY 4.0. */
const file = join(__dirname, '../../../../shared/reference/recordings/imu-on-quadrotor-120hz.csv');

describe('what a real recording says', () => {
  if (!existsSync(file)) {
    it('is left out: its file does not lie beside the project');
    return;
  }

  it('is told as far as it goes: a tone about yaw at 57 Hz that nobody can call a motor, and no more', async () => {
    const report = wholeReport(await readFrom(sourceOf('real.csv', readFileSync(file))), 1, null);
    assert.equal(Math.round(report.rate), 120);
    const yaw = report.noise.told?.find(({ axis }) => axis === 'yaw');
    const [tone] = yaw?.peaks ?? [];
    assert.ok(Math.abs((tone?.frequency.likely ?? 0) - 57.2) < 1);
    assert.match(tone?.source ?? '', /^nobody can say: no motor speed and no throttle/);
    assert.deepEqual([tone?.order, tone?.mayBeFolded, tone?.left], [null, true, null]);
    for (const answer of [report.noiseMaps, report.motors, report.pack, report.hover, report.link])
      assert.ok(answer.told === null && answer.reason.length > 10 && answer.advice.length > 5);
    assert.deepEqual([report.findings, report.proposals], [[], []]);
  });
});
