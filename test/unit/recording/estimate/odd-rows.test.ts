import assert from 'node:assert/strict';
import type { Channel } from '../../../../server/src/recording/channel';
import { madeRecording, noise, reported } from '../../../support/made-recording';

type Made = Readonly<Partial<Record<Channel, (time: number, row: number) => number>>>;

const random = noise(3);
const hole = Number.NaN;

/** What loggers, and people, have written. */
const cases: Readonly<Record<string, Made>> = {
  'nothing but zeros': all(() => 0),
  'nothing in any cell': all(() => hole),
  'every third cell empty': all((_, row) => (row % 3 === 0 ? hole : 0.4 + 0.1 * random())),
  'one half empty': all((time) => (time < 10 ? hole : 0.4 + 0.1 * random())),
  'numbers as large as can be': all(() => 1e30 * random()),
  'nothing above zero': all(() => -0.3 - 0.1 * Math.abs(random())),
  'nothing that changes': all(() => 0.4),
};

function all(of: (time: number, row: number) => number): Made {
  const names: readonly Channel[] = [
    'gyro.roll',
    'gyro.pitch',
    'throttle',
    'motor.1',
    'motor.2',
    'speed.1',
    'speed.2',
    'voltage',
    'current',
    'frames',
  ];
  return Object.fromEntries(names.map((name) => [name, of]));
}

describe('a recording of rows that nobody wants', () => {
  for (const [name, made] of Object.entries(cases))
    it(`is told without a number that is none: ${name}`, () => {
      for (const [seconds, rate] of [
        [20, 500],
        [3, 500],
        [0.02, 500],
        [20, 50],
      ] as const) {
        const report = reported(madeRecording({ seconds, rate }, made));
        JSON.stringify(report, (key, value: unknown) => {
          if (typeof value === 'number')
            assert.ok(Number.isFinite(value), `${key} of ${seconds} s at ${rate}`);
          return value;
        });
        for (const answer of [report.noise, report.motors, report.pack, report.hover, report.link])
          if (answer.told === null) assert.ok(answer.reason !== '' && answer.advice !== '');
      }
    });

  it('says so where the gyro has a hole in every second', () => {
    const made = all((_, row) => (row % 3 === 0 ? hole : random()));
    const { noise: heard } = reported(madeRecording({ seconds: 20, rate: 500 }, made));
    assert.ok(heard.told === null && /in each row/.test(heard.reason));
  });
});
