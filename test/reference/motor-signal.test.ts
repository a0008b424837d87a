import assert from 'node:assert/strict';
import {
  computingWait,
  digitalSignalTime,
  frameSeconds,
  motorFrame,
  noLoadSpeed,
} from '../../server/src/physics/motor-signal';
import { near } from '../support/near';

const answer = { turnAround: 30e-6, bits: 21, rateRatio: 1.25 };

describe('motor signals', () => {
  it('16 bits at 300 kbit/s and a pause of 50 us repeat after 103.33 us (Espressif ESP-IDF, dshot_esc example)', () => {
    near(digitalSignalTime({ frameBits: 16, bitRate: 300e3, gap: 50e-6 }, null), 103.333e-6, 1e-5);
  });

  it('frames of the whole family (bits over rate: 106.667, 53.333, 26.667, 13.333 us)', () => {
    const table = [
      [150e3, 106.667e-6],
      [300e3, 53.333e-6],
      [600e3, 26.667e-6],
      [1200e3, 13.333e-6],
    ] as const;
    for (const [bitRate, seconds] of table) {
      near(digitalSignalTime({ frameBits: 16, bitRate, gap: 0 }, null), seconds, 1e-4);
    }
  });

  it('16 bits at 300 kbit/s have arrived after 53.333 us, whatever follows (bits over rate)', () => {
    near(frameSeconds({ frameBits: 16, bitRate: 300e3, gap: 50e-6 }), 53.333e-6, 1e-5);
  });

  it('a loop of 4 kHz is 375 us late, and 625 us where every third command is sent (a hold of T delays by T / 2)', () => {
    near(computingWait(4000, 1 / 4000), 375e-6, 1e-9);
    near(computingWait(4000, 3 / 4000), 625e-6, 1e-9);
  });

  it('an answer of 21 bits at 5/4 of 300 kbit/s after 30 us adds 86 us (figures of the answer from memory)', () => {
    const signal = { frameBits: 16, bitRate: 300e3, gap: 10e-6 };
    near(digitalSignalTime(signal, answer) - digitalSignalTime(signal, null), 86e-6, 1e-9);
  });

  it('2900 rpm a volt at 25.2 V turn at 73 080 rpm without a load (definition of the speed constant)', () => {
    const perMinute = (2 * Math.PI) / 60;
    near(noLoadSpeed(2900 * perMinute, 25.2) / perMinute, 73_080, 1e-9);
    near(noLoadSpeed(2900 * perMinute, 25.2, 0.05) / perMinute, 3654, 1e-9);
  });
});

describe('the frame of a digital motor command (Espressif ESP-IDF, dshot_esc encoder, worked by hand)', () => {
  for (const [value, asks, bits] of [
    [1046, false, 0x82c6],
    [1000, false, 0x7d0a],
    [2047, true, 0xffff],
    [0, false, 0],
  ] as const)
    it(`${value}${asks ? ' with telemetry' : ''} is 0x${bits.toString(16)}`, () =>
      assert.equal(motorFrame(value, asks), bits));

  it('is refused for what no eleven bits hold', () => {
    for (const value of [-1, 2048, 1.5]) assert.throws(() => motorFrame(value, false), RangeError);
  });
});
