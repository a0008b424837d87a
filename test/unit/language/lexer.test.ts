import { strict as assert } from 'node:assert';
import { lex } from '../../../server/src/language/lexer';
import { parseLine } from '../../../server/src/language/parser';
import { problemsIn, statementOf } from '../../support/lines';

function kinds(line: string): string {
  return lex(line)
    .tokens.map(({ kind, start, end }) => `${kind}:${line.slice(start, end)}`)
    .join(' ');
}

describe('a line cut into tokens', () => {
  const cases: readonly [string, string][] = [
    ['mass = 212 g', 'name:mass sign:= number:212 g'],
    ['gyro.filter.1.cutoff', 'name:gyro.filter.1.cutoff'],
    ['tilt-limit-', 'name:tilt-limit sign:-'],
    ['a-b - c', 'name:a-b sign:- name:c'],
    ['gyro..cut', 'name:gyro sign:.. name:cut'],
    ['gyro.', 'name:gyro stray:.'],
    ['1750..2050 us', 'number:1750 sign:.. number:2050 us'],
    ['0 % -> 1 deg/s', 'number:0 % sign:-> number:1 deg/s'],
    ['2026-05-14', 'date:2026-05-14'],
    ['2026-05-145', 'number:2026 sign:- number:05 sign:- number:145'],
    ['[pack.sprint @ cruise]', 'sign:[ name:pack.sprint sign:@ name:cruise sign:]'],
    ['"a # b" # c', 'text:"a # b"'],
    ['\u{1f6e0}!', 'stray:\u{1f6e0} stray:!'],
    ['', ''],
    [' \t\f ', ''],
  ];
  for (const [line, tokens] of cases) {
    it(JSON.stringify(line), () => assert.equal(kinds(line), tokens));
  }

  it('covers everything but blanks and the comment, in order', () => {
    const line = 'a.b = [c, "d", 5 ms] + \u{1f6e0} ; ->.. # e';
    const { tokens, comment } = lex(line);
    let at = 0;
    for (const { start, end } of tokens) {
      assert.equal(line.slice(at, start).trim(), '');
      assert.ok(end > start);
      at = end;
    }
    assert.deepEqual(comment, { start: line.indexOf('#'), end: line.length });
  });
});

describe('where a comment starts', () => {
  it('is a hash anywhere outside a text (A12)', () => {
    const cut = statementOf('label = lot#7', 'setting');
    assert.equal(cut.value?.kind === 'reference' && cut.value.path.text, 'lot');
    assert.deepEqual(cut.comment, { start: 11, end: 13 });
  });

  it('is no hash in a text (A12)', () => {
    const { value, comment } = statementOf('label = "lot #7"', 'setting');
    assert.equal(value?.kind === 'text' && value.value, 'lot #7');
    assert.equal(comment, null);
  });

  it('leaves a section header a header (A12)', () => {
    assert.equal(statementOf('[gyro] # main', 'section').path.text, 'gyro');
    assert.deepEqual(problemsIn('[gyro] # main'), []);
  });

  it('hides nothing below it: a backslash at its end means nothing (A12)', () => {
    assert.equal(statementOf('# note \\', 'blank').comment?.start, 0);
  });
});

describe('blanks that look like a space', () => {
  for (const [blank, name] of [
    ['\u00a0', 'a no-break space (U+00A0)'],
    ['\u2009', 'a thin space (U+2009)'],
    ['\u202f', 'a narrow no-break space (U+202F)'],
    ['\u3000', 'an ideographic space (U+3000)'],
  ] as const) {
    it(`the ${name} is understood, named and mended at once on the whole line (A08)`, () => {
      const line = `gyro.filter.1.cutoff${blank}=${blank}120${blank}Hz`;
      const { value, problems } = statementOf(line, 'setting');
      assert.equal(value?.kind === 'number' && value.unit?.text, 'Hz');
      assert.deepEqual(problemsIn(line), [
        { id: 'line/odd-space', marked: blank, mended: ['gyro.filter.1.cutoff = 120 Hz'] },
      ]);
      assert.equal(problems[0]?.values.character, name);
    });
  }

  it('the zero-width space is taken out, for there is nothing between (A08)', () => {
    const line = 'cutoff\u200b = 120\u200b Hz';
    assert.deepEqual(problemsIn(line), [
      { id: 'line/odd-space', marked: '\u200b', mended: ['cutoff = 120 Hz'] },
    ]);
  });

  it('a byte order mark inside a line is named (A06)', () => {
    const [found] = statementOf('cutoff =\ufeff 120 Hz', 'setting').problems;
    assert.equal(found?.id, 'line/odd-space');
    assert.equal(found?.values.character, 'a zero-width no-break space, the byte order mark (U+FEFF)');
  });

  it('are left alone in a text and in a comment', () => {
    assert.deepEqual(problemsIn('name = "a\u00a0b" # c\u00a0d'), []);
  });

  for (const [character, name] of [
    ['\u00ad', 'a soft hyphen (U+00AD)'],
    ['\u200b', 'a zero-width space (U+200B)'],
    ['\u200d', 'a zero-width joiner (U+200D)'],
    ['\u2060', 'a word joiner (U+2060)'],
    ['\ufeff', 'a zero-width no-break space, the byte order mark (U+FEFF)'],
  ] as const) {
    it(`${name} within a name, a word or a section is the one thing found, and is taken out`, () => {
      for (const line of ['cutoff = 120 Hz', 'order = AETR', '[gyro.filter.1]', 'include "a.craft"']) {
        const cut = `${line.slice(0, 3)}${character}${line.slice(3)}`;
        assert.equal(parseLine(cut).problems[0]?.values.character, name);
        assert.deepEqual(problemsIn(cut), [{ id: 'line/odd-space', marked: character, mended: [line] }]);
      }
    });
  }

  it('plain ones at the end of a line become part of nothing (A10)', () => {
    const word = statementOf('mode = fast \t', 'setting').value;
    assert.equal(word?.kind === 'reference' && word.path.text, 'fast');
    const number = statementOf('cutoff = 120 Hz\t', 'setting').value;
    assert.equal(number?.kind === 'number' && number.unit?.text, 'Hz');
    for (const line of ['mode = fast \t', 'cutoff = 120 Hz\t', ' \t '])
      assert.deepEqual(problemsIn(line), []);
    assert.equal(statementOf(' \t ', 'blank').kind, 'blank');
  });
});

