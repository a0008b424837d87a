import { strict as assert } from 'node:assert';
import { parseLine } from '../../../server/src/language/parser';
import { problemsIn, statementOf } from '../../support/lines';

describe('a statement', () => {
  const cases: readonly [string, string][] = [
    ['', 'blank'],
    ['   # why', 'blank'],
    ['include "club.craft"', 'include'],
    ['include = 5', 'setting'],
    ['let quiet = 90 Hz', 'constant'],
    ['let = 5', 'setting'],
    ['[gyro.filter.1]', 'section'],
    ['[gyro.filter.1 @ cruise]', 'section'],
    ['mass = 212 g', 'setting'],
    ['mass', 'setting'],
    ['5 = 20 mW', 'setting'],
    ['5 g = mass', 'broken'],
    ['= mass', 'broken'],
    ['"mass" = 5', 'broken'],
  ];
  for (const [line, kind] of cases) {
    it(`${JSON.stringify(line)} is ${kind}`, () => assert.equal(parseLine(line).kind, kind));
  }

  it('knows the place of each part of a setting', () => {
    const { path, equals, value, comment } = statementOf(
      '  gyro.filter.1.cutoff = 2 * quiet # low',
      'setting',
    );
    assert.deepEqual([path.start, path.end, equals], [2, 22, 23]);
    assert.deepEqual(
      path.names.map(({ text, start, end }) => [text, start, end]),
      [
        ['gyro', 2, 6],
        ['filter', 7, 13],
        ['1', 14, 15],
        ['cutoff', 16, 22],
      ],
    );
    assert.deepEqual([value?.start, value?.end, comment?.start, comment?.end], [25, 34, 35, 40]);
  });

  it('knows the path and the pack of a section', () => {
    const { path, pack } = statementOf('[ gyro.filter.1 @ cruise ]', 'section');
    assert.deepEqual([path.text, path.start, pack?.text, pack?.start], ['gyro.filter.1', 2, 'cruise', 18]);
    assert.equal(statementOf('[gyro]', 'section').pack, null);
  });

  it('knows the name of a constant', () => {
    const { name, equals } = statementOf('let quiet = 90 Hz', 'constant');
    assert.deepEqual([name.text, name.start, name.end, equals], ['quiet', 4, 9, 10]);
  });
});

describe('a value', () => {
  const shapes: readonly [string, string][] = [
    ['90 Hz', 'number'],
    ['-40 degC', 'number'],
    ['-(40 s)', 'number'],
    ['-quiet', 'negative'],
    ['crsf', 'reference'],
    ['gyro.rate', 'reference'],
    ['2 * quiet', 'product'],
    ['quiet / 2 / 3', 'product'],
    ['quiet + 5 Hz - 2 Hz', 'sum'],
    ['min(quiet, 90 Hz)', 'call'],
    ['((quiet))', 'reference'],
    ['"bench"', 'text'],
    ['2026-05-14', 'date'],
    ['1750..2050 us', 'range'],
    ['quiet .. 2 * quiet', 'range'],
    ['[]', 'list'],
    ['[roll, "a", 5 ms]', 'list'],
    ['0 % -> 0 deg/s, 100 % -> 600 deg/s', 'curve'],
  ];
  for (const [value, kind] of shapes) {
    it(`${value} is a ${kind}`, () => {
      assert.equal(statementOf(`x = ${value}`, 'setting').value?.kind, kind);
      assert.deepEqual(problemsIn(`x = ${value}`), []);
    });
  }

  it('binds products closer than sums', () => {
    const { value } = statementOf('x = a + 2 * b - c / 3', 'setting');
    assert.ok(value?.kind === 'sum');
    assert.deepEqual(
      value.terms.map(({ sign, node }) => [sign, node.kind]),
      [
        ['+', 'reference'],
        ['+', 'product'],
        ['-', 'product'],
      ],
    );
  });

  it('keeps a long sum flat', () => {
    const { value } = statementOf(`x = 1${' + 1'.repeat(20_000)}`, 'setting');
    assert.equal(value?.kind === 'sum' && value.terms.length, 20_001);
  });
});

describe('a minus between values', () => {
  it('has a space on both sides, and the fix puts them there', () => {
    assert.deepEqual(problemsIn('x = a - b'), []);
    assert.deepEqual(problemsIn('x = a -b'), [
      { id: 'line/minus-spacing', marked: '-', mended: ['x = a - b'] },
    ]);
    assert.deepEqual(problemsIn('x = a- b'), [
      { id: 'line/minus-spacing', marked: '-', mended: ['x = a - b'] },
    ]);
    assert.deepEqual(problemsIn('x = (a)-(b)')[0]?.mended, ['x = (a) - (b)']);
  });

  it('is part of a name without spaces', () => {
    const { value } = statementOf('x = a-b', 'setting');
    assert.equal(value?.kind === 'reference' && value.path.text, 'a-b');
  });
});

