import { strict as assert } from 'node:assert';
import type { NumberNode } from '../../../server/src/language/ast';
import { problemsIn, statementOf } from '../../support/lines';

function numberIn(written: string): NumberNode | null {
  const { value } = statementOf(`gain = ${written}`, 'setting');
  assert.ok(value === null || value.kind === 'number', `${written} is read as ${value?.kind}`);
  return value;
}

describe('a number in a script', () => {
  const right: readonly [string, number, string][] = [
    ['212', 212, 'as it stands'],
    ['0010', 10, 'decimal in spite of leading zeros (B03)'],
    ['08', 8, 'no octal (B03)'],
    ['-007', -7, 'decimal with a sign (B03)'],
    ['00.5', 0.5, 'a fraction after zeros (B03)'],
    ['1e3', 1000, 'an exponent (B04)'],
    ['1E-2', 0.01, 'a capital exponent (B04)'],
    ['.5e1', 5, 'a fraction with an exponent (B04)'],
    ['1_000', 1000, 'grouped digits (B05)'],
    ['1_0.2_5', 10.25, 'grouped digits on both sides of the point (B05)'],
    ['.5', 0.5, 'a fraction without a whole part (B05)'],
    ['9007199254740991', 9007199254740991, 'the largest that keeps all its digits (B08)'],
    ['- 5', -5, 'a minus with a space after it'],
  ];
  for (const [written, value, why] of right) {
    it(`${written} is ${value}: ${why}`, () => {
      assert.equal(numberIn(written)?.value, value);
      assert.deepEqual(problemsIn(`gain = ${written}`), []);
    });
  }

  const wrong: readonly [string, string, readonly string[], string][] = [
    ['1,5', 'decimal-comma', ['1.5'], 'a comma for the point (B02)'],
    ['4,0', 'decimal-comma', ['4.0'], 'never 40 (B02)'],
    ['0,125', 'decimal-comma', ['0.125'], 'a zero groups nothing (B02)'],
    ['1,500', 'decimal-comma', ['1500', '1.500'], 'two readings, so two fixes (B02)'],
    ['1.000,5', 'decimal-comma', ['1000.5'], 'points that group (B02)'],
    ['1,234,567', 'decimal-comma', ['1234567'], 'commas between thousands (B02)'],
    ['1,234.5', 'decimal-comma', ['1234.5'], 'a comma between thousands (B02)'],
    ['1,5,5', 'decimal-comma', [], 'several commas (B02)'],
    ['1e', 'not-a-number', [], 'an exponent without digits (B04)'],
    ['1e+', 'not-a-number', [], 'an exponent without digits (B04)'],
    ['0x10', 'not-a-number', [], 'hexadecimal (B05)'],
    ['0b11', 'not-a-number', [], 'binary (B05)'],
    ['0o17', 'not-a-number', [], 'octal (B05)'],
    ['5.', 'not-a-number', ['5'], 'a point without a fraction (B05)'],
    ['1 000', 'not-a-number', ['1000'], 'digits grouped by spaces (B05)'],
    ['12 345 678', 'not-a-number', ['12345678'], 'digits grouped by spaces (B05)'],
    ['1__0', 'not-a-number', [], 'two marks between digits (B05)'],
    ['1_', 'not-a-number', [], 'a mark after the digits (B05)'],
    ['1.2.3', 'not-a-number', [], 'two points'],
    ['1e999', 'number-too-large', [], 'beyond all numbers (B06)'],
    ['9007199254740993', 'number-too-large', [], 'digits would be lost (B08)'],
    ['123456789012345678901234567890', 'number-too-large', [], 'thirty digits (B08)'],
  ];
  for (const [written, id, mended, why] of wrong) {
    it(`${written} is refused whole with one mark: ${why}`, () => {
      assert.deepEqual(problemsIn(`gain = ${written}`), [
        { id: `line/${id}`, marked: written, mended: mended.map((value) => `gain = ${value}`) },
      ]);
    });
    if (mended.length !== 1) {
      it(`${written} leaves the value unknown`, () => assert.equal(numberIn(written), null));
    }
  }

  it('does not depend on the language of the machine (B02)', () => {
    assert.equal(numberIn('1.5')?.value, 1.5);
    assert.equal(numberIn('1,5')?.value, 1.5);
  });

  it('is missing rather than zero when nothing is written (B05)', () => {
    for (const line of ['delay =', 'delay = ', 'delay =# 5 ms', 'delay = \t']) {
      assert.deepEqual(problemsIn(line), [{ id: 'line/value-missing', marked: '=', mended: [] }], line);
      assert.equal(statementOf(line, 'setting').value, null);
    }
  });

  it('is none where a word stands: NaN and Infinity are words (B06)', () => {
    for (const word of ['NaN', 'Infinity'])
      assert.equal(statementOf(`x = ${word}`, 'setting').value?.kind, 'reference');
    assert.deepEqual(
      problemsIn('rate = NaN Hz').map(({ id, marked }) => [id, marked]),
      [['line/not-understood', 'Hz']],
    );
    assert.equal(statementOf('rate = -Infinity', 'setting').value?.kind, 'negative');
  });

  it('has no plus in front (B05)', () => {
    assert.deepEqual(problemsIn('gain = +5'), [{ id: 'line/plus-sign', marked: '+', mended: ['gain = 5'] }]);
  });

  for (const [minus, name] of [
    ['\u2212', 'a minus sign (U+2212)'],
    ['\u2013', 'an en dash (U+2013)'],
    ['\ufe63', 'a small hyphen-minus (U+FE63)'],
    ['\uff0d', 'a full-width hyphen-minus (U+FF0D)'],
  ] as const) {
    it(`is negative with the ${name} in front, which is named and mended (B01)`, () => {
      const line = `trim.roll = ${minus}5 deg`;
      const { value, problems } = statementOf(line, 'setting');
      assert.equal(value?.kind === 'number' && value.value, -5);
      assert.deepEqual(problemsIn(line), [
        { id: 'line/odd-minus', marked: minus, mended: ['trim.roll = -5 deg'] },
      ]);
      assert.equal(problems[0]?.values.character, name);
    });
  }
});

