import { strict as assert } from 'node:assert';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { Document, type DocumentEdit, isInsidePair } from '../../../server/src/language/document';

type Ends = readonly [number, number, number, number];

function edit([line, character, endLine, endCharacter]: Ends, text: string): DocumentEdit {
  return { start: { line, character }, end: { line: endLine, character: endCharacter }, text };
}

function edited(text: string, ends: Ends, newText: string): Document {
  return Document.of(text).edit(edit(ends, newText)).document;
}

const sections = (document: Document) => [...document.lines()].map((line) => line.section.path);

describe('a document', () => {
  it('gives its text back as it was, whatever its line ends', () => {
    for (const text of ['', '\n', 'a = 1\r\nb = 2\rc = 3\n', '\ufeff[gyro]\nx = 1', 'a\u2028b']) {
      assert.equal(Document.of(text).text(), text);
    }
  });

  it('puts a byte order mark in front of the first line aside (A06)', () => {
    const document = Document.of('\ufeff[gyro]\ncutoff = 1');
    const first = document.lineAt(0)?.statement;
    assert.equal(first?.kind === 'section' && first.path.start, 2);
    assert.deepEqual(first?.problems, []);
    assert.equal(document.lineAt(1)?.settingPath, 'gyro.cutoff');
  });

  it('takes a byte order mark for a fault everywhere else (A06)', () => {
    const document = edited('\ufeff[gyro]\n', [0, 0, 0, 0], '# above\n');
    assert.equal(document.lineAt(1)?.statement.problems[0]?.id, 'line/odd-space');
    const back = document.edit(edit([0, 0, 1, 0], '')).document;
    assert.deepEqual(back.lineAt(0)?.statement.problems, []);
  });

  it('knows its line end from its first line (A05)', () => {
    assert.equal(Document.of('a\r\nb\n').lineEnd, '\r\n');
    assert.equal(Document.of('a\rb\n').lineEnd, '\r');
    assert.equal(Document.of('a').lineEnd, '\n');
  });

  it('has no line past its end, nor before its start', () => {
    const document = Document.of('a = 1\nb = 2');
    assert.equal(document.lineCount, 2);
    assert.equal(document.lineAt(2), undefined);
    assert.equal(document.lineAt(-1), undefined);
  });

  it('numbers its lines, and not those of others', () => {
    const text = Array.from({ length: 2000 }, (_, index) => `x${index} = 1`).join('\n');
    const document = Document.of(text);
    for (const number of [0, 1, 255, 256, 1023, 1999]) {
      const line = document.lineAt(number);
      assert.ok(line);
      assert.equal(document.lineNumberOf(line), number);
    }
    const other = Document.of(text).lineAt(0);
    assert.equal(other && document.lineNumberOf(other), -1);
  });
});

describe('the section of a line', () => {
  it('is that of the header above it', () => {
    const document = Document.of('a = 1\n[gyro]\nb = 2\n\n[gyro.filter.1 @ cruise]\nc = 3');
    assert.deepEqual(
      [...document.lines()].map((line) => line.settingPath),
      ['a', null, 'gyro.b', null, null, 'gyro.filter.1.c'],
    );
    assert.deepEqual(document.lineAt(5)?.section, { path: 'gyro.filter.1', pack: 'cruise', isOwn: false });
  });

  it('is unknown below a header that cannot be read', () => {
    const document = Document.of('[gyro]\n[5]\nb = 2\n[esc]\nc = 3');
    assert.deepEqual(
      [...document.lines()].map((line) => line.settingPath),
      [null, null, null, null, 'esc.c'],
    );
  });

  it('follows an edit of the header, down to the next header and no further', () => {
    const before = Document.of('[gyro]\na = 1\nb = 2\n[esc]\nc = 3\n');
    const { document, change } = before.edit(edit([0, 1, 0, 5], 'motor'));
    assert.deepEqual(sections(document), ['motor', 'motor', 'motor', 'esc', 'esc', 'esc']);
    assert.equal(document.lineAt(3), before.lineAt(3));
    assert.equal(change.removed.length, 3);
    assert.equal(change.added.length, 3);
  });

  it('follows a header that is taken out or put in', () => {
    assert.deepEqual(sections(edited('[gyro]\na = 1\n[esc]\nb = 1', [2, 0, 3, 0], '')), [
      'gyro',
      'gyro',
      'gyro',
    ]);
    assert.deepEqual(sections(edited('a = 1\nb = 1', [1, 0, 1, 0], '[esc]\n')), ['', 'esc', 'esc']);
    assert.deepEqual(sections(edited('[esc]\nb = 1', [0, 0, 1, 0], '')), ['']);
  });

  it('is the same object below an edit that changes no section', () => {
    const before = Document.of('[gyro]\na = 1\nb = 2\n');
    const { document, change } = before.edit(edit([1, 4, 1, 5], '9'));
    assert.equal(document.lineAt(0), before.lineAt(0));
    assert.equal(document.lineAt(2), before.lineAt(2));
    assert.deepEqual([change.removed.length, change.added.length], [1, 1]);
    assert.equal(document.lineAt(1)?.text, 'a = 9');
  });
});

