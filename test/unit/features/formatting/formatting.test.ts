import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { formatText, formatting } from '../../../../server/src/features/formatting/formatting';
import type { Range } from '../../../../server/src/features/range';
import { withEdits } from '../../../../server/src/features/text-edits';
import { Document } from '../../../../server/src/language/document';
import { scriptText } from '../../../support/script-text';
import { snapshotOf } from '../../../support/snapshot';

const runs = Number(process.env.PROPSOFF_RUNS ?? 300);

function editsIn(text: string, range?: Range) {
  return formatting(snapshotOf(text).snapshot, range);
}

function lines(first: number, last: number, character = 0): Range {
  return { start: { line: first, character: 0 }, end: { line: last, character } };
}

describe('formatting', () => {
  it('lines up equals signs and trailing comments within a block', () => {
    const given = '[craft]\nname="Sandmartin"\nmass   =212 g # ready to fly\nlayout= quad-x   # four arms\n';
    const expected =
      '[craft]\nname   = "Sandmartin"\nmass   = 212 g   # ready to fly\nlayout = quad-x  # four arms\n';
    assert.equal(formatText(given), expected);
  });

  it('lines up each block by itself: blank lines and headers part them', () => {
    const given = 'let quiet = 90 Hz\nlet loud=5 Hz\n\n[gyro]\nrate = 6.4 kHz\n\nlonger-name = 1\n';
    const expected = 'let quiet = 90 Hz\nlet loud  = 5 Hz\n\n[gyro]\nrate = 6.4 kHz\n\nlonger-name = 1\n';
    assert.equal(formatText(given), expected);
  });

  it('does not part a block at a comment of its own', () => {
    assert.equal(formatText('[a]\nx=1\n  # between\nlong=2'), '[a]\nx    = 1\n# between\nlong = 2');
  });

  it('leaves a name that is very long out of line, rather than to push all others to it', () => {
    const long = 'x'.repeat(1000);
    const expected = `${long} = 1\na   = 2\nbcd = 3\n`;
    assert.equal(formatText(`${long}=1\na=2\nbcd=3\n`), expected);
  });

  it('lines up what is kept as it is written, and touches nothing within it', () => {
    const given = '[ own."PID  α"@cruise ]\n"gyro  rate"=8000   4000 ,5# why\nx= "a  # b" #c\n';
    const expected =
      '[own."PID  α" @ cruise]\n"gyro  rate" = 8000   4000 ,5  # why\nx            = "a  # b"        #c\n';
    assert.equal(formatText(given), expected);
    assert.equal(formatText('own.x=1,5\nmass=2 g\n'), 'own.x = 1,5\nmass  = 2 g\n');
  });

  it('takes a block of very many lines', () => {
    const lines = 70_000;
    assert.equal(formatText('=\na=1 # b\n'.repeat(lines)), '=\na = 1  # b\n'.repeat(lines));
  });

  it('puts one blank round signs and none inside brackets', () => {
    const cases = [
      ['roll.curve=0 %->0 deg/s,50 %  ->170deg/s', 'roll.curve = 0 % -> 0 deg/s, 50 % -> 170 deg/s'],
      ['place = [ 11,22 ]', 'place = [11, 22]'],
      ['[ gyro.filter.1@cruise ]', '[gyro.filter.1 @ cruise]'],
      ['on = 1750 .. 2050us', 'on = 1750..2050 us'],
      ['x = quiet..100 Hz', 'x = quiet..100 Hz'],
      ['x = quiet .. 100 Hz', 'x = quiet..100 Hz'],
      ['cutoff =  2   *  quiet', 'cutoff = 2 * quiet'],
      ['cutoff = 2*quiet', 'cutoff = 2*quiet'],
      ['x = max ( 2 m , low )', 'x = max(2 m, low)'],
      ['x = -40 degC', 'x = -40 degC'],
      ['include"club-habits.craft"', 'include "club-habits.craft"'],
      ['\tlet   quiet\t=\t90 Hz\t', 'let quiet = 90 Hz'],
    ] as const;
    for (const [given, expected] of cases) assert.equal(formatText(given), expected);
  });

  it('changes neither texts nor the words of comments', () => {
    const given = '[craft]\nname  = "two  blanks ,-> @ ="   #   kept   as, it ->is  \n';
    assert.equal(formatText(given), '[craft]\nname = "two  blanks ,-> @ ="  #   kept   as, it ->is\n');
  });

  it('takes a hash in a text for text, and lets a header keep its comment (A12)', () => {
    const given = '[craft]   # main\nname="lot #7"# why \\\nmass =2 g';
    assert.equal(formatText(given), '[craft]  # main\nname = "lot #7"  # why \\\nmass = 2 g');
  });

  it('keeps a line that is not understood but for its trailing blanks', () => {
    const given = '[craft]\nmass =  1,5  g   \nname   =   "open   \n=  5  \nlayout= quad-x';
    const expected = '[craft]\nmass =  1,5  g\nname   =   "open\n=  5\nlayout = quad-x';
    assert.equal(formatText(given), expected);
  });

  it('does not let one very long line push the comments of its block', () => {
    const long = `curve = ${'10 % -> 20 deg/s, '.repeat(5)}50 % -> 60 deg/s`;
    const given = `${long}  # long\nfade  = 1 # short`;
    assert.equal(formatText(given), `${long}  # long\nfade  = 1  # short`);
  });

  it('leaves one blank line before a header, above the comments that stand on top of it', () => {
    const given = 'x = 1\n# about b\n# more\n[b]\ny = 1\n[c]\n\n\n\n[d]\n';
    const expected = 'x = 1\n\n# about b\n# more\n[b]\ny = 1\n\n[c]\n\n[d]\n';
    assert.equal(formatText(given), expected);
  });

  it('leaves at most one blank line, and none at the start or the end', () => {
    assert.equal(formatText('\n \n# head\n\n\n\nx = 1\n\n\n'), '# head\n\nx = 1\n');
  });

  it('keeps every comment next to its setting (H02)', () => {
    const given = '# head\n\n# group\n# more\na = 1 # why\n\n# tail';
    assert.equal(formatText(given), '# head\n\n# group\n# more\na = 1  # why\n\n# tail');
  });

  it('changes nothing the second time, and gives no edits then (H04)', () => {
    const texts = [
      '\n\n',
      '',
      '\t\n',
      'a = 1\r\nlong-key\t= 2\r\n',
      '[a\nx = = 1\n\n\n= 5',
      '\r \n',
      'a\r \n[b]',
    ];
    for (const text of texts) {
      const once = formatText(text);
      assert.equal(formatText(once), once);
      assert.deepEqual(editsIn(once), []);
    }
    assert.equal(formatText('\n\n'), '\n\n');
  });

  it('adds a blank line with the line end of its script (A05)', () => {
    const edits = editsIn('[a]\r\nx=1\r\n[b]\r\ny = 1');
    assert.deepEqual(
      edits.map(({ newText }) => newText),
      [' ', ' ', '\r\n'],
    );
    const formatted = formatText('[a]\r\nx=1\r\n[b]\r\ny = 1');
    assert.equal(formatted.replaceAll('\r\n', '').includes('\n'), false);
  });

  it('gives each line back once where the last has no end (A11)', () => {
    assert.equal(formatText('a=1\nb=2'), 'a = 1\nb = 2');
    const edits = editsIn('a=1\nb=2', { start: { line: 0, character: 0 }, end: { line: 2, character: 0 } });
    assert.equal(withEdits(Document.of('a=1\nb=2'), edits), 'a = 1\nb = 2');
  });

  it('changes gaps, not lines', () => {
    assert.deepEqual(editsIn('x =  1'), [
      { range: { start: { line: 0, character: 4 }, end: { line: 0, character: 5 } }, newText: '' },
    ]);
  });

  it('keeps the mark at the start of a file', () => {
    assert.equal(formatText('\ufeffx=1\n[a]'), '\ufeffx = 1\n\n[a]');
  });

  it('changes only the lines of the range, as the whole script would have them', () => {
    const text = '[a]\nx=1\nlonger=2\n[b]\ny=1';
    const ranged = (range: Range) => withEdits(Document.of(text), editsIn(text, range));
    assert.equal(ranged(lines(1, 1, 3)), '[a]\nx      = 1\nlonger=2\n[b]\ny=1');
    assert.equal(ranged(lines(1, 2)), ranged(lines(1, 1, 3)));
    assert.equal(ranged(lines(3, 3, 1)), '[a]\nx=1\nlonger=2\n\n[b]\ny=1');
    assert.equal(ranged(lines(4, 99)), '[a]\nx=1\nlonger=2\n[b]\ny = 1');
  });

  it('takes out only the surplus blank lines of the range', () => {
    const text = 'x = 1\n\n\n\n\ny = 1';
    const at = (first: number, last: number) =>
      withEdits(Document.of(text), editsIn(text, lines(first, last, 1)));
    assert.equal(at(3, 3), 'x = 1\n\n\n\ny = 1');
    assert.equal(at(1, 4), 'x = 1\n\ny = 1');
    assert.equal(at(5, 5), text);
  });
});

