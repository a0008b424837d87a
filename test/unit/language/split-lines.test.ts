import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { splitLines } from '../../../server/src/language/split-lines';

const ends = (text: string) => splitLines(text).map(({ text: line, end }) => [line, end]);

describe('lines of a text', () => {
  it('end at LF, CRLF and a lone CR, mixed at will (A03, A04)', () => {
    assert.deepEqual(ends('a = 1\rb = 2\nbadkey = 3\r\n'), [
      ['a = 1', '\r'],
      ['b = 2', '\n'],
      ['badkey = 3', '\r\n'],
      ['', ''],
    ]);
  });

  it('end nowhere else', () => {
    const text = 'a\u2028b\u2029c\u0085d\fe\vf';
    assert.deepEqual(ends(text), [[text, '']]);
  });

  it('are there even when nothing is', () => assert.deepEqual(ends(''), [['', '']]));

  it('need no end after the last one (A11)', () => {
    assert.deepEqual(ends('a = 1\nb = 2'), [
      ['a = 1', '\n'],
      ['b = 2', ''],
    ]);
  });

  it('make the text again when they are put together', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom('a', '\r', '\n', '\u2028', '\u{1f6e0}') }), (text) => {
        assert.equal(
          splitLines(text)
            .map((line) => line.text + line.end)
            .join(''),
          text,
        );
        assert.ok(splitLines(text).every((line) => !/[\r\n]/.test(line.text)));
      }),
    );
  });
});