describe('commas between numbers', () => {
  it('part the items of a list, with or without a space', () => {
    for (const line of ['at = [11,22]', 'at = [11, 22]', 'at = [ 11 ,22 ]']) {
      const { value } = statementOf(line, 'setting');
      assert.equal(value?.kind === 'list' && value.items.length, 2, line);
      assert.deepEqual(problemsIn(line), [], line);
    }
  });

  it('part the arguments of a function, with or without a space', () => {
    for (const line of [
      'x = min(1,5)',
      'x = min(1, 5)',
      'x = clamp(2,1,3)',
      'x = max((1),2,5)',
      'x = max((1) + 2,5)',
    ]) {
      assert.deepEqual(problemsIn(line), [], line);
    }
  });

  it('are decimal commas in plain parentheses, as anywhere else', () => {
    assert.deepEqual(problemsIn('x = 2 * (1,5 + 2)'), [
      { id: 'line/decimal-comma', marked: '1,5', mended: ['x = 2 * (1.5 + 2)'] },
    ]);
    assert.equal(problemsIn('x = max(1, 2) * 1,5')[0]?.id, 'line/decimal-comma');
    assert.deepEqual(problemsIn('x = 1..2,5 ms'), [
      { id: 'line/decimal-comma', marked: '2,5', mended: ['x = 1..2.5 ms'] },
    ]);
  });
});

describe('the unit after a number', () => {
  for (const written of ['5ms', '5 ms', '5\tms', '5   ms # why', '5ms#why']) {
    it(`is found in "${written}" (A10, C04)`, () => {
      assert.equal(numberIn(written)?.unit?.text, 'ms');
      assert.deepEqual(problemsIn(`gain = ${written}`), []);
    });
  }

  for (const written of ['250 \u00b5s', '250 \u03bcs', '250 us', '250\u00b5s']) {
    it(`makes 250 microseconds of "${written}" (C01)`, () => {
      assert.equal(numberIn(written)?.unit?.factor, 1e-6);
      assert.deepEqual(problemsIn(`gain = ${written}`), []);
    });
  }

  it('is a degree with the degree sign, and with its look-alikes once they are mended (C01)', () => {
    assert.equal(numberIn('30 \u00b0')?.unit?.factor, Math.PI / 180);
    assert.deepEqual(problemsIn('gain = 30 \u00b0'), []);
    for (const sign of ['\u00ba', '\u02da']) {
      assert.equal(numberIn(`30 ${sign}`)?.unit?.factor, Math.PI / 180);
      assert.deepEqual(problemsIn(`gain = 30 ${sign}`), [
        { id: 'line/odd-degree', marked: sign, mended: ['gain = 30 deg'] },
      ]);
    }
  });

  const unknown: readonly [string, string, readonly string[]][] = [
    ['12 inchy', 'inchy', ['12 in']],
    ['3 gramm', 'gramm', ['3 g']],
    ['5 Hzz', 'Hzz', ['5 Hz']],
    ['5 m/s2', 'm/s2', ['5 m/s^2']],
    ['5 hz', 'hz', ['5 Hz']],
    ['7 furlong', 'furlong', []],
    ['5 deg/second', 'deg/second', []],
  ];
  for (const [written, marked, mended] of unknown) {
    it(`is not built from letters: ${written} (C04)`, () => {
      assert.deepEqual(problemsIn(`gain = ${written}`), [
        { id: 'line/unknown-unit', marked, mended: mended.map((value) => `gain = ${value}`) },
      ]);
      assert.equal(numberIn(written), null);
    });
  }

  it('has no offset inside a product', () => {
    assert.deepEqual(problemsIn('gain = 5 degC/s'), [
      { id: 'line/unit-in-product', marked: 'degC/s', mended: [] },
    ]);
  });

  it('is not the function min', () => {
    assert.equal(numberIn('5 min')?.unit?.factor, 60);
    const { value } = statementOf('x = 2 * min(1 s, 2 s)', 'setting');
    assert.equal(value?.kind, 'product');
  });

  it('serves a whole product and stands where the number ends', () => {
    const value = numberIn('0.5 %/(deg/s)');
    assert.deepEqual(value?.unitSpan && [value.unitSpan.start, value.unitSpan.end], [11, 20]);
    assert.deepEqual([value?.start, value?.end, value?.digits], [7, 20, '0.5']);
  });
});
