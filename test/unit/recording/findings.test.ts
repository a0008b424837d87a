import assert from 'node:assert/strict';
import { CraftView } from '../../../server/src/craft/view';
import { chainsOf } from '../../../server/src/figures/filter-chain';
import { changeOf } from '../../../server/src/recording/change-of';
import { tonesLetThrough } from '../../../server/src/recording/find/tones';
import type { RecordingReport } from '../../../server/src/recording/report';
import { scriptAt } from '../../simulator/craft-from-script';
import { testCatalog } from '../../support/catalog';
import { craftOf } from '../../support/findings';
import { madeRecording, noise, reported } from '../../support/made-recording';

const degree = Math.PI / 180;
const turn = 2 * Math.PI;

interface Shaken {
  readonly standing?: number;
  readonly order?: number;
  readonly strength?: number;
  readonly loud?: number;
}

/** A flight of 40 s, motors turning 150 to 250 times a second. */
function shaken({ standing = 0, order = 0, strength = 3, loud = 1 }: Shaken) {
  const random = noise(9);
  const speed = (time: number) => 200 + 50 * Math.sin((turn * time) / 11);
  let phase = 0;
  const gyro = (time: number) => {
    phase += (turn * order * speed(time)) / 2000;
    const tones =
      (standing === 0 ? 0 : strength * Math.sin(turn * standing * time)) +
      (order === 0 ? 0 : strength * Math.sin(phase));
    return degree * (tones + loud * random());
  };
  return madeRecording(
    { seconds: 30, rate: 2000 },
    {
      'speed.1': (time) => turn * speed(time),
      'speed.2': (time) => turn * 1.07 * speed(time + 2),
      'gyro.roll': () => degree * loud * random(),
      'unfiltered-gyro.roll': gyro,
    },
  );
}

function viewOf(lines: string): CraftView {
  return new CraftView(craftOf(`${lines}\n`), null);
}

const filtered = `[board]
model = none
[gyro]
rate = 4 kHz
[gyro.filter.1]
kind = butterworth
cutoff = 400 Hz
`;

const notched = `${filtered}[gyro.filter.2]
kind = notch
centre = 180 Hz
width = 20 Hz
`;

const found = (report: RecordingReport, id: string) => report.findings.find((one) => one.id === id);

