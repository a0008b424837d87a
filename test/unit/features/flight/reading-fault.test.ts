import assert from 'node:assert/strict';
import { asTyped, type CardField, readingFault } from '../../../../server/src/features/flight/reading-fault';
import { testCatalog } from '../../../support/catalog';

const inUnit = (unit: string): CardField => ({ unit, setting: null, script: null });
const fault = (kind: CardField, typed: string) => readingFault(testCatalog, kind, typed);

describe('a reading as it is typed', () => {
  const taken: readonly (readonly [unit: string, typed: string])[] = [
    ['ohm', '12000'],
    ['ohm', '12 kohm'],
    ['ohm', '> 200 kohm'],
    ['ohm', '>40'],
    ['V', '16.7'],
    ['V', '16,7'],
    ['V', '5020 mV'],
    ['us', '1.5 ms'],
    ['mW', '23 dBm'],
    ['%', '0'],
    ['', '11'],
    ['V', '   '],
  ];
  for (const [unit, typed] of taken)
    it(`takes "${typed}" where ${unit || 'a count'} is asked for`, () =>
      assert.equal(fault(inUnit(unit), typed), null));

  const refused: readonly (readonly [unit: string, typed: string, why: RegExp])[] = [
    ['ohm', '12 V', /^This is a voltage\. A resistance is wanted, in ohm or with its unit behind it\.$/],
    ['V', '16.7 Vv', /^There is no unit Vv\..* A voltage is wanted, in V /],
    ['V', 'fine', /^A voltage is wanted, in V /],
    ['V', '12 to 13', / is wanted, in V /],
    ['us', '12,000', /^12,000 may be read in two ways/],
    ['s', '"0.4"', /^A time is wanted, in s /],
  ];
  for (const [unit, typed, why] of refused)
    it(`refuses "${typed}" where ${unit} is asked for, and says what is wanted`, () =>
      assert.match(fault(inUnit(unit), typed) ?? '', why));

  it('is held to the setting that keeps it: of a flight, or of the script', () => {
    const flight = (setting: string) => ({ unit: 'degC', setting, script: null });
    assert.equal(fault(flight('motor-temperature'), '41'), null);
    assert.match(fault(flight('motor-temperature'), '41 V') ?? '', /a temperature was expected/);
    const script = (path: string) => ({ unit: '', setting: null, script: path });
    assert.equal(fault(script('receiver.order'), 'TAER'), null);
    assert.notEqual(fault(script('receiver.order'), 'TAEX'), null);
    assert.match(fault(script('receiver.spoons'), '1') ?? '', /There is no receiver\.spoons/);
  });

  it('has a decimal comma read as the point that it is', () => {
    assert.deepEqual(['4,1', ' 4,1  V ', '-5,25', '12,000', 'a, b'].map(asTyped), [
      '4.1',
      '4.1 V',
      '-5.25',
      '12,000',
      'a, b',
    ]);
  });
});
