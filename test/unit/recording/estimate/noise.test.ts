import assert from 'node:assert/strict';
import type { Peak } from '../../../../server/src/recording/report';
import { madeRecording, noise, reported } from '../../../support/made-recording';
import { near } from '../../../support/near';

const degree = Math.PI / 180;
const turn = 2 * Math.PI;

interface Shaken {
  readonly rate?: number;
  readonly order?: number;
  readonly standing?: number;
  readonly logs?: 'speed' | 'throttle' | 'nothing';
  readonly speed?: (time: number) => number;
}

/** A craft whose motors turn 150 to 250 times a second, with a tone of an order and one that stands. */
function shaken({ rate = 1000, order = 1, standing = 140, logs = 'speed', speed = swinging }: Shaken) {
  const random = noise(7);
  let phase = 0;
  const gyro = (time: number) => {
    phase += (turn * order * speed(time)) / rate;
    return degree * (4 * Math.sin(phase) + 2 * Math.sin(turn * standing * time) + 3 * random());
  };
  const recording = madeRecording(
    { seconds: 40, rate },
    {
      ...(logs === 'speed' ? { 'speed.1': (time) => turn * speed(time) } : {}),
      ...(logs === 'throttle' ? { throttle: (time) => speed(time) / 500 } : {}),
      'gyro.roll': gyro,
    },
  );
  const { told } = reported(recording).noise;
  return told?.[0]?.peaks ?? [];
}

function swinging(time: number): number {
  return 200 + 50 * Math.sin((turn * time) / 11);
}

const moving = (peaks: readonly Peak[]) => peaks.filter(({ source }) => source.startsWith('moves'));
const standing = (peaks: readonly Peak[]) => peaks.filter(({ source }) => source === 'standing');

