import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { Document } from '../../../server/src/language/document';
import { bareLiteral } from '../../../server/src/language/own-line';
import { problemsIn, statementOf } from '../../support/lines';

/** What a line under `own` sets, and to what. */
function told(line: string): readonly [string, string | undefined] {
  const { path, value } = statementOf(line, 'setting', true);
  return [path.text, value?.kind === 'bare' ? value.text : undefined];
}

describe('a line under own', () => {
  const rows: readonly (readonly [string, string, string])[] = [
    ['gyro_rate = 0x1F', 'gyro_rate', '0x1F'],
    ['step = 1,5', 'step', '1,5'],
    ['rates = 8000 4000', 'rates', '8000 4000'],
    ['"gyro rate" = 8000', '"gyro rate"', '8000'],
    ['"größe" = größe', '"größe"', 'größe'],
    ['12 = on', '12', 'on'],
    ['"12" = on', '12', 'on'],
    ['"a.b".c = x', '"a.b".c', 'x'],
    ['\tturn = \u2212 5\u00a0\u00b5s  ', 'turn', '\u2212 5\u00a0\u00b5s'],
    ['list = [1, 2] -> (3', 'list', '[1, 2] -> (3'],
    ['tone = “soft”', 'tone', '“soft”'],
    ['path = C:\\new', 'path', 'C:\\new'],
    ['when = 2026-05-14', 'when', '2026-05-14'],
    ['sum = = 5', 'sum', '= 5'],
    ['include = 5', 'include', '5'],
    ['let = 5', 'let', '5'],
    ['empty = ""', 'empty', ''],
    ['said = "a # b"  # why', 'said', 'a # b'],
    [String.raw`said = "a \"b\" \\ \n"`, 'said', String.raw`a "b" \ \n`],
    ['outer = " a "', 'outer', ' a '],
    ['short = 5# why', 'short', '5'],
  ];
  for (const [line, path, value] of rows) {
    it(`${JSON.stringify(line)} keeps ${JSON.stringify(value)} as it is written`, () => {
      assert.deepEqual(told(line), [path, value]);
      assert.deepEqual(problemsIn(line, true), []);
    });
  }

  it('gives every value back as it was written, however odd', () => {
    const value = fc.string({
      unit: fc.oneof(
        fc.string({ unit: 'grapheme', minLength: 1, maxLength: 1 }),
        fc.constantFrom(...' \t#"\\\\=[],.\u00a0\ufeff\u2212'),
      ),
      maxLength: 12,
    });
    const kept = value.filter((text) => !/[\n\r]/.test(text));
    fc.assert(
      fc.property(kept, fc.constantFrom('', ' # why', '# "why"'), (text, comment) => {
        assert.equal(told(`x = ${bareLiteral(text)}${comment}`)[1], text);
      }),
    );
  });

  it('accepts a risk in its comment', () => {
    const { acceptance } = statementOf('x = "#1" # accept a/b: meant', 'setting', true);
    assert.equal(acceptance?.check, 'a/b');
  });

  const faults: readonly (readonly [string, string, string, readonly string[]])[] = [
    ['gyro rate = 5', 'line/not-understood', 'gyro rate', ['"gyro rate" = 5']],
    ['größe.max = 5', 'line/not-understood', 'größe.max', ['"größe".max = 5']],
    ['= 5', 'line/not-understood', '=', []],
    ['rate 5', 'line/not-understood', '5', []],
    ['rate', 'line/not-understood', 'e', []],
    ['rate =', 'line/value-missing', '=', ['rate = ""']],
    ['shade = #ff8800 # amber', 'line/not-understood', '#ff8800', ['shade = "#ff8800" # amber']],
    ['shade = # amber', 'line/value-missing', '=', ['shade = "" # amber']],
    ['size = 5" # wide', 'line/not-understood', '"', ['size = "5\\"" # wide']],
    ['pair = "a" "b"', 'line/not-understood', '"b"', ['pair = "\\"a\\" \\"b\\""']],
    ['said = "a', 'line/text-not-closed', '"a', ['said = "a"']],
    ['"rate = 5', 'line/text-not-closed', '"rate = 5', ['"rate = 5"']],
    ['x = a\u202eb', 'line/hidden-character', '\u202e', ['x = ab']],
  ];
  for (const [line, id, marked, mended] of faults) {
    it(`${JSON.stringify(line)} is told at ${JSON.stringify(marked)}`, () =>
      assert.deepEqual(problemsIn(line, true), [{ id, marked, mended }]));
  }
});

