import assert from 'node:assert/strict';
import { flightTaken, flightTakenText } from '../../../server/src/recording/flight-taken';

/** Flights that last so many seconds, at eight rows a second. */
function flown(...seconds: readonly number[]) {
  let from = 0;
  const flights = seconds.map((one) => {
    const flight = { from, to: from + 8 * one + 1, stretches: [] };
    from = flight.to;
    return flight;
  });
  return { flights, time: Float64Array.from({ length: from }, (_, row) => row / 8) };
}

describe('which flight of a file is told', () => {
  it('is the one that is asked for, else the longest, of equals the first', () => {
    assert.equal(flightTaken(flown(3, 9, 5), null), 2);
    assert.equal(flightTaken(flown(9, 9), null), 1);
    assert.equal(flightTaken(flown(3, 9, 5), 3), 3);
    assert.equal(flightTaken(flown(7), null), 1);
  });

  it('is none where there are not so many', () => {
    assert.equal(flightTaken(flown(), null), null);
    for (const asked of [0, 4, 1.5, Number.NaN]) assert.equal(flightTaken(flown(3, 9, 5), asked), null);
  });

  it('is said where the file holds several', () => {
    assert.equal(flightTakenText('dusk.csv', { flight: 1, flights: 1 }, null), 'dusk.csv');
    const second = { flight: 2, flights: 3 };
    assert.equal(flightTakenText('dusk.csv', second, null), 'flight 2 of the 3 in dusk.csv, the longest');
    assert.equal(flightTakenText('dusk.csv', second, 2), 'flight 2 of the 3 in dusk.csv');
  });
});
