import { strict as assert } from 'node:assert';
import type { Paced } from '../../../../server/src/recording/read/paced';
import { timelineOf } from '../../../../server/src/recording/read/timeline';

const line = (counts: readonly number[], seconds = 1e-3, begins: readonly number[] = []) =>
  finished(timelineOf({ counts: Float64Array.from(counts), seconds, begins, alreadyOut: 0 }));

function finished<T>(work: Paced<T>): T {
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
}

const rising = (count: number, from = 0, step = 1) =>
  Array.from({ length: count }, (_, row) => from + row * step);

function steps(time: Float64Array): readonly number[] {
  return [...time.subarray(1)].map((one, at) => one - (time[at] ?? 0));
}

describe('the time of a recording', () => {
  it('begins at nothing and counts seconds', () => {
    const { time, kept, segments, step, remarks } = line(rising(1000, 77));
    assert.equal(kept, null);
    assert.ok(Math.abs((time[999] ?? 0) - 0.999) < 1e-12);
    assert.deepEqual([segments, step, remarks], [[{ from: 0, to: 1000 }], 0.001, []]);
  });

  for (const bits of [16, 24, 32])
    it(`goes on where a clock of ${bits} bits runs over`, () => {
      const counts = rising(3000, 2 ** bits - 1000).map((count) => count % 2 ** bits);
      const { time, segments, remarks } = line(counts, 1e-6);
      assert.ok(steps(time).every((step) => Math.abs(step - 1e-6) < 1e-12));
      assert.equal(segments.length, 1);
      assert.match(remarks[0] ?? '', /ran over once/);
    });

  it('goes on where a signed clock runs over, and one that writes a thousandth of what it counts', () => {
    const signed = rising(400, 2 ** 31 - 200).map((count) => (count >= 2 ** 31 ? count - 2 ** 32 : count));
    const milli = rising(400, 2 ** 32 - 200).map((count) => (count % 2 ** 32) / 1000);
    for (const counts of [signed, milli]) assert.equal(line(counts, 1e-6).segments.length, 1);
  });

  it('leaves out rows that fall back, and a stamp that leaps ahead alone', () => {
    const back = rising(500);
    back.splice(300, 0, 250);
    const ahead = rising(500);
    ahead[300] = 90_000;
    for (const counts of [back, ahead]) {
      const { time, kept, segments, remarks } = line(counts);
      assert.equal(kept?.[300], 0);
      assert.equal(segments.length, 1);
      assert.ok(steps(time).every((step) => step > 0 && step < 0.0021));
      assert.match(remarks[0] ?? '', /^A row whose time runs backwards or leaps/);
    }
  });

  it('begins anew where the clock was started once more, and where headings stand again', () => {
    for (const [begins, later] of [
      [[], 5],
      [[500], 80_000],
    ] as const) {
      const { time, segments } = line([...rising(500, 70_000), ...rising(500, later)], 1e-3, begins);
      assert.deepEqual(segments, [
        { from: 0, to: 500 },
        { from: 500, to: 1000 },
      ]);
      assert.ok([...time].every((one) => one >= 0));
    }
  });

  it('parts what lies more than some seconds apart', () => {
    assert.equal(line([...rising(500), ...rising(500, 20_000)]).segments.length, 2);
    assert.equal(line([...rising(500), ...rising(500, 1500)]).segments.length, 1);
  });

  it('leaves out the second of two rows with one stamp, if that is rare', () => {
    const counts = rising(500);
    counts.splice(300, 0, 299);
    const { time, remarks } = line(counts);
    assert.equal(time.length, 500);
    assert.match(remarks[0] ?? '', /^A row with the time of the row before/);
  });

  it('spreads rows evenly that come faster than their clock counts', () => {
    for (const times of [2, 3.3]) {
      const { time, step, remarks } = line(rising(3000).map((row) => Math.floor(row / times)));
      const all = steps(time);
      assert.ok(
        all.every((one) => one > 0),
        `${times}`,
      );
      assert.ok(Math.abs(step - 1e-3 / times) < 2e-6);
      assert.ok(all.every((one) => one < 1.5e-3 / Math.floor(times)));
      assert.match(remarks[0] ?? '', /^The clock counts coarser than rows come/);
    }
  });

  it('leaves out rows without a time', () => {
    const counts = rising(500);
    counts[7] = Number.NaN;
    const { time, kept, remarks } = line(counts);
    assert.deepEqual([time.length, kept?.[7]], [499, 0]);
    assert.match(remarks[0] ?? '', /^A row without a time/);
  });

  it('bears stamps that tremble', () => {
    const counts = rising(2000, 0, 1000).map((count, row) => count + ((row * 7919) % 301) - 150);
    const { segments, kept } = line(counts, 1e-6);
    assert.deepEqual([segments.length, kept], [1, null]);
  });
});