describe('a fix of a line under own', () => {
  const text = fc.string({
    unit: fc.constantFrom(...'ab1_- .\\t"\\\\#=,äα\u{1f6e0}'),
    minLength: 1,
    maxLength: 10,
  });

  it('makes in the end a line that can be read, of the same characters', () => {
    const mend = (line: string) => problemsIn(line, true).flatMap(({ mended }) => mended)[0];
    const bare = (written: string) => written.replace(/[\s"\\\\]/g, '');
    fc.assert(
      fc.property(text, text, (name, value) => {
        const line = `${name} = ${value}`;
        let better = line;
        for (let step = 0; step < 3; step += 1) better = mend(better) ?? better;
        assert.equal(mend(better), undefined, better);
        assert.equal(bare(better), bare(line));
      }),
      { numRuns: 1000 },
    );
  });
});

describe('where values are kept as they are written', () => {
  const values = (text: string) =>
    [...Document.of(text).lines()].flatMap(({ statement, settingPath }) =>
      statement.kind === 'setting' ? [[settingPath, statement.value?.kind]] : [],
    );

  it('is below a header of own, and behind a whole path of it', () => {
    const text =
      'own.x = 5\nmass = 5 g\n[own."PID α" @ pack]\nx = 5\nown.y = 5\n[gyro]\nown.x = 5\n[owner]\nx = 5';
    assert.deepEqual(values(text), [
      ['own.x', 'bare'],
      ['mass', 'number'],
      ['own."PID α".x', 'bare'],
      ['own."PID α".own.y', 'bare'],
      ['gyro.own.x', 'number'],
      ['owner.x', 'number'],
    ]);
  });

  it('is below a header of own that can not be read as well, so that one fault stays one', () => {
    const text = '[own.größe]\nx = 1,5\n"gyro rate" = 0x1F\n';
    const faults = [...Document.of(text).lines()].map(({ statement }) => statement.problems.length);
    assert.deepEqual(faults, [1, 0, 0, 0]);
  });

  it('is below a header that was surely meant for it, so that one fault stays one', () => {
    for (const header of ['["PID α"]', '[own "PID α"]', '[own."PID α]', '[Own]', '[OWN.x @ ]']) {
      const [first, second] = [...Document.of(`${header}\nx = 1,5`).lines()];
      assert.equal(first?.section.isOwn, true, header);
      assert.deepEqual(second?.statement.problems, [], header);
    }
    assert.deepEqual(problemsIn('["PID α"]'), [
      { id: 'line/not-understood', marked: '"PID α"', mended: ['[own."PID α"]'] },
    ]);
  });

  it('is none of a constant, an include or a header among them', () => {
    const kinds = [...Document.of('[own]\nlet x = 5 m\ninclude "a.craft"\n# why\n\n[gyro]').lines()].map(
      ({ statement }) => statement.kind,
    );
    assert.deepEqual(kinds, ['section', 'constant', 'include', 'blank', 'blank', 'section']);
  });

  it('changes with the header above: the lines below are read anew', () => {
    const before = Document.of('[gyro]\nx = 1,5\ny = 2 Hz\n[esc]\nz = 1,5\n');
    const { document } = before.edit({
      start: { line: 0, character: 1 },
      end: { line: 0, character: 5 },
      text: 'own',
    });
    assert.deepEqual(
      [...document.lines()].map(({ statement }) => statement.problems.length),
      [0, 0, 0, 0, 1, 0],
    );
    assert.equal(document.lineAt(4), before.lineAt(4));
  });
});
