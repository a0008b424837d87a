import assert from 'node:assert/strict';
import { alias, aliasSpan, evenDivision, halfRate } from '../../server/src/physics/sampling';
import { near } from '../support/near';

describe('sampling', () => {
  it('folds tones about multiples of half the rate (sampling theorem)', () => {
    // tone, rate, seen as
    const table = [
      [900, 1000, 100],
      [5000, 8000, 3000],
      [7900, 8000, 100],
      [1700, 3200, 1500],
      [30_000, 8000, 2000],
      [33_000, 32_000, 1000],
    ] as const;
    for (const [tone, rate, seen] of table) assert.equal(alias(tone, rate), seen);
    for (const tone of [1, 250, 499, 500]) assert.equal(alias(tone, 1000), tone);
  });

  it('folds a span as each of its tones: up to half of the rate, down to nothing, or neither (by looking at many)', () => {
    for (const [low, high] of [
      [100, 900],
      [1900, 2300],
      [3700, 4200],
      [1500, 6500],
      [4100, 4300],
    ] as const) {
      const seen = Array.from({ length: 4001 }, (_, step) => alias(low + (step / 4000) * (high - low), 4000));
      const span = aliasSpan(low, high, 4000);
      assert.ok(Math.abs(span.low - Math.min(...seen)) <= 1, `${low} to ${high}: ${span.low}`);
      assert.ok(Math.abs(span.high - Math.max(...seen)) <= 1, `${low} to ${high}: ${span.high}`);
    }
  });

  it('gives the same samples for a tone and its alias (by computing them)', () => {
    const rate = 3200;
    for (const tone of [1700, 2900, 5000, 7777]) {
      const seen = alias(tone, rate);
      for (let index = 0; index < 50; index += 1) {
        const at = (frequency: number) => Math.cos((2 * Math.PI * frequency * index) / rate);
        assert.ok(Math.abs(at(tone) - at(seen)) < 1e-9);
      }
    }
  });

  it('takes half of the rate as the limit, as a test of SciPy does (TestIIRNotch.test_fs_param, 10 kHz)', () => {
    near(1500 / halfRate(10_000), 0.3, 1e-12);
  });

  it('divides the rates of gyro parts evenly (Zephyr RTOS, icm42688.h: 32 kHz down to 1 kHz)', () => {
    for (const [rate, times] of [
      [16_000, 2],
      [8000, 4],
      [1000, 32],
    ] as const) {
      assert.equal(evenDivision(32_000, rate), times);
    }
    assert.equal(evenDivision(6660, 3330), 2);
    assert.equal(evenDivision(3200, 2000), null);
    assert.equal(evenDivision(1000, 2000), null);
  });
});
