import assert from 'node:assert/strict';
import { confirmedLayout, recordingOf } from '../../support/recorded';
import { randomFlight } from '../../support/simulated-flights';
import { saysItsUnits } from '../../sweeps/flights/prove';

/** The first flight that is written in each way. */
function flights() {
  const found = new Map<string, ReturnType<typeof randomFlight>>();
  for (let seed = 1; found.size < 4; seed += 1) {
    const flight = randomFlight(seed);
    if (!found.has(flight.layout.name)) found.set(flight.layout.name, flight);
  }
  return [...found.values()];
}

describe('files that simulated loggers write', () => {
  for (const { layout, bytes, rows } of flights()) {
    it(`${layout.name}: is read, once it is confirmed, as it was flown`, async () => {
      const { channels, time, isSimulated, flights } = await recordingOf(bytes, [confirmedLayout(layout)]);
      assert.equal(isSimulated, true);
      assert.equal(flights.length, 1);
      const first = rows.count - time.length;
      assert.ok(first === 0 || (first === 1 && layout.startsWithZeros));
      for (const { of, factor, digits } of layout.columns) {
        const channel = (of ?? '').replace('unfiltered', 'unfiltered-gyro');
        const values = [...channels].find(([name]) => name === channel)?.[1];
        const flown = rows.columns.get(of ?? '');
        if (values === undefined || flown === undefined) continue;
        const off = 0.51 / 10 ** digits / Math.abs(factor);
        for (const [row, value] of values.entries())
          if (!(Math.abs(value - flown[row + first]!) <= off + 1e-6 * Math.abs(value)))
            assert.fail(`${of}, row ${row}: ${value} for ${flown[row + first]}`);
      }
      const wanted = layout.columns.filter(
        ({ of }) => of !== null && !/^(?:time|armed|upright|warmth)$/.test(of),
      );
      assert.equal(channels.size, wanted.length);
    });

    if (saysItsUnits(layout.name))
      it(`${layout.name}: is read alike without a question`, async () => {
        const [learnt, confirmed] = [
          await recordingOf(bytes, []),
          await recordingOf(bytes, [confirmedLayout(layout)]),
        ];
        assert.deepEqual(learnt.flights, confirmed.flights);
        for (const [channel, values] of confirmed.channels) {
          const found = learnt.channels.get(channel);
          assert.ok(found !== undefined, channel);
          for (const [row, value] of values.entries())
            if (!(Math.abs(found[row]! - value) <= 1e-5 * (1 + Math.abs(value))))
              assert.fail(`${channel}, row ${row}`);
        }
      });
    else
      it(`${layout.name}: what nobody can know is asked, and what is read is right but for its sign`, async () => {
        const learnt = await recordingOf(bytes, []);
        const confirmed = await recordingOf(bytes, [confirmedLayout(layout)]);
        const isAsked = learnt.leftOut.some((sentence) => /not read before it is said/.test(sentence));
        assert.ok(isAsked || learnt.channels.size === confirmed.channels.size);
        for (const [channel, values] of learnt.channels) {
          const flown = confirmed.channels.get(channel);
          for (const [row, value] of values.entries())
            if (
              !(
                Math.abs(Math.abs(flown?.[row] ?? Number.NaN) - Math.abs(value)) <=
                1e-5 * (1 + Math.abs(value))
              )
            )
              assert.fail(`${channel}, row ${row}`);
        }
      });
  }
});
