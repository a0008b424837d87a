import assert from 'node:assert/strict';
import { madeRecording, noise, reported } from '../../../support/made-recording';
import { near } from '../../../support/near';

interface MadePack {
  readonly current?: (time: number) => number;
  readonly without?: 'voltage' | 'current';
  readonly sign?: 1 | -1;
}

const atOnce = 0.02;
const slow = { resistance: 0.006, seconds: 4 };

/** 16.4 V behind 20 mohm at once and 6 more that come slowly, emptying by a tenth of a volt in 40 s. */
function made({ current = climbing, without, sign = 1 }: MadePack) {
  const random = noise(8);
  const rate = 200;
  let state = 0;
  const voltage = (time: number) => {
    state += (current(time) - state) / (slow.seconds * rate);
    return 16.4 - 0.0025 * time - atOnce * current(time) - slow.resistance * state + 0.01 * random();
  };
  return reported(
    madeRecording(
      { seconds: 40, rate },
      {
        ...(without === 'voltage' ? {} : { voltage }),
        ...(without === 'current' ? {} : { current: (time) => sign * current(time) + 0.05 * random() }),
      },
    ),
  ).pack;
}

/** A hover with climbs of some seconds. */
function climbing(time: number): number {
  return time < 1 ? 0.5 : time % 9 < 3 ? 28 : 12;
}

describe('what the pack gave in a recording', () => {
  it('its resistance after one second and after ten, open voltage and charge are found', () => {
    const { told } = made({});
    const resistanceAt = (seconds: number) =>
      1000 * (atOnce + slow.resistance * (1 - Math.exp(-seconds / slow.seconds)));
    for (const [span, truth] of [
      [told?.resistanceAtOneSecond, resistanceAt(1)],
      [told?.resistanceAtTenSeconds, resistanceAt(10)],
    ] as const) {
      near(span?.told?.likely ?? 0, truth, 0.08);
      assert.ok((span?.told?.low ?? 99) < truth && truth < (span?.told?.high ?? 0));
    }
    near(told?.openVoltage.told?.likely ?? 0, 16.4, 0.005);
    const used = Array.from({ length: 4000 }, (_, at) => climbing(at / 100) / 100).reduce(
      (sum, one) => sum + one,
      0,
    );
    near(told?.usedCharge.told?.likely ?? 0, used / 3.6, 0.02);
    near(told?.lowestVoltage?.likely ?? 0, 16.4 - 0.1 - 0.026 * 28, 0.02);
  });

  it('is withheld where the load never changed', () => {
    const { told } = made({ current: () => 12 });
    const one = told?.resistanceAtTenSeconds;
    assert.ok(one?.told === null && /stayed within/.test(one.reason) && /climbs/.test(one.advice));
    assert.ok(told?.usedCharge.told !== null);
  });

  it('needs voltage and current', () => {
    const noCurrent = made({ without: 'current' }).told;
    assert.ok(noCurrent?.resistanceAtTenSeconds.told === null && noCurrent.usedCharge.told === null);
    assert.ok(noCurrent.lowestVoltage !== null);
    const noVoltage = made({ without: 'voltage' }).told;
    assert.ok(noVoltage?.resistanceAtTenSeconds.told === null && noVoltage.usedCharge.told !== null);
    const { pack } = reported(madeRecording({ seconds: 40, rate: 200 }, { throttle: () => 0.4 }));
    assert.ok(pack.told === null && /voltage or the current/.test(pack.reason));
  });

  it('says to look at the sign of a current that is negative', () => {
    const one = made({ sign: -1 }).told?.resistanceAtTenSeconds;
    assert.ok(one?.told === null && /sign/.test(one.advice));
  });
});