/** The line, the part that is marked, and what was expected there. */
const broken: readonly [string, string, RegExp][] = [
  ['mass 212 g', '212 g', /`=` and a value/],
  ['mass', 's', /`=` and a value/],
  ['mass = 5 g 6', '6', /end of the line/],
  ['mass = 5 g "x"', '"x"', /end of the line/],
  ['mass = ]', ']', /a value/],
  ['mass = [a, ]', ']', /an item of the list/],
  ['mass = [a', 'a', /`,` or `\]`/],
  ['mass = [[a]]', '[', /an item of the list/],
  ['mass = (5 g', 'g', /`\)`/],
  ['mass = 5 g +', '+', /a value/],
  ['mass = 5 g + ]', ']', /a value/],
  ['mass = * 5', '*', /a value/],
  ['mass = - - 5', '-', /a value/],
  ['mass = min(5 g', 'g', /`,` or `\)`/],
  ['mass = min()', ')', /a value/],
  ['mass = min(]', ']', /a value/],
  ['mass = 1..', '.', /a value/],
  ['mass = 1..]', ']', /a value/],
  ['mass = 1 -> 2, 3', '3', /`->`/],
  ['mass = 1 ->', '>', /a value/],
  ['mass = \u{1f6e0}', '\u{1f6e0}', /a value/],
  ['mass = = 5', '=', /a value/],
  ['; mass', ';', /a setting such as/],
  ['5', '5', /a setting such as/],
  ['5 mW = 3', '5 mW', /a setting such as/],
  ['1.5 = 3 mW', '1.5', /a setting such as/],
  ['-5 = 3 mW', '-', /a setting such as/],
  ['include club.craft', 'club.craft', /in double quotes/],
  ['include', 'e', /in double quotes/],
  ['include "a" "b"', '"b"', /end of the line/],
  ['let quiet', 't', /`=` and a value/],
  ['[5]', '5', /name of a section/],
  ['[]', ']', /name of a section/],
  ['[', '[', /name of a section/],
  ['[gyro @]', ']', /name of a pack/],
  ['[gyro @', '@', /name of a pack/],
  ['[gyro] x', 'x', /end of the line/],
  [`x = ${'('.repeat(40)}1${')'.repeat(40)}`, '(', /at most 16/],
];

describe('a member that is a number', () => {
  it('is the name of a setting where nothing but `=` follows it', () => {
    const body = parseLine('2 = 100 mW  # the second');
    assert.deepEqual(body.problems, []);
    assert.equal(body.kind, 'setting');
    if (body.kind !== 'setting') return;
    assert.deepEqual(
      body.path.names.map(({ text, start, end }) => [text, start, end]),
      [['2', 0, 1]],
    );
    assert.equal(body.value?.kind, 'number');
  });
});

describe('a line that cannot be understood', () => {
  for (const [line, marked, expected] of broken) {
    it(`${line.length > 40 ? 'forty parentheses' : line}: one finding at "${marked}"`, () => {
      const { problems } = parseLine(line);
      assert.deepEqual(
        problems.map(({ id, start, end }) => [id, line.slice(start, end)]),
        [['line/not-understood', marked]],
      );
      assert.match(problems[0]?.values.expected ?? '', expected);
    });
  }

  it('still says which parameter it sets, so that nothing complains that it is missing', () => {
    for (const [line] of broken.filter(([text]) => text.startsWith('mass'))) {
      const { path, value } = statementOf(line, 'setting');
      assert.equal(path.text, 'mass');
      assert.equal(value, null, line);
    }
  });

  it('opens a section that nobody knows when its header has no name', () => {
    for (const line of ['[', '[]', '[5]', '[gyro @]', '[gyro @ 5]']) {
      assert.equal(statementOf(line, 'broken').opensSection, 'known', line);
    }
    assert.equal(statementOf('; mass', 'broken').opensSection, null);
  });

  it('is a section with its closing bracket left out, which the fix puts in', () => {
    for (const line of ['[gyro', '[gyro.filter.1 @ cruise']) {
      assert.deepEqual(problemsIn(line), [
        { id: 'line/section-not-closed', marked: line.slice(-1), mended: [`${line}]`] },
      ]);
      assert.equal(statementOf(line, 'section').kind, 'section');
    }
  });

  it('is a section with something in its name that no name has, told once', () => {
    for (const [line, marked] of [
      ['[gyro = 5', '='],
      ['[p\u00e4ck.x]', '\u00e4'],
      ['[gyro lowpass]', 'lowpass'],
    ] as const) {
      assert.deepEqual(problemsIn(line), [{ id: 'line/not-understood', marked, mended: [] }], line);
      assert.equal(statementOf(line, 'broken').opensSection, 'known', line);
    }
  });

  it('names no constant with a point in it', () => {
    assert.deepEqual(problemsIn('let a.b = 5'), [{ id: 'line/constant-name', marked: 'a.b', mended: [] }]);
  });

  it('is told with at most eight problems, the first ones', () => {
    const { problems } = parseLine(`x = ${'"a" \u201cb\u201d '.repeat(50)}`);
    assert.equal(problems.length, 8);
  });

  it('has at most a thousand items in a list', () => {
    assert.deepEqual(problemsIn(`x = [${'a, '.repeat(999)}a]`), []);
    const { problems } = parseLine(`x = [${'a, '.repeat(1000)}a]`);
    assert.match(problems[0]?.values.expected ?? '', /at most 1000 items/);
  });
});

describe('an overlong line', () => {
  const long = `name = "${'x'.repeat(2_000_000)}"`;

  it('sets its parameter to something unknown, and is marked where reading stopped (F07)', () => {
    const { path, value, problems } = statementOf(long, 'setting');
    assert.deepEqual([path.text, value], ['name', null]);
    assert.deepEqual(
      problems.map(({ id, start, end }) => [id, start, end]),
      [['line/too-long', 100_000, long.length]],
    );
  });

  it('defines its constant', () => {
    assert.equal(statementOf(`let quiet = ${'1 + '.repeat(50_000)}1`, 'constant').name.text, 'quiet');
  });

  it('may be a comment', () => {
    const line = `  # ${'x'.repeat(2_000_000)}`;
    assert.deepEqual(statementOf(line, 'blank').problems, []);
  });

  it('is broken when it begins with nothing that is known', () => {
    assert.equal(statementOf('['.repeat(200_000), 'broken').problems[0]?.id, 'line/too-long');
  });
});
