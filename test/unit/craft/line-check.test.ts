import { strict as assert } from 'node:assert';
import { findingsIn } from '../../support/findings';
import { heldIn, lineFindings } from '../../support/held';

/** Line findings only: rules about the whole craft have tests of their own. */
function found(text: string): readonly (readonly string[])[] {
  return lineFindings(text).filter(([id]) => id?.startsWith('line/'));
}

describe('an unknown name', () => {
  const cases: readonly [string, string, ...string[]][] = [
    ['[arming]\ntilt-limt = 60 deg', 'tilt-limt', 'tilt-limit = 60 deg'],
    ['[gyro.filter.1]\ncutof = 120 Hz', 'cutof', 'cutoff = 120 Hz'],
    ['gyro.filter.1.cutof = 120 Hz', 'gyro.filter.1.cutof', 'gyro.filter.1.cutoff = 120 Hz'],
    ['stick.throtle.limit = 90 %', 'stick.throtle.limit', 'stick.throttle.limit = 90 %'],
    ['throttle.stick.limit = 90 %', 'throttle.stick.limit', 'stick.throttle.limit = 90 %'],
    ['[stick]\nhtrottle.limit = 90 %', 'htrottle.limit', 'throttle.limit = 90 %'],
    ['[craft]\nMass = 212 g', 'Mass', 'mass = 212 g'],
    ['[pack.sprint]\ncels = 6', 'cels', 'cells = 6'],
  ];
  for (const [text, marked, ...mended] of cases) {
    it(`${text.replace('\n', ' ')} has the right one first in its fixes (G08)`, () => {
      const [id, at, ...lines] = found(text)[0] ?? [];
      assert.deepEqual([id, at, lines[0]], ['line/unknown-name', marked, mended[0]]);
    });
  }

  for (const name of ['x', 'foo.bar', 'wobble', 'constructor', '__proto__', 'a.__proto__.x', 'toString']) {
    it(`"${name}" is near nothing and gets no fix (F04, G08)`, () => {
      assert.deepEqual(found(`${name} = 1`), [['line/unknown-name', name]]);
    });
  }

  it('that is right in another section says where it belongs (G08)', () => {
    const [, told] = findingsIn('[gyro.filter.1]\ncutoff = 120 Hz\ncamera-tilt = 30 deg').filter(
      ({ id }) => id === 'line/unknown-name',
    );
    const [one] = findingsIn('[receiver]\ncamera-tilt = 30 deg').filter(
      ({ id }) => id === 'line/unknown-name',
    );
    assert.equal(told, undefined);
    assert.match(one?.message ?? '', /stick\.camera-tilt/);
    assert.deepEqual(one?.fixes, ['Move it to a new section [stick]']);
  });

  it('is told by its whole path at the part that was written', () => {
    const [one] = findingsIn('[gyro]\nhighpass.wobble = 1');
    assert.equal(one?.message, 'There is no parameter gyro.highpass.wobble.');
    assert.deepEqual([one?.line, one?.start, one?.end], [1, 0, 15]);
  });

  it('never pollutes anything (F04)', () => {
    found('[__proto__]\npolluted = 1\n[constructor.prototype]\npolluted = 1\n');
    found('a.__proto__.polluted = 1\nlet __proto__ = 1\n[pack.__proto__]\ncells = 4');
    assert.equal(({} as Record<string, unknown>).polluted, undefined);
  });

  it('can name a pack as anything, even as what objects have by birth (F04)', () => {
    for (const name of ['__proto__', 'constructor', 'toString']) {
      assert.equal(heldIn(`[pack.${name}]\ncells = 4`, `pack.${name}.cells`), '4');
    }
  });
});

