import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { keptReadings } from '../../../../server/src/features/flight/keep-readings';
import { benchCard } from '../../../../server/src/sheet/bench-card/bench-card';
import { testCatalog } from '../../../support/catalog';
import { craftOf, findingsOf } from '../../../support/findings';

const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
const craft = craftOf(readFileSync('test/demo/sandmartin.craft', 'utf8'), club);
const card = benchCard(craft, findingsOf(craft));
const keptOf = (of: typeof card, taken: readonly (readonly [id: string, value: string])[]) =>
  keptReadings(
    of,
    taken.map(([id, value]) => ({ id, value })),
    testCatalog,
    '2026-11-25',
  );
const kept = (...taken: readonly (readonly [id: string, value: string])[]) => keptOf(card, taken);

describe('readings of the bench card', () => {
  it('go into the settings of a flight where there is one, the others into its note', () => {
    const { flights, faults } = kept(
      ['no-short 1', '12000'],
      ['warm-motors 1 sprint', '41'],
      ['first-flight 3 sprint', 'smooth'],
      ['receiver-supply 1', ' '],
      ['see noticed', 'a dim overlay'],
      ['see done-by', 'Maren'],
    );
    assert.deepEqual(faults, []);
    assert.deepEqual(flights, [
      {
        pack: 'sprint',
        isFlown: true,
        answers: [
          { setting: 'date', typed: '2026-11-25' },
          { setting: 'pack', typed: 'sprint' },
          { setting: 'motor-temperature', typed: '41' },
          {
            setting: 'note',
            typed:
              'smooth; No short circuit: at the battery pads after five seconds 12000 ohm; See: what was noticed a dim overlay',
          },
        ],
      },
    ]);
  });

  it('of several packs become a flight of each, and what no pack has a note by itself', () => {
    const { flights, faults } = kept(
      ['no-short 1', '12000'],
      ['test-hover 1 sprint', '27'],
      ['test-hover 1 cruise', '45 %'],
      ['first-power 1 cruise', '16.7'],
    );
    assert.deepEqual(faults, []);
    assert.deepEqual(
      flights.map(({ pack, isFlown }) => [pack, isFlown]),
      [
        [null, false],
        ['sprint', true],
        ['cruise', true],
      ],
    );
    assert.deepEqual(flights[2]?.answers, [
      { setting: 'date', typed: '2026-11-25' },
      { setting: 'pack', typed: 'cruise' },
      { setting: 'hover-throttle', typed: '45 %' },
      { setting: 'note', typed: 'First power: the pack before it goes in 16.7 V' },
    ]);
  });

  it('go to the only pack of a card for one', () => {
    const alone = benchCard(craft, findingsOf(craft), ['cruise']);
    const { flights } = keptOf(alone, [
      ['no-short 1', '12000'],
      ['test-hover 1', '45'],
    ]);
    assert.deepEqual(
      flights.map(({ pack }) => pack),
      ['cruise'],
    );
  });

  it('of settings that the script leaves open are noted under their names', () => {
    const bare = craftOf('[craft]\nname = "x"\n');
    const { flights } = keptOf(benchCard(bare, findingsOf(bare)), [['bound receiver.port', 'uart3']]);
    assert.equal(
      flights[0]?.answers.at(-1)?.typed,
      'The receiver hears its transmitter: serial port of the receiver (receiver.port) uart3',
    );
  });

  it('at the bench alone are no flight, and none at all are nothing', () => {
    assert.equal(kept(['no-short 1', '12 kohm']).flights[0]?.isFlown, false);
    assert.deepEqual(kept(['no-short 1', ' ']), { flights: [], faults: [] });
  });

  it('that can’t be kept are named, each with its reason', () => {
    const { faults } = kept(['warm-motors 1 sprint', '41 V'], ['first-flight 2 cruise', 'low']);
    assert.deepEqual(faults.map(({ id }) => id).sort(), ['first-flight 2 cruise', 'warm-motors 1 sprint']);
    assert.match(faults.find(({ id }) => id === 'warm-motors 1 sprint')?.message ?? '', /temperature/);
  });

  it('that make too long a note together are refused, not cut', () => {
    const { faults } = kept(['no-short 1', 'x'.repeat(600)]);
    assert.equal(faults.length, 1);
    assert.match(faults[0]?.message ?? '', /too long a note/);
  });
});
