import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { Document } from '../../../server/src/language/document';
import { parseLine } from '../../../server/src/language/parser';

/** Whatever the line, and wherever it stands, every place that its statement names lies inside it. */
function holdsPlaces(line: string): void {
  placesHold(line, false);
  placesHold(line, true);
}

function placesHold(line: string, isOwn: boolean): void {
  const { problems, comment } = parseLine(line, isOwn);
  for (const { start, end, fixes } of problems) {
    assert.ok(start >= 0 && start <= end, `${start}..${end}`);
    assert.ok(end <= Math.max(1, line.length), `${end} of ${line.length}`);
    for (const { edits } of fixes) {
      for (const edit of edits)
        assert.ok(edit.start >= 0 && edit.start <= edit.end && edit.end <= line.length);
    }
  }
  if (comment !== null) assert.equal(line[comment.start], '#');
}

const soup = fc.string({
  unit: fc.constantFrom(
    ...'aeE10_ \t.,;:#"\'=[]()@+-*/^%\\<>',
    ...'\u00a0\u200b\ufeff\u2212\u201c\u201d\u00b5\u2126\u00b0\u00ba\u0000\u001b\u202e',
    '\u{1f6e0}',
    '\ud83d',
    '..',
    '->',
    'let ',
    'include ',
    '# accept ',
    'min(',
    'degC',
    'Hz',
    '2026-05-14',
  ),
  maxLength: 60,
});

const huge: readonly (readonly [string, string])[] = [
  ['blanks', `a = ${' '.repeat(5e6)}x`],
  ['letters', 'a'.repeat(5e6)],
  ['words of a path', 'a.'.repeat(2.5e6)],
  ['hyphens', 'a-'.repeat(2.5e6)],
  ['quotes', `a = ${'"'.repeat(5e6)}`],
  ['curly quotes', `a = ${'\u201c'.repeat(5e6)}`],
  ['digits', `a = ${'1'.repeat(5e6)}`],
  ['grouped digits', `a = 1${' 000'.repeat(1e6)}5`],
  ['commas', `a = ${'1,'.repeat(2.5e6)}`],
  ['units', `a = 1 ${'b/'.repeat(2.5e6)}`],
  ['parentheses', `a = ${'('.repeat(5e6)}`],
  ['brackets', '['.repeat(5e6)],
  ['arguments', `a = min(${'1, '.repeat(1e6)}`],
  ['terms', `a = 1${' + 1'.repeat(1e6)}`],
  ['no-break spaces', '\u00a0'.repeat(5e6)],
  ['control characters', '\u0001'.repeat(5e6)],
  ['halves of characters', '\ud83d'.repeat(5e6)],
  ['quoted steps', `own${'."a"'.repeat(1e6)} = 1`],
  ['acceptances', `# accept ${'a-'.repeat(2.5e6)}`],
  ['a comment', `#${' accept a/b:'.repeat(4e5)}`],
];

describe('no text is too odd', () => {
  it('any line of any characters is read, and its marks lie inside it', () => {
    fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 80 }), holdsPlaces), { numRuns: 500 });
  });

  it('any line of the characters of scripts is read, and its marks lie inside it', () => {
    fc.assert(fc.property(soup, holdsPlaces), { numRuns: 3000 });
  });

  it('every beginning of a right line is read: half-written is the usual state', () => {
    for (const line of [
      'include "club-habits.craft" # habits',
      'let quiet = 2 * min(90 Hz, gyro.rate / 4) - 5 Hz',
      '[gyro.filter.1 @ cruise] # accept line/section-again: meant',
      'curve = 0 % -> 0 deg/s, 50 % -> 170 deg/s, 100 % -> 670 deg/s',
      'needs = [receiver-alive, "gyro \\" still", 1e3 \u00b5s] # accept a/b: c',
      'on = 1750..2050 us',
      'day = 2026-05-14',
      '"gyro \\" rate".0x = "8 # \\\\ 4" # accept a/b: c',
      '[own."PID α" @ cruise]',
    ]) {
      for (let end = 0; end <= line.length; end += 1) holdsPlaces(line.slice(0, end));
      for (let start = 0; start < line.length; start += 1) holdsPlaces(line.slice(start));
    }
  });

  for (const [what, line] of huge) {
    it(`a line of five million characters is read: ${what} (F06, F07)`, () => holdsPlaces(line));
  }

  it('bytes of any kind, taken as a text, become lines (F03)', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
        const text = Buffer.from(bytes).toString('utf8');
        assert.equal(Document.of(text).text(), text);
        for (const line of Document.of(text).lines()) holdsPlaces(line.text);
      }),
    );
  });
});