describe('characters that show nothing', () => {
  for (const [character, point] of [
    ['\u0000', 'U+0000'],
    ['\u001b', 'U+001B'],
    ['\u0085', 'U+0085'],
    ['\u202e', 'U+202E'],
    ['\u2066', 'U+2066'],
  ] as const) {
    it(`${point} is named and taken out, also in a text or a comment`, () => {
      for (const line of [`name = "a${character}b"`, `name = "ab" # c${character}d`]) {
        const found = statementOf(line, 'setting').problems.find(({ id }) => id === 'line/hidden-character');
        assert.equal(found?.values.character, point);
        assert.deepEqual(problemsIn(line)[0]?.mended, [line.replace(character, '')]);
      }
    });
  }

  for (const [character, name] of [
    ['\u00ad', 'soft hyphen (U+00AD)'],
    ['\u200b', 'zero-width space (U+200B)'],
    ['\u2060', 'word joiner (U+2060)'],
    ['\ufeff', 'zero-width no-break space, the byte order mark (U+FEFF)'],
  ] as const) {
    it(`${name} is named and taken out of a text`, () => {
      const line = `name = "Sand${character}mar${character}tin"`;
      assert.equal(parseLine(line).problems[0]?.values.character, name);
      assert.deepEqual(problemsIn(line), [
        { id: 'line/hidden-character', marked: character, mended: ['name = "Sandmartin"'] },
      ]);
    });
  }

  it('that join an emoji in a text are left alone', () => {
    assert.deepEqual(problemsIn('name = "\u{1f469}\u200d\u{1f680}"'), []);
  });

  it('are one finding a line, however many there are', () => {
    const [found, ...others] = problemsIn(`# ${'\u0007'.repeat(50)}`);
    assert.equal(found?.mended[0], '# ');
    assert.deepEqual(others, []);
  });
});

describe('a text', () => {
  it('holds escaped quotes and backslashes, and nothing else is an escape', () => {
    const { value } = statementOf(String.raw`name = "a \"b\" \\ \n"`, 'setting');
    assert.equal(value?.kind === 'text' && value.value, String.raw`a "b" \ \n`);
  });

  it('in curly quotes is understood and mended, the quotes no part of it (A09)', () => {
    const line = 'label = \u201cbench 2\u201d';
    const { value } = statementOf(line, 'setting');
    assert.equal(value?.kind === 'text' && value.value, 'bench 2');
    assert.deepEqual(problemsIn(line), [
      { id: 'line/odd-quotes', marked: '\u201cbench 2\u201d', mended: ['label = "bench 2"'] },
    ]);
  });

  it('with one curly and one straight quote is mended as well (A09)', () => {
    for (const line of ['label = \u201cbench 2"', 'label = "bench 2\u201d', 'label = \u201ebench 2\u201c']) {
      assert.deepEqual(
        problemsIn(line).map(({ id, mended }) => [id, ...mended]),
        [['line/odd-quotes', 'label = "bench 2"']],
        line,
      );
    }
  });

  it('may hold curly quotes between its straight ones', () => {
    const { value, problems } = statementOf('name = "the \u201cfast\u201d one"', 'setting');
    assert.equal(value?.kind === 'text' && value.value, 'the \u201cfast\u201d one');
    assert.deepEqual(problems, []);
  });

  it('that is not closed is marked to the end of the line and closed by the fix', () => {
    assert.deepEqual(problemsIn('name = "bench 2  '), [
      { id: 'line/text-not-closed', marked: '"bench 2  ', mended: ['name = "bench 2"  '] },
    ]);
    assert.deepEqual(problemsIn('name = "'), [
      { id: 'line/text-not-closed', marked: '"', mended: ['name = ""'] },
    ]);
  });

  it('that is opened by a curly quote and not closed gets two straight ones', () => {
    assert.deepEqual(problemsIn('name = \u201cSand'), [
      { id: 'line/text-not-closed', marked: '\u201cSand', mended: ['name = "Sand"'] },
    ]);
  });

  it('counts astral characters by two UTF-16 units, as editors do (A01)', () => {
    const line = 'label = "\u{1f6e0}\u{1f6e0}" Hz';
    const [found] = statementOf(line, 'setting').problems;
    assert.deepEqual([found?.start, found?.end], [15, 17]);
  });
});
