import assert from 'node:assert/strict';
import fc from 'fast-check';
import { Amount, distinctTexts } from '../../../server/src/units/distinct-texts';
import { exactText } from '../../../server/src/units/quantity';
import { findingsIn } from '../../support/findings';

const text = (value: string) => ({ fewest: 0, write: () => value });
const volts = (value: number) => new Amount(value, 'V');

describe('numbers of one sentence', () => {
  it('have three digits where that tells them apart', () =>
    assert.deepEqual(distinctTexts([volts(16.7961), volts(16.612)]), ['16.8 V', '16.6 V']));

  it('have as many more as make them differ, and no more', () =>
    assert.deepEqual(distinctTexts([volts(16.7961), volts(16.8042), volts(3.30001)]), [
      '16.796 V',
      '16.804 V',
      '3.3 V',
    ]));

  it('differ from what is written out, alone or inside of a text', () =>
    assert.deepEqual(
      distinctTexts([volts(39.98), text('40 V'), volts(40.02), text('the board takes 1 V to 40 V')]),
      ['39.98 V', '40 V', '40.02 V', 'the board takes 1 V to 40 V'],
    ));

  it('may be alike where they are the same, and where only the unit differs', () =>
    assert.deepEqual(distinctTexts([volts(4.2), volts(4.2), new Amount(4.2, 'A')]), [
      '4.2 V',
      '4.2 V',
      '4.2 A',
    ]));

  it('are never shown alike while they differ by a billionth or more', () => {
    const value = fc.double({ min: 0.001, max: 1e6, noNaN: true });
    const apart = fc.double({ min: 1e-9, max: 0.1, noNaN: true });
    fc.assert(
      fc.property(value, apart, (one, share) => {
        const [first, second] = distinctTexts([volts(one), volts(one * (1 + share))]);
        assert.notEqual(first, second);
      }),
    );
  });
});

describe('a limit in a message', () => {
  const told = (id: string, ...lines: readonly string[]) => {
    const found = findingsIn(lines.join('\n')).find((finding) => finding.id === id);
    assert.ok(found, id);
    return found.message;
  };

  for (const inches of ['40.0004', '40.00004']) {
    it(`differs from the value: ${inches} in`, () =>
      assert.equal(
        told('line/outside-range', `prop.pitch = ${inches} in`),
        `${inches} in lies outside what is possible: 0.1 in to 40 in.`,
      ));
  }

  it('differs from the value by any share that is told at all', () => {
    fc.assert(
      fc.property(fc.double({ min: 2e-9, max: 0.5, noNaN: true }), (share) => {
        const given = exactText(40 * 0.0254 * (1 + share), 'in');
        const [, value, low, high] =
          /^(\S+) in lies outside what is possible: (\S+) in to (\S+) in\.$/.exec(
            told('line/outside-range', `prop.pitch = ${given}`),
          ) ?? [];
        assert.deepEqual([low, high], ['0.1', '40']);
        assert.notEqual(value, high);
      }),
      { numRuns: 30 },
    );
  });

  it('differs from a figure that is a hair above it', () => {
    const pack = ['pack.sprint.chemistry = lipo', 'pack.sprint.cells = 4', 'pack.sprint.capacity = 1000 mAh'];
    assert.match(
      told(
        'power/discharge-exceeded',
        ...pack,
        'pack.sprint.discharge = 30 C',
        'wire.battery-lead.current = 30.001 A',
      ),
      /draws 30\.001 A on average, and the pack gives 30 A /,
    );
    assert.match(
      told(
        'power/divider-overflow',
        ...pack,
        'power.divider-upper = 40.92 kohm',
        'power.divider-lower = 10 kohm',
        'power.reference-voltage = 3.299 V',
      ),
      /puts 3\.2993 V on the converter .* reads 3\.299 V at most/,
    );
  });
});