describe('formatting any text', () => {
  const holds = (check: (text: string) => void) => {
    fc.assert(fc.property(scriptText, check), { numRuns: runs });
  };

  it('changes nothing the second time', () => {
    holds((text) => {
      const once = formatText(text);
      assert.equal(formatText(once), once);
    });
  });

  it('keeps every character that is no blank, in order', () => {
    const solid = (text: string) => text.replace(/[ \t\r\n]/g, '');
    holds((text) => assert.equal(solid(formatText(text)), solid(text)));
  });

  it('keeps the words of every comment and of every text that is closed', () => {
    const kept = (text: string) =>
      [...Document.of(text).lines()].flatMap(({ text: line, statement: { comment }, statement }) => {
        const isClosed = statement.problems.length === 0;
        const node = 'value' in statement && isClosed ? statement.value : null;
        const value = node?.kind === 'text' ? [node.value] : node?.kind === 'bare' ? [node.text] : [];
        return comment === null ? value : [...value, line.slice(comment.start).trimEnd()];
      });
    holds((text) => assert.deepEqual(kept(formatText(text)), kept(text)));
  });

  it('says the same after as before, line by line', () => {
    const said = (text: string) =>
      [...Document.of(text).lines()].flatMap((line) => {
        const { kind, problems } = line.statement;
        const isBlank = kind === 'blank' && line.text.trim() === '' && problems.length === 0;
        return isBlank ? [] : [`${kind} ${problems.map(({ id }) => id).join()} ${line.settingPath}`];
      });
    holds((text) => assert.deepEqual(said(formatText(text)), said(text)));
  });

  it('gives sorted edits that do not overlap, of blanks alone', () => {
    holds((text) => {
      const edits = editsIn(text.replaceAll('|', ''));
      for (const [index, { range, newText }] of edits.entries()) {
        assert.match(newText, /^[ ]*$|^(?:\r\n|\r|\n)$/);
        const before = edits[index - 1];
        if (before !== undefined) assert.ok(comparePositions(before.range.end, range.start) <= 0);
      }
    });
  });
});

function comparePositions(one: Range['start'], other: Range['start']): number {
  return one.line - other.line || one.character - other.character;
}
