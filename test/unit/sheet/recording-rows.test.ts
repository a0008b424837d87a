import assert from 'node:assert/strict';
import { join } from 'node:path';
import { CraftView } from '../../../server/src/craft/view';
import { recordingModels } from '../../../server/src/sheet/recording-model';
import { reasonsOf } from '../../../server/src/sheet/recording-reasons';
import { followRows, gainRows, lateRows } from '../../../server/src/sheet/recording-rows';
import { scriptAt } from '../../simulator/craft-from-script';
import { atOnce } from '../../support/at-once';
import { marginsWith, responseOf, toldSpan } from '../../support/axis-response';
import { craftOf } from '../../support/findings';
import { near } from '../../support/near';

describe('what is told axis by axis', () => {
  it('says a reason once, of all that is withheld for it', () => {
    const axes = [responseOf('roll', { bandwidth: toldSpan(20, 1, 'Hz') }), responseOf('pitch')];
    const [row] = followRows(axes, []).filter(({ name }) => name.startsWith('Follows'));
    assert.deepEqual(
      row?.cells.map(({ value }) => value?.told?.likely ?? null),
      [20, null],
    );
    const said = reasonsOf(followRows(axes, []));
    assert.equal(said.length, 1);
    assert.match(
      said[0]?.about ?? '',
      /^Response over frequency, .* about roll and pitch; follows up to .* about pitch$/,
    );
    assert.deepEqual(
      reasonsOf(followRows([responseOf('yaw')], [])).map(({ about }) => about),
      ['All of this about yaw'],
    );
  });

  it('says what to do once, where several reasons lead to it', () => {
    const late = (reason: string) => ({ told: null, reason, advice: 'Fly it.' }) as const;
    const axes = [
      responseOf('roll', { phaseDelay: late('Known to 70 Hz.') }),
      responseOf('pitch', { phaseDelay: late('Known to 60 Hz.') }),
    ];
    const said = reasonsOf(lateRows(axes, []));
    assert.ok(said.length > 2);
    assert.deepEqual(
      said.map((one) => one.said.advice),
      [...said.slice(1).map(() => ''), 'Fly it.'],
    );
  });

  it('says of a gain margin that lies above what was flown what shows it', () => {
    const rows = lateRows([responseOf('roll', { margins: marginsWith(40) })], []);
    const of = (name: string) => rows.find((row) => row.name === name)?.cells[0]?.value;
    assert.equal(of('Phase margin')?.told?.likely, 40);
    const gain = of('Gain margin');
    assert.ok(gain?.told === null && /above the frequencies that were flown/.test(gain.reason));
  });

  it('has the script’s gain beside the measured one, and its estimates beside margins', () => {
    const gain = { axis: 'roll', term: 'proportional', gain: toldSpan(0.05, 0.01, '%/(deg/s)') } as const;
    const rows = gainRows([gain], [{ axis: 'roll', term: 'proportional', text: '0.052 %/(deg/s)' }]);
    assert.deepEqual(
      rows.map(({ cells }) => cells[0]?.beside),
      ['script: 0.052 %/(deg/s)', null, null],
    );
    const models = atOnce(recordingModels(scriptAt(join('test', 'demo', 'sandmartin.craft'), 'sprint')));
    const late = lateRows([responseOf('roll', { margins: marginsWith(40) })], models);
    const beside = late.find(({ name }) => name === 'Phase margin')?.cells[0]?.beside ?? '';
    assert.match(beside, /^script: [\d.]+ deg in the hover; \d+ deg \(\d+ to \d+\) at the worst place$/);
  });
});

describe('what a script lets expect of a recording', () => {
  const models = atOnce(recordingModels(scriptAt(join('test', 'demo', 'sandmartin.craft'), 'sprint')));

  it('is told of each axis in the hover: slow calls come whole, quick ones late and weak', () => {
    assert.deepEqual(
      models.map(({ axis, place }) => [axis, place]),
      ['roll', 'pitch', 'yaw'].map((axis) => [axis, 'in the hover, pack full']),
    );
    const [roll] = models;
    assert.ok(Math.abs(roll?.curve.gain[0] ?? 9) < 0.5);
    assert.ok(Math.abs(roll?.curve.phase[0] ?? 99) < 3);
    assert.ok((roll?.curve.gain.at(-1) ?? 0) < -30);
    assert.ok((roll?.curve.phase.at(-1) ?? 0) < -180);
    const { bandwidth, peak, half } = roll?.estimates ?? {};
    const after = roll?.curve.frequencies.findIndex((one) => one > (bandwidth?.inHover ?? 0)) ?? 0;
    assert.ok((roll?.curve.gain[after - 1] ?? 0) > -3.02 && (roll?.curve.gain[after] ?? 0) < -3);
    near(peak?.inHover ?? 0, 111.5, 0.02);
    assert.ok((half?.inHover ?? 0) > 5 && (half?.inHover ?? 0) < 20);
  });

  it('has a step that begins at nothing and ends at what was asked', () => {
    const share = models[0]?.step?.share ?? [];
    assert.equal(share[0], 0);
    near(share.at(-1) ?? 0, 1, 0.05);
    near(100 * (Math.max(...share) - 1), models[0]?.estimates.overshoot?.inHover ?? 0, 0.05);
  });

  it('is nothing where the script says too little', () => {
    assert.deepEqual(atOnce(recordingModels(new CraftView(craftOf('[gyro]\nrate = 2 kHz'), null))), []);
  });
});
