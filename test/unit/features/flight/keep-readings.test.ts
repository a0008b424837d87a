import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { keptReadings } from '../../../../server/src/features/flight/keep-readings';
import { benchCard } from '../../../../server/src/sheet/bench-card/bench-card';
import { testCatalog } from '../../../support/catalog';
import { craftOf, findingsOf } from '../../../support/findings';

const club = { 'club-habits.craft': readFileSync('test/demo/club-habits.craft', 'utf8') };
const craft = craftOf(readFileSync('test/demo/sandmartin.craft', 'utf8'), club);
const card = benchCard(craft, findingsOf(craft), 'sprint');
const kept = (...taken: readonly (readonly [id: string, value: string])[]) =>
  keptReadings(
    card,
    taken.map(([id, value]) => ({ id, value })),
    testCatalog,
    '2026-11-25',
  );

describe('readings of the bench card', () => {
  it('go into the settings of a flight where there is one, the others into its note', () => {
    const { answers, faults, isFlown } = kept(
      ['no-short 1', '12000'],
      ['warm-motors 1', '41'],
      ['first-flight 3', 'smooth'],
      ['receiver-supply 1', ' '],
    );
    assert.deepEqual(faults, []);
    assert.equal(isFlown, true);
    assert.deepEqual(answers, [
      { setting: 'date', typed: '2026-11-25' },
      { setting: 'pack', typed: 'sprint' },
      { setting: 'motor-temperature', typed: '41' },
      {
        setting: 'note',
        typed: 'smooth; No short circuit: at the battery pads after five seconds 12000 ohm',
      },
    ]);
  });

  it('at the bench alone are no flight', () => {
    assert.equal(kept(['no-short 1', '12 kohm']).isFlown, false);
  });

  it('that can’t be kept are named, each with its reason', () => {
    const { faults } = kept(['warm-motors 1', '41 V'], ['first-flight 2', 'low']);
    assert.deepEqual(
      faults.map(({ id }) => id),
      ['first-flight 2', 'warm-motors 1'].sort((a, b) => (a < b ? 1 : -1)),
    );
    assert.match(faults.find(({ id }) => id === 'warm-motors 1')?.message ?? '', /temperature/);
  });

  it('that make too long a note together are refused, not cut', () => {
    const { faults } = kept(['no-short 1', 'x'.repeat(600)]);
    assert.equal(faults.length, 1);
    assert.match(faults[0]?.message ?? '', /too long a note/);
  });
});