describe('an unknown section', () => {
  it('is told once, at its name; its lines are silent', () => {
    assert.deepEqual(found('[stick.throtle]\nlimit = 90 %\nwobble = 2\n'), [
      ['line/unknown-section', 'stick.throtle', '[stick.throttle]'],
    ]);
    assert.deepEqual(found('[wobble]\nx = 1'), [['line/unknown-section', 'wobble']]);
  });

  it('of the prototype is one like any other (F04)', () => {
    assert.deepEqual(found('[__proto__]\npolluted = 1'), [['line/unknown-section', '__proto__']]);
  });

  it('whose header is broken leaves its lines silent too', () => {
    assert.deepEqual(found('[gyro]\nrate = 8 kHz\n[5]\nrate = 1 g\n'), [['line/not-understood', '5']]);
  });

  it('may be a collection, a member of it, or a group', () => {
    assert.deepEqual(found('[pack]\n[pack.sprint]\n[switch.arm]\n[gyro.filter.1]\n[gyro]\n'), []);
    assert.equal(found('[gyro.filter.99]')[0]?.[0], 'line/unknown-section');
    assert.equal(found('[switch.wobble]')[0]?.[0], 'line/unknown-section');
  });
});

describe('a constant', () => {
  it('holds a quantity or a plain number, and nothing else', () => {
    assert.deepEqual(found('let a = 5\nlet b = 5 Hz\nlet c = 2 * a\n'), []);
    for (const value of ['"x"', '[1, 2]', '1..2', '1 -> 2', '2026-05-14', '[a, b]']) {
      assert.deepEqual(found(`let a = ${value}`), [['line/constant-value', value]]);
    }
  });

  it('is checked even if nothing uses it', () => {
    assert.deepEqual(found('let a = 1 / 0'), [['line/divided-by-zero', '0']]);
    assert.deepEqual(found('let a = 1 Hz + 1 s'), [['line/unlike-sum', '1 s']]);
    assert.deepEqual(found('let a = bee'), [['line/unknown-constant', 'bee']]);
    assert.deepEqual(found('let aa = 1\nlet b = ab'), [['line/unknown-constant', 'ab', 'let b = aa']]);
  });
});

describe('lines with several things wrong', () => {
  it('have each told at its own place', () => {
    assert.deepEqual(found('[gyro.filter.1]\ncutof = 1,5 hz'), [
      ['line/unknown-name', 'cutof', 'cutoff = 1,5 hz'],
      ['line/decimal-comma', '1,5', 'cutof = 1.5 hz'],
      ['line/unknown-unit', 'hz', 'cutof = 1,5 Hz'],
    ]);
  });

  it('are told after the lines of their craft in the order of the script, with true line numbers (A13)', () => {
    const text = `${'# note\n'.repeat(5)}\n\nbadkey = 1\n[gyro]\nbadkey = 2\n`;
    assert.deepEqual(
      findingsIn(text).map(({ id, line }) => [id, line + 1]),
      [
        ['line/unknown-name', 8],
        ['line/unknown-name', 10],
      ],
    );
  });

  it('at the end of a file without a final newline are read like any other (A11)', () => {
    assert.deepEqual(found('[craft]\nmass = 212'), [['line/unit-missing', '212', 'mass = 212 g']]);
  });

  it('end where their text ends, whatever the line end is (A03)', () => {
    const [one, ...others] = findingsIn('[gyro]\r\nrate = 8 kHz\r\nbad line\r\n');
    assert.deepEqual(others, []);
    assert.deepEqual([one?.line, one?.start, one?.end, one?.marked], [2, 4, 8, 'line']);
    assert.doesNotMatch(`${one?.message}${one?.advice}`, /\r/);
  });
});

describe('a name written in capitals', () => {
  it('is another name, and the fix writes it small (F09)', () => {
    const text = '[craft]\nMASS = 1 g\nmass = 212 g\n';
    assert.deepEqual(found(text), [['line/unknown-name', 'MASS', 'mass = 1 g']]);
    assert.equal(heldIn(text, 'craft.mass'), '212 g');
  });
});