describe('what a recording shows', () => {
  it('is a tone that the filters let through, with a notch for it', () => {
    const report = reported(shaken({ standing: 140 }), viewOf(filtered));
    const finding = found(report, 'shake/tone-let-through');
    assert.match(
      finding?.sentence ?? '',
      /^A tone of 140 Hz about roll stands \d+ dB over the noise around it/,
    );
    const [proposal] = finding?.proposals ?? [];
    assert.deepEqual(
      proposal?.sets.map(({ path, value }) => `${path} = ${value}`),
      ['gyro.filter.2.kind = notch', 'gyro.filter.2.centre = 140 Hz', 'gyro.filter.2.width = 21 Hz'],
    );
    assert.match(proposal?.sets[0]?.comment ?? '', /^measured in made\.csv: \d+ dB/);
  });

  it('is none that a notch takes out, nor one that is hardly there', () => {
    const script = notched.replace('180 Hz', '140 Hz');
    assert.equal(
      found(reported(shaken({ standing: 140 }), viewOf(script)), 'shake/tone-let-through'),
      undefined,
    );
    const faint = reported(shaken({ standing: 140, strength: 0.1 }), viewOf(filtered));
    assert.equal(found(faint, 'shake/tone-let-through'), undefined);
  });

  it('is a tone that moves, with notches that follow where controllers tell their speeds', () => {
    const recording = shaken({ order: 1 });
    const report = reported(recording, viewOf(`${filtered}[esc]\nspeed-feedback = on\n`));
    const [proposal] = found(report, 'shake/tone-let-through')?.proposals ?? [];
    assert.equal(proposal?.sets[0]?.value, 'follow-motors');
    const without = reported(recording, viewOf(filtered));
    assert.deepEqual(found(without, 'shake/tone-let-through')?.proposals, []);
  });

  it('is a tone that stands where notches that follow the motors come past in the hover alone', () => {
    const view = scriptAt('test/demo/bittern.craft', 'errand');
    const hover = chainsOf(view)?.value.hover ?? 0;
    const report = reported(shaken({ standing: hover }), view);
    const tone = report.noise.told?.[0]?.peaks.find(({ source }) => source === 'standing');
    assert.ok(hover > 100 && (tone?.left ?? -80) > -15, `${hover} Hz: ${tone?.left} dB`);
    assert.ok(found(report, 'shake/tone-let-through') !== undefined);
  });

  it('is none that moves while nobody knows how, about whichever axis that is seen', () => {
    const report = reported(shaken({ standing: 140 }), viewOf(filtered));
    const [roll] = report.noise.told ?? [];
    assert.ok(roll !== undefined && tonesLetThrough(report, viewOf(filtered)).length === 1);
    const peaks = roll.peaks.map((peak) => ({ ...peak, source: 'moves with the motors' }));
    const yaw = { ...roll, axis: 'yaw', peaks } as const;
    const both = { ...report, noise: { told: [roll, yaw], basis: '' } };
    assert.deepEqual(tonesLetThrough(both, viewOf(filtered)), []);
  });

  it('is a notch that takes nothing out here, and none that does', () => {
    const idle = found(reported(shaken({}), viewOf(notched)), 'shake/notch-takes-nothing');
    assert.match(
      idle?.sentence ?? '',
      /^Filter 2 of the gyro takes out 180 Hz, .* costs 0\.\d+ ms of delay\.$/,
    );
    assert.equal(idle?.proposals[0]?.sets[0]?.value, 'none');
    const used = reported(shaken({ standing: 180 }), viewOf(notched));
    assert.equal(found(used, 'shake/notch-takes-nothing'), undefined);
  });

  it('is the motor that shakes alone', () => {
    const report = reported(shaken({ order: 1 }));
    assert.match(found(report, 'shake/one-motor')?.sentence ?? '', /^Motor 1 shakes once a turn/);
  });

  it('is a motor at its limit, and one that works harder', () => {
    const random = noise(4);
    const report = reported(
      madeRecording(
        { seconds: 30, rate: 400 },
        {
          throttle: () => 0.4,
          'gyro.roll': () => 0.01 * random(),
          'motor.1': () => 0.46,
          'motor.2': () => 0.38,
          'motor.3': (time) => (time % 10 < 1 ? 1 : 0.38),
        },
      ),
    );
    assert.match(
      found(report, 'motors/at-limit')?.sentence ?? '',
      /^Motor 3 was at its upper limit for 10 % /,
    );
    assert.match(found(report, 'motors/one-works-harder')?.sentence ?? '', /^Motor 1 works \d+(\.\d)? % /);
  });

  it('has words for all that can be found, and no words for more', () => {
    const ids = testCatalog.recordings.findings.map(({ id }) => id);
    assert.equal(new Set(ids).size, ids.length);
    for (const { message, advice } of testCatalog.recordings.findings)
      for (const text of [message, advice]) assert.match(text, /^[A-Z{].*\.$/);
  });
});

describe('two recordings of a craft', () => {
  const { findings: words } = testCatalog.recordings;

  it('show that it shakes more than it did', () => {
    const [before, after] = [reported(shaken({})), reported(shaken({ loud: 2 }))];
    const [grown] = changeOf(before, after, words);
    assert.match(grown?.sentence ?? '', /about roll, where it was .* in made\.csv: 2(\.0)? times as much\.$/);
    assert.deepEqual(changeOf(after, before, words), []);
    assert.deepEqual(changeOf(before, before, words), []);
    assert.deepEqual(
      changeOf({ ...before, rate: after.rate / 2 }, after, words),
      [],
      'told up to another frequency',
    );
  });

  it('show that a margin has shrunk and a delay has grown, where spans do not meet', () => {
    const flown = (margin: number, delay: number) => {
      const span = (likely: number, unit: string) => ({ likely, low: likely - 2, high: likely + 2, unit });
      const late = [{ axis: 'roll', delay: span(delay, 'ms'), phaseMargin: span(margin, 'deg') } as const];
      const noise = { told: null, reason: '', advice: '' } as const;
      return { name: 'dawn.csv', rate: 1000, noise, late };
    };
    const sentences = changeOf(flown(50, 6), flown(40, 12), words).map(({ sentence }) => sentence);
    assert.deepEqual(sentences, [
      'The phase margin about roll is 40.0 deg (38.0 to 42.0), where it was 50.0 deg (48.0 to 52.0) in dawn.csv.',
      'From motor command to gyro it takes 12.0 ms (10.0 to 14.0) about roll, where it took 6.0 ms (4.0 to 8.0) in dawn.csv.',
    ]);
    assert.deepEqual(changeOf(flown(50, 6), flown(48, 8), words), []);
    assert.deepEqual(changeOf(flown(40, 12), flown(50, 6), words), []);
  });
});
