import { strict as assert } from 'node:assert';
import stringWidth from 'string-width';
import { excerptOf } from '../../../../server/src/cli/report/excerpt';

/** The line with the mark under it, as the terminal shows both, from a line with the marked part in ‹›. */
function shown(marked: string): readonly [string, number, number] {
  const start = marked.indexOf('‹');
  const end = marked.indexOf('›') - 1;
  const { line, indent, length } = excerptOf(marked.replace(/[‹›]/g, ''), { start, end });
  return [line, indent, length];
}

describe('a line of the report with its mark', () => {
  const cases: readonly [why: string, marked: string, indent: number, length: number][] = [
    ['letters take one column each', 'rate = ‹3 kHz›', 7, 5],
    ['an emoji takes two', 'name = "🐦" ‹x›', 12, 1],
    ['an emoji of several characters takes two', 'name = "👩‍🚀" ‹x›', 12, 1],
    ['a flag takes two', 'name = "🇨🇭" ‹x›', 12, 1],
    ['ideographs take two each', 'name = ‹"海燕"›', 7, 6],
    ['a combining accent takes none', 'name = "e\u0301" ‹x›', 11, 1],
    ['a zero-width space takes none, and its mark is seen', 'name = ‹\u200b›x', 7, 1],
  ];
  for (const [why, marked, indent, length] of cases) {
    it(why, () => {
      const line = marked.replace(/[‹›]/g, '');
      assert.deepEqual(shown(marked), [line, indent, length]);
    });
  }

  it('shows tabs and control characters as one column each', () => {
    assert.deepEqual(shown('\tname\u001b = ‹x›'), [' name\ufffd = x', 9, 1]);
  });

  it('is cut where it is very long, round the mark', () => {
    const { line, indent, length } = excerptOf(`${'海'.repeat(300)}x`, { start: 300, end: 301 });
    assert.deepEqual([line, indent, length], [`${'海'.repeat(20)}x`, 40, 1]);
  });

  it('takes no more columns than it is given, whatever its characters are', () => {
    const lines = ['x'.repeat(200), '海'.repeat(200), '👩‍🚀'.repeat(80), `${'e\u0301'.repeat(90)} = 海`];
    for (const line of lines) {
      for (const start of [0, 30, 60, 150]) {
        const { line: told, indent, length } = excerptOf(line, { start, end: line.length }, 50);
        assert.ok(stringWidth(told) <= 50 && indent + length <= 50, `${told} ${indent} ${length}`);
      }
    }
  });
});
