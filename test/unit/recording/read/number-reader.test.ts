import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { NumberReader } from '../../../../server/src/recording/read/number-reader';

const bytesOf = (text: string) => new TextEncoder().encode(text);

function numberIn(text: string, decimalComma = false) {
  const reader = new NumberReader(decimalComma);
  const bytes = bytesOf(text);
  const to = reader.number(bytes, 0, bytes.length);
  return { value: reader.value, to };
}

describe('a number in bytes', () => {
  it('of up to 15 digits is the double that is nearest', () => {
    const digits = fc.bigInt({ min: 0n, max: 999_999_999_999_999n });
    fc.assert(
      fc.property(digits, fc.integer({ min: 0, max: 15 }), fc.boolean(), (whole, behind, isLess) => {
        const text = whole.toString().padStart(behind + 1, '0');
        const cut = text.length - behind;
        const written = `${isLess ? '-' : ''}${text.slice(0, cut)}.${text.slice(cut)}`;
        assert.deepEqual(numberIn(written), { value: Number(written), to: written.length });
      }),
    );
  });

  it('of any length and size is that number to 32 bits', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, min: -1e30, max: 1e30 }), (number) => {
        const text = String(number);
        const { value, to } = numberIn(text);
        assert.equal(to, text.length);
        assert.ok(Math.fround(value) === Math.fround(number) || Math.abs(value / number - 1) < 1e-14, text);
      }),
    );
  });

  it('has a comma where the file writes one', () => {
    assert.deepEqual(numberIn('-12,5;3', true), { value: -12.5, to: 5 });
    assert.deepEqual(numberIn('12.5', true), { value: 12, to: 2 });
  });

  for (const [text, value, to] of [
    ['1e3', 1000, 3],
    ['1.5E-3,', 0.0015, 6],
    ['+7', 7, 2],
    ['.5', 0.5, 2],
    ['5.', 5, 2],
    ['12e', 12, 2],
    ['0e999', 0, 5],
    // Nothing that is measured is so large.
    ['1e999', Number.NaN, 0],
    ['1e31', Number.NaN, 0],
    ['1e-999', 0, 6],
    ['-', Number.NaN, 0],
    ['.', Number.NaN, 0],
    ['e5', Number.NaN, 0],
    ['nan', Number.NaN, 0],
  ] as const)
    it(`is ${value} in ${text}`, () => assert.deepEqual(numberIn(text), { value, to }));
});

describe('a stamp in bytes', () => {
  const stamps = (...texts: readonly string[]) => {
    const reader = new NumberReader(false);
    return texts.map((text) => {
      reader.stamp(bytesOf(text), 0, text.length);
      return reader.value;
    });
  };

  it('is counted from the first one to the last digit, nanoseconds since 1970 too', () => {
    assert.deepEqual(
      stamps('1657188671123456789', '1657188671123456790', '1657188672123456788'),
      [0, 1, 999_999_999],
    );
  });

  it('is that of a clock, in seconds', () => {
    const [first = 0, second = 0] = stamps('13:58:21.500', '13:59:01.504');
    assert.ok(Math.abs(second - first - 40.004) < 1e-9);
  });

  it('keeps its parts of seconds since 1970', () => {
    const [first = 0, second = 0] = stamps('1657188671.123456789', '1657188671.123456790');
    assert.ok(Math.abs(second - first - 1e-9) < 1e-15);
  });

  it('may fall, and may be written with an exponent', () => {
    assert.deepEqual(stamps('4294967290', '6', '4.294967291e9'), [0, -4_294_967_284, 1]);
  });
});
