import assert from 'node:assert/strict';
import type { Recording } from '../../server/src/recording/recording';

/** All that whoever reads a recording relies on. */
export function holdsTogether({ time, channels, flights }: Recording): void {
  for (const values of channels.values()) assert.equal(values.length, time.length);
  let before = 0;
  for (const { from, to, stretches } of flights) {
    assert.ok(before <= from && from < to && to <= time.length);
    before = to;
    let end = from;
    for (const stretch of stretches) {
      assert.ok(end <= stretch.from && stretch.from < stretch.to && stretch.to <= to && stretch.rate > 0);
      end = stretch.to;
    }
    for (let row = from + 1; row < to; row += 1)
      if (!((time[row] ?? 0) >= (time[row - 1] ?? 0))) assert.fail(`time falls at row ${row}`);
  }
}