describe('an edit', () => {
  const cases: readonly [string, string, Ends, string, string][] = [
    ['puts text in', 'a = 1\n', [0, 4, 0, 4], '2', 'a = 21\n'],
    ['takes a line out', 'a\nb\nc', [1, 0, 2, 0], '', 'a\nc'],
    ['joins two lines', 'a\nb', [0, 1, 1, 0], '', 'ab'],
    ['replaces all', 'a\nb', [0, 0, 9, 0], 'c', 'c'],
    ['empties the document', 'a\nb', [0, 0, 1, 1], '', ''],
    ['adds past the end (A11)', 'a = 1\nb = 2', [9, 9, 9, 9], '\nc', 'a = 1\nb = 2\nc'],
    ['stays on its line however far right it is (A11)', 'a\nb', [0, 99, 0, 99], 'x', 'ax\nb'],
    ['makes one line end of CR and LF', 'a\rb', [1, 0, 1, 0], '\n', 'a\r\nb'],
    [
      'makes one line end of CR and LF by taking out what stood between',
      'a\rX\nb',
      [1, 0, 1, 1],
      '',
      'a\r\nb',
    ],
    ['makes one line end of CR and LF across lines', 'a\rX\n\nb', [1, 0, 2, 0], '', 'a\r\nb'],
    ['makes two line ends of CRLF', 'a\r\nb', [0, 1, 0, 1], '\r', 'a\r\r\nb'],
    ['puts CR in front of LF', 'a\nb', [0, 1, 0, 1], '\r', 'a\r\nb'],
    ['with its ends the wrong way round is taken as meant', 'abc\ndef', [1, 1, 0, 1], 'X', 'aXef'],
    ['before the document is moved into it', 'a', [-3, -1, -3, -1], 'x', 'xa'],
  ];
  for (const [what, text, ends, newText, result] of cases) {
    it(what, () => {
      const document = edited(text, ends, newText);
      assert.equal(document.text(), result);
      assert.deepEqual(
        [...document.lines()].map((line) => line.text + line.end),
        [...Document.of(result).lines()].map((line) => line.text + line.end),
      );
    });
  }

  it('never cuts a character in two: inside a pair it is moved to the edge (A02)', () => {
    const text = 'label = "\u{1f6e0}\u{1f6e0}" Hz';
    assert.equal(edited(text, [0, 13, 0, 13], 'X').text(), 'label = "\u{1f6e0}\u{1f6e0}X" Hz');
    assert.equal(edited(text, [0, 10, 0, 10], 'X').text(), 'label = "X\u{1f6e0}\u{1f6e0}" Hz');
    assert.equal(edited(text, [0, 10, 0, 12], '').text(), 'label = "\u{1f6e0}" Hz');
    assert.ok(isInsidePair(text, 10));
    assert.ok(!isInsidePair(text, 9));
    assert.ok(!isInsidePair(text, 11));
  });

  it('comes after the one before it, never sorted (D01)', () => {
    const first = edited('a = 1\nb = 2\n', [0, 0, 0, 0], '\n\n');
    assert.equal(first.edit(edit([2, 4, 2, 5], '9')).document.text(), '\n\na = 9\nb = 2\n');
  });

  it('leaves the document that it came from as it was', () => {
    const before = Document.of('a = 1\nb = 2\n');
    before.edit(edit([0, 0, 1, 0], '[gyro]\n'));
    assert.equal(before.text(), 'a = 1\nb = 2\n');
    assert.deepEqual(sections(before), ['', '', '']);
  });

  it('does what the text document of the protocol does', () => {
    const text = 'a\r\nb\rc\n\n[gyro]\rd';
    for (let line = 0; line < 7; line += 1) {
      for (let character = 0; character < 3; character += 1) {
        for (const newText of ['', '\n', '\r', 'x\r\ny']) {
          const ends: Ends = [line, character, line + 1, character];
          const theirs = TextDocument.create('test:///a', 'craft-script', 1, text);
          const { start, end } = edit(ends, newText);
          TextDocument.update(theirs, [{ range: { start, end }, text: newText }], 2);
          assert.equal(edited(text, ends, newText).text(), theirs.getText());
        }
      }
    }
  });
});

describe('a long document', () => {
  const lines = Array.from({ length: 5000 }, (_, index) =>
    index % 50 === 0 ? '[gyro]' : `x${index} = ${index} Hz`,
  );
  const before = Document.of(lines.join('\n'));

  it('keeps every line but the edited one through an edit', () => {
    const { document, change } = before.edit(edit([2525, 0, 2525, 1], 'y'));
    assert.equal(change.removed.length, 1);
    assert.equal(change.added.length, 1);
    const kept = lines.filter((_, number) => document.lineAt(number) === before.lineAt(number)).length;
    assert.equal(kept, 4999);
  });

  it('keeps all others when lines are put in and taken out', () => {
    const { document, change } = before.edit(edit([100, 0, 103, 0], 'a = 1\n'));
    assert.equal(document.lineCount, 4998);
    assert.ok(change.added.length <= 2 && change.removed.length <= 4);
    const old = new Set(before.lines());
    assert.ok([...document.lines()].filter((line) => !old.has(line)).length <= 2);
  });

  it('numbers lines that it shares with what an edit made of it as it has them itself', () => {
    const last = before.lineAt(before.lineCount - 1);
    assert.ok(last);
    const longer = before.edit(edit([1, 0, 1, 0], 'a = 1\n'.repeat(700))).document;
    const shorter = longer.edit(edit([10, 0, 2000, 0], '')).document;
    assert.equal(before.lineNumberOf(last), before.lineCount - 1);
    assert.equal(longer.lineNumberOf(last), longer.lineCount - 1);
    assert.equal(shorter.lineNumberOf(last), shorter.lineCount - 1);
  });

  it('numbers its lines right after a thousand edits', () => {
    let document = before;
    for (let turn = 0; turn < 1000; turn += 1) {
      const at = (turn * 37) % document.lineCount;
      const ends: Ends = turn % 3 === 0 ? [at, 0, at + 1, 0] : [at, 0, at, 0];
      document = document.edit(edit(ends, turn % 3 === 0 ? '' : `z${turn} = 1\n`)).document;
    }
    let number = 0;
    for (const line of document.lines()) {
      assert.equal(document.lineNumberOf(line), number);
      number += 1;
    }
    assert.equal(number, document.lineCount);
  });
});
