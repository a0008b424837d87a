import { strict as assert } from 'node:assert';
import { lookOf, sameValue } from '../../../../server/src/board/listing/value-look';
import { writtenInLook } from '../../../../server/src/board/listing/written-in-look';

describe('what a value looks like', () => {
  const kinds: readonly (readonly [value: string, kind: string])[] = [
    ['', 'empty'],
    ['47', 'number'],
    ['-0.5', 'number'],
    ['\u22123', 'number'],
    ['.5', 'number'],
    ['1e-05', 'number'],
    ['1,000', 'number'],
    ["12'500", 'number'],
    ['0x1F', 'number'],
    ['0b0101', 'number'],
    ['007', 'number'],
    ['47 Hz', 'measure'],
    ['5%', 'measure'],
    ['12V', 'measure'],
    ['4.5 /s', 'measure'],
    ['5 /sbin', 'text'],
    ['on', 'flag'],
    ['Disabled', 'flag'],
    ['nein', 'flag'],
    ['soft', 'word'],
    ['kill-process', 'word'],
    ['/usr/lib', 'word'],
    ['1.2.3', 'word'],
    ['a, b, c', 'list'],
    ['1 2 3', 'list'],
    ['4\t4\t1', 'list'],
    ['[1, 2]', 'tuple'],
    ['(5)', 'tuple'],
    ['blue sky', 'text'],
    ['1,5', 'list'],
  ];
  for (const [value, kind] of kinds)
    it(`${JSON.stringify(value)}: ${kind}`, () => assert.equal(lookOf(value).kind, kind));

  it('a decimal comma where the listing has decimals behind commas', () => {
    const look = lookOf('1,5', ',');
    assert.ok(look.kind === 'number' && look.value === 1.5 && look.decimals === 1);
  });
});

describe('whether two values are the same', () => {
  const pairs: readonly (readonly [one: string, other: string, isSame: boolean])[] = [
    ['0', '0.0', true],
    ['-0', '0', true],
    ['1e3', '1000', true],
    ['1,000', '1000', true],
    ['0x1F', '0x1f', true],
    ['0x1F', '31', false],
    ['007', '7', false],
    ['1.2.3', '1.2.03', false],
    ['on', 'ON', false],
    ['', '0', false],
    ['9007199254740993', '9007199254740992', false],
    ['1.0000000000000001', '1', false],
  ];
  for (const [one, other, isSame] of pairs)
    it(`${one} and ${other}: ${isSame ? 'yes' : 'no'}`, () => assert.equal(sameValue(one, other), isSame));

  it('within half of a step', () => {
    assert.equal(sameValue('0.475', '0.48', 0.01), true);
    assert.equal(sameValue('0.474', '0.48', 0.01), false);
    assert.equal(sameValue('soft', 'soft ', 1), false);
  });
});

describe('a value in the look of another', () => {
  const written: readonly (readonly [value: string, like: string, written: string | null])[] = [
    ['5', '3.00', '5.00'],
    ['0.475', '3.0', '0.475'],
    ['5', '+3', '+5'],
    ['-5', '\u22123', '\u22125'],
    ['12500', "1'000", "12'500"],
    ['31', '0x0F', '0x1F'],
    ['10', '0x0f', '0x0a'],
    ['5', '0b0011', '0b0101'],
    ['5', '007', '005'],
    ['0.00002', '1.50e-03', '2.00e-05'],
    ['50', '47 Hz', '50 Hz'],
    ['50 Hz', '47Hz', '50Hz'],
    ['50 ms', '47 Hz', null],
    ['0.5', '0x0F', null],
    ['soft', '47', null],
    ['on', 'NO', 'YES'],
    ['off', 'Enabled', 'Disabled'],
    ['soft', 'on', null],
    ['1,2', 'a + b', '1 + 2'],
    ['1, 2', '[3,4]', '[1,2]'],
    ['blue sky', 'red', 'blue sky'],
  ];
  for (const [value, like, expected] of written)
    it(`${value} like ${like}: ${expected}`, () => assert.equal(writtenInLook(value, like), expected));

  it('with a decimal comma', () => assert.equal(writtenInLook('0.25', '1,5', ','), '0,25'));
});
