import assert from 'node:assert/strict';
import { madeRecording, noise, reported } from '../../../support/made-recording';
import { near } from '../../../support/near';

const degree = Math.PI / 180;

/** A hover at 40 %, a climb as calm at 60 %, and a slow descent at 36 % that brings it back. */
function throttleOf(time: number): number {
  const at = time % 20;
  return at < 10 ? 0.4 : at < 12 ? 0.6 : at < 16 ? 0.29 : 0.4;
}

function hovered(throttle: (time: number) => number, turning = 2) {
  const random = noise(6);
  return reported(
    madeRecording(
      { seconds: 60, rate: 300 },
      {
        throttle: (time) => throttle(time) + 0.002 * random(),
        'gyro.roll': (time) => degree * turning * Math.sin(3 * time),
        current: (time) => 30 * throttle(time),
      },
    ),
  ).hover;
}

describe('the hover in a recording', () => {
  it('is where calm flight takes the mean thrust, and no climb or descent that is as calm', () => {
    const { told } = hovered(throttleOf);
    near(told?.throttle.likely ?? 0, 40, 0.02);
    near(told?.current?.likely ?? 0, 12, 0.02);
    assert.equal(told?.thrustScale, null);
  });

  it('is withheld where the craft never held still', () => {
    const hover = hovered(throttleOf, 200);
    assert.ok(hover.told === null && /neither turned nor its throttle moved/.test(hover.reason));
  });

  it('needs the throttle, and to know how it turns', () => {
    const blind = reported(madeRecording({ seconds: 20, rate: 300 }, { voltage: () => 16 })).hover;
    assert.ok(blind.told === null && /the throttle/.test(blind.reason));
    const deaf = reported(madeRecording({ seconds: 20, rate: 300 }, { throttle: () => 0.4 })).hover;
    assert.ok(deaf.told === null && /how the craft turns/.test(deaf.reason));
  });
});

describe('the link in a recording', () => {
  const link = (since: (time: number) => number, rate = 1000) =>
    reported(madeRecording({ seconds: 20, rate }, { frames: since })).link;

  it('has the interval of its frames and the longest gap', () => {
    const lost = (time: number) => (time > 10 && time < 10.2 ? time - 10 : time % 0.02);
    const { told } = link(lost);
    near(told?.interval.likely ?? 0, 20, 0.02);
    near(told?.longestGap.likely ?? 0, 200, 0.05);
    near(told?.whole.likely ?? 0, 99.1, 0.005);
  });

  it('is withheld where frames come as often as rows', () => {
    const one = link((time) => time % 0.004, 300);
    assert.equal(one.told, null);
    const none = reported(madeRecording({ seconds: 5, rate: 300 }, { throttle: () => 0.3 })).link;
    assert.ok(none.told === null && /control frames/.test(none.reason));
  });
});