describe('noise in a recording', () => {
  it('tells a tone that moves with the motors from one that stands', () => {
    const peaks = shaken({});
    assert.equal(peaks.length, 2);
    const [moves] = moving(peaks);
    near(moves?.order?.likely ?? 0, 1, 0.02);
    const [stands] = standing(peaks);
    assert.ok(Math.abs((stands?.frequency.likely ?? 0) - 140) < 0.2);
    assert.equal(stands?.mayBeFolded, false);
  });

  it('finds the order of a tone that rows fold down', () => {
    const peaks = shaken({ rate: 500, order: 3, standing: 90 });
    assert.equal(peaks.length, 2);
    const [moves] = moving(peaks);
    near(moves?.order?.likely ?? 0, 3, 0.02);
    assert.equal(moves?.mayBeFolded, true);
    assert.match(moves?.source ?? '', /too fast for 500 rows a second, it shows at \d+ Hz/);
  });

  it('says of a tone that stands where seldom rows may have folded it to', () => {
    const peaks = shaken({ rate: 250, standing: 137 });
    const stands = standing(peaks).find(({ frequency }) => Math.abs(frequency.likely - 113) < 1);
    assert.equal(stands?.mayBeFolded, true);
  });

  it('names no motor where all turn alike, and the one that shakes where they do not', () => {
    const named = (unlike: number) => {
      const random = noise(5);
      const speeds = [1, 2, 3, 4].map((motor) => (time: number) => swinging(time) * (1 + unlike * motor));
      const phases = [0, 1, 2, 3];
      const gyro = (time: number) => {
        let sum = 3 * random();
        for (const [at, speed] of speeds.entries()) {
          const phase = (phases[at] ?? 0) + (turn * speed(time)) / 1000;
          phases[at] = phase;
          sum += (unlike > 0 && at !== 2 ? 0.2 : 3) * Math.sin(phase);
        }
        return degree * sum;
      };
      const turning = Object.fromEntries(
        speeds.map((speed, at) => [`speed.${at + 1}`, (time: number) => turn * speed(time)]),
      );
      const report = reported(madeRecording({ seconds: 40, rate: 1000 }, { ...turning, 'gyro.roll': gyro }));
      const peaks = report.noise.told?.[0]?.peaks ?? [];
      assert.ok(peaks.some(({ order }) => order !== null && Math.abs(order.likely - 1) < 0.05));
      return peaks.flatMap(({ motor }) => motor ?? []);
    };
    assert.deepEqual(named(0), []);
    assert.deepEqual([...new Set(named(0.06))], [3]);
  });

  it('calls nothing a motor of which no speed and no throttle tell', () => {
    const peaks = shaken({ logs: 'nothing' });
    assert.ok(peaks.length > 0);
    assert.deepEqual(moving(peaks), []);
    assert.ok(peaks.every(({ order, source }) => order === null && source.startsWith('nobody can say')));
  });

  it('sees by the throttle that a tone moves, but not how often it comes', () => {
    const peaks = shaken({ logs: 'throttle' });
    const [moves] = moving(peaks);
    assert.ok(moves !== undefined && moves.order === null);
    assert.equal(standing(peaks).length, 1);
  });

  it('tells the loudest three of tones that come and go, and how many more there are', () => {
    const random = noise(21);
    const throttle = (time: number) => 0.3 + 0.1 * Math.sin((turn * time) / 40);
    // Each at a throttle of its own.
    const tone = (time: number, at: number) =>
      Math.abs(throttle(time) - 0.22 - 0.03 * ((at * 3) % 6)) < 0.015
        ? (6 + at) * Math.sin(turn * (80 + 50 * at) * time)
        : 0;
    const { told } = reported(
      madeRecording(
        { seconds: 60, rate: 1000 },
        {
          throttle,
          'gyro.roll': (time) =>
            degree * ([0, 1, 2, 3, 4, 5].reduce((sum, at) => sum + tone(time, at), 0) + 2 * random()),
        },
      ),
    ).noise;
    const { peaks = [], untold } = told?.[0] ?? {};
    const passing = peaks.filter(({ source }) => source.startsWith('comes and goes'));
    assert.equal(passing.length, 3);
    near(passing[0]?.frequency.likely ?? 0, 330, 0.01);
    assert.equal(untold, 3);
  });

  it('does not tell what moves in a hover that never changes', () => {
    const peaks = shaken({ speed: () => 200 });
    assert.equal(peaks.length, 2);
    assert.ok(peaks.every(({ source }) => source.includes('too evenly')));
  });

  it('finds no tone in noise', () => {
    const random = noise(3);
    const recording = madeRecording(
      { seconds: 30, rate: 1000 },
      { 'speed.1': (time) => turn * swinging(time), 'gyro.roll': () => degree * random() },
    );
    assert.deepEqual(reported(recording).noise.told?.[0]?.peaks, []);
  });

  it('gives the shaking of white noise, within its span', () => {
    const random = noise(5);
    const recording = madeRecording({ seconds: 30, rate: 1000 }, { 'gyro.yaw': () => degree * 2 * random() });
    const shaking = reported(recording).noise.told?.[0]?.shaking;
    const truth = 2 * Math.sqrt(480 / 500);
    near(shaking?.likely ?? 0, truth, 0.02);
    assert.ok((shaking?.low ?? 9) < truth && truth < (shaking?.high ?? 0));
  });

  it('says why there is none, and what to do', () => {
    const short = reported(madeRecording({ seconds: 2, rate: 1000 }, { 'gyro.roll': Math.sin })).noise;
    assert.ok(short.told === null && /2\.0 s of flight/.test(short.reason) && /Record/.test(short.advice));
    const slow = reported(madeRecording({ seconds: 60, rate: 10 }, { 'gyro.roll': Math.sin })).noise;
    assert.ok(slow.told === null && /10\.0 times a second/.test(slow.reason));
    const deaf = reported(madeRecording({ seconds: 60, rate: 500 }, { voltage: () => 16 })).noise;
    assert.ok(deaf.told === null && /how the craft turns/.test(deaf.reason));
  });

  it('draws how loud each frequency is at each speed', () => {
    const random = noise(2);
    const recording = madeRecording(
      { seconds: 30, rate: 1000 },
      {
        'speed.1': (time) => turn * swinging(time),
        'gyro.roll': () => degree * random(),
        'unfiltered-gyro.roll': () => degree * 3 * random(),
      },
    );
    const { noiseMaps, noise: about } = reported(recording);
    const [map] = noiseMaps.told ?? [];
    assert.equal(map?.signal, 'unfiltered-gyro');
    assert.equal(map.against, 'motor speed');
    assert.equal(map.edges.length, 13);
    assert.ok(
      map.decibels.every((row) => row.length === 12) && map.decibels.length === map.frequencies.length,
    );
    near(map.edges[0] ?? 0, 150, 0.02);
    assert.deepEqual(
      about.told?.[0]?.spectra.map(({ signal }) => signal),
      ['gyro', 'unfiltered-gyro'],
    );
  });

  it('says that the times are uneven, and that a part of the flight has another rate', () => {
    const random = noise(12);
    const made = madeRecording({ seconds: 20, rate: 500 }, { 'gyro.roll': () => degree * random() });
    assert.deepEqual(reported(made).leftOut, []);
    const [flight] = made.flights;
    const uneven = reported({ ...made, time: made.time.map((time) => time + 2e-4 * random()) });
    assert.match(
      uneven.leftOut[0] ?? '',
      /^The times of the rows are uneven by (19|20|21)\d us\..* 16 dB below it\.$/,
    );
    const parts = [
      { from: 0, to: 7000, rate: 500 },
      { from: 7000, to: 10_000, rate: 250 },
    ];
    const two = reported({ ...made, flights: [{ from: 0, to: 10_000, ...flight, stretches: parts }] });
    assert.match(two.leftOut[0] ?? '', /^A part of the flight, 12 s in all, has another rate of rows/);
  });
});
