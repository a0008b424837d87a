import assert from 'node:assert/strict';
import { flightRows } from '../../../../server/src/recording/estimate/flight-rows';
import { unfilteredNoise } from '../../../../server/src/recording/estimate/noise/unfiltered';
import type { Recording } from '../../../../server/src/recording/recording';
import { madeRecording, noise } from '../../../support/made-recording';
import { near } from '../../../support/near';

const degree = Math.PI / 180;
const turn = 2 * Math.PI;

function measured(recording: Recording) {
  const work = unfilteredNoise(flightRows(recording, 1) ?? assert.fail('no rows'));
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
}

/** White noise of so many deg/s rms at 500 rows a second, with a tone that stands and motors that swing. */
function flown(name: 'gyro' | 'unfiltered-gyro', logsSpeed = true): Recording {
  const random = noise(11);
  const gyro = (time: number) => degree * (5 * random() + 3 * Math.sin(turn * 118 * time));
  return madeRecording(
    { seconds: 30, rate: 500 },
    {
      [`${name}.roll`]: gyro,
      ...(logsSpeed
        ? {
            'speed.1': (time: number) => turn * (90 + 30 * Math.sin(time)),
            'speed.2': (time: number) => turn * (94 + 30 * Math.sin(time)),
          }
        : {}),
    },
  );
}

describe('noise before the filters', () => {
  it('has the power that was put in, up to half of the rate of rows', () => {
    const { told } = measured(flown('unfiltered-gyro'));
    const [roll] = told?.axes ?? assert.fail('nothing told');
    const power = roll?.powers.reduce((sum, one) => sum + one, 0) ?? 0;
    const [lowest = 0] = told?.frequencies ?? [];
    near(power, 25 * (1 - lowest / 250) + 4.5, 0.06);
    assert.equal(told?.frequencies.at(-1), 250);
    assert.equal(roll?.tones.length, 1);
    near(roll?.tones[0]?.frequency ?? 0, 118, 0.005);
  });

  it('has moments all over the flight, with each motor’s own speed', () => {
    const { told } = measured(flown('unfiltered-gyro'));
    const moments = told?.moments ?? [];
    assert.ok(moments.length >= 24 && moments.length <= 48, `${moments.length}`);
    for (const { turns } of moments) near((turns[1] ?? 0) - (turns[0] ?? 0), 4, 0.01);
    const first = moments.map(({ turns }) => turns[0] ?? 0);
    assert.ok(Math.max(...first) > 115 && Math.min(...first) < 65);
    assert.deepEqual(measured(flown('unfiltered-gyro', false)).told?.moments, []);
  });

  it('is withheld where the gyro was logged behind the filters alone, with how to get it', () => {
    const answer = measured(flown('gyro'));
    assert.ok(answer.told === null);
    assert.match(answer.reason, /made\.csv has no column of the gyro from before the board’s filters/);
    assert.match(answer.advice, /^Have the board log it/);
  });
});
