import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { keptReadings } from '../../../../server/src/features/flight/keep-readings';
import { flightEdit } from '../../../../server/src/features/flight/note-flight';
import { benchCard } from '../../../../server/src/sheet/bench-card/bench-card';
import { nothingTaken, withReading, withTick } from '../../../../server/src/sheet/bench-card/taken';
import { testCatalog } from '../../../support/catalog';
import { craftOf, findingsOf } from '../../../support/findings';

const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
const craft = craftOf(readFileSync('test/demo/sandmartin.craft', 'utf8'), club);
const card = benchCard(craft, findingsOf(craft));
const keptOf = (of: typeof card, taken: readonly (readonly [id: string, value: string])[]) =>
  keptReadings(
    of,
    { ticked: [], readings: taken.map(([id, value]) => ({ id, value })) },
    testCatalog,
    '2026-11-25',
  );
const stepsOf = card.parts.flatMap(({ steps }) => steps);
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
        comments: [],
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

  it('of settings that the script leaves open are lines of the script, as it writes them', () => {
    const bare = craftOf('[craft]\nname = "x"\n');
    const asked = benchCard(bare, findingsOf(bare));
    const { flights, settings, faults } = keptOf(asked, [
      ['bound receiver.port', ' uart3 '],
      ['no-short 1', '12000'],
    ]);
    assert.deepEqual([...settings, ...faults], [['receiver.port', 'uart3']]);
    assert.deepEqual(
      flights.map(({ answers }) => answers.at(-1)?.typed),
      ['No short circuit: at the battery pads after five seconds 12000 ohm'],
    );
    assert.deepEqual(keptOf(asked, [['bound receiver.port', 'uart3']]).flights, []);
    assert.deepEqual(
      keptOf(asked, [['channel-order receiver.order', 'TAXX']]).faults.map(({ id }) => id),
      ['channel-order receiver.order'],
    );
  });

  it('of a card that is ticked say first what is not, before the pilot’s own words', () => {
    const done = stepsOf.slice(0, -1).reduce((taken, step) => withTick(taken, step, true), nothingTaken);
    const said = withReading(done, 'first-flight 3 sprint', 'smooth');
    const [flight] = keptReadings(card, said, testCatalog, '2026-11-25').flights;
    const last = stepsOf.at(-1)?.title;
    assert.equal(
      flight?.answers.at(-1)?.typed,
      `Not ticked: “${last}”. ${stepsOf.length - 1} of ${stepsOf.length} steps are. smooth`,
    );
  });

  it('at the bench alone are no flight, and none at all are nothing', () => {
    assert.equal(kept(['no-short 1', '12 kohm']).flights[0]?.isFlown, false);
    const { flights, settings, faults } = kept(['no-short 1', ' ']);
    assert.deepEqual([...flights, ...settings, ...faults], []);
  });

  it('that can’t be kept are named, each with its reason', () => {
    const { faults } = kept(['warm-motors 1 sprint', '41 V'], ['first-flight 2 cruise', 'low']);
    assert.deepEqual(faults.map(({ id }) => id).sort(), ['first-flight 2 cruise', 'warm-motors 1 sprint']);
    assert.match(faults.find(({ id }) => id === 'warm-motors 1 sprint')?.message ?? '', /temperature/);
  });

  it('that a note has no room for are comments, a line each; the pilot’s own words are never cut', () => {
    const alone = benchCard(craft, findingsOf(craft), ['cruise']);
    const many = alone.parts
      .flatMap(({ steps }) => steps.flatMap(({ readings }) => readings))
      .filter(({ setting }) => setting === null)
      .map(({ id, unit }) => [id, unit === '' ? '11' : `7 ${unit}`] as const);
    const { flights, faults } = keptOf(alone, [...many, ['first-flight 3', 'smooth']]);
    assert.deepEqual(faults, []);
    const [own] = flights;
    assert.equal(own?.answers.at(-1)?.typed, 'smooth');
    assert.ok(own?.comments.includes('No short circuit: at the battery pads after five seconds 7 ohm'));
    assert.equal(own?.comments.length, many.length);
    assert.ok(many.length > 15);
    const { text } = flightEdit({ script: craft.root, catalog: testCatalog }, [
      { name: 'bench', answers: own?.answers ?? [], comments: own?.comments ?? [] },
    ]);
    assert.match(text, /\nnote = "smooth"\n# No short circuit: .* 7 ohm\n# First power: .* 7 V\n/);
    const long = 'x'.repeat(300);
    const together = kept(['first-flight 3 sprint', long], ['first-flight 3 cruise', `${long}${long}`]);
    assert.deepEqual(
      together.faults.map(({ id }) => id),
      ['first-flight 3 cruise'],
    );
  });
});
