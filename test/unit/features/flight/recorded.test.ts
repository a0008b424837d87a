import assert from 'node:assert/strict';
import { namedRecordings, recordedFlights } from '../../../../server/src/features/flight/recorded';
import { documentLinks } from '../../../../server/src/features/navigation/document-links';
import { craftOf } from '../../../support/findings';
import { snapshotOf } from '../../../support/snapshot';

const text = `[craft]
name = "Plover"
[flight.dawn]
date = 2026-06-12
recording = "flights/06 12.csv"  # hovered first
[flight.noon]
note = "no log"
recording = "../../../../up.csv"
[flight.dusk]
recording = flights
`;

describe('a recording that a flight names', () => {
  it('is a file beside the script, which the line leads to', () => {
    const { snapshot } = snapshotOf(text);
    const range = { start: { line: 4, character: 13 }, end: { line: 4, character: 30 } };
    const uri = 'test:///work/flights/06%2012.csv';
    assert.deepEqual(namedRecordings(snapshot), [{ range, uri }]);
    assert.deepEqual(documentLinks(snapshot), [{ range, target: uri, tooltip: 'Open 06 12.csv' }]);
    assert.deepEqual(recordedFlights(snapshot.craft), [
      { flight: 'dawn', date: '2026-06-12', path: 'flights/06 12.csv', uri },
    ]);
  });

  it('lies beside the script whose line says so, not the one that includes it', () => {
    const flown = '[flight.dawn]\nrecording = "0612.csv"\n';
    const craft = craftOf('include "log/flown.craft"\n[craft]\nname = "Plover"\n', {
      'log/flown.craft': flown,
    });
    assert.deepEqual(
      recordedFlights(craft).map(({ uri }) => uri),
      ['test:///work/log/0612.csv'],
    );
  });
});
