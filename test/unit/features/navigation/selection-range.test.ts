import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { selectionRanges } from '../../../../server/src/features/navigation/selection-range';
import type { Position, Range } from '../../../../server/src/features/range';
import { scriptText } from '../../../support/script-text';
import { snapshotOf } from '../../../support/snapshot';

/** The selected texts, the smallest first. */
function selected(marked: string): readonly string[] {
  const { snapshot, position } = snapshotOf(marked);
  const lines = snapshot.script.document.text().split('\n');
  return selectionRanges(snapshot, position).map(({ start, end }) => {
    const covered = lines.slice(start.line, end.line + 1);
    covered.push((covered.pop() ?? '').slice(0, end.character));
    return [(covered.shift() ?? '').slice(start.character), ...covered].join('\n');
  });
}

describe('selection ranges', () => {
  it('grow from a number to the script', () => {
    assert.deepEqual(selected('let a = 1\n\n[gyro]\nrate = 2 * 12|0.5 Hz # why\n'), [
      '120.5',
      '120.5 Hz',
      '2 * 120.5 Hz',
      'rate = 2 * 120.5 Hz',
      'rate = 2 * 120.5 Hz # why',
      '[gyro]\nrate = 2 * 120.5 Hz # why',
      'let a = 1\n\n[gyro]\nrate = 2 * 120.5 Hz # why\n',
    ]);
  });

  it('take a key, a signed number and a unit as one word each (G09)', () => {
    assert.equal(selected('gyro.fil|ter.1.cutoff = 1 Hz')[0], 'gyro.filter.1.cutoff');
    assert.equal(selected('x = -0.2|5 degC')[0], '-0.25');
    assert.equal(selected('x = 1.5e|-3 s')[0], '1.5e-3');
    assert.equal(selected('x = 3 \u00b5|s')[0], '\u00b5s');
    assert.equal(selected('x = 3 m|/s')[0], 'm/s');
  });

  it('go through the point of a curve', () => {
    assert.deepEqual(selected('c = 0 % -> 0 Hz, 50| % -> 9 Hz').slice(0, 4), [
      '50',
      '50 %',
      '50 % -> 9 Hz',
      '0 % -> 0 Hz, 50 % -> 9 Hz',
    ]);
  });

  it('take the words of texts and comments before their marks', () => {
    assert.deepEqual(selected('x = "two w|ords"').slice(0, 2), ['two words', '"two words"']);
    assert.deepEqual(selected('x = 1 # good w|ords').slice(0, 3), [
      'good words',
      '# good words',
      'x = 1 # good words',
    ]);
  });

  it('hold the position and grow, whatever the text and the position', () => {
    const place = fc.record({
      line: fc.integer({ min: 0, max: 14 }),
      character: fc.integer({ min: 0, max: 50 }),
    });
    fc.assert(
      fc.property(scriptText, place, (text, position) => {
        const { snapshot } = snapshotOf(text.replaceAll('|', ''));
        const at = snapshot.script.document.clamp(position);
        let inner: Range = { start: at, end: at };
        for (const range of selectionRanges(snapshot, position)) {
          assert.ok(order(range.start, inner.start) <= 0 && order(inner.end, range.end) <= 0);
          inner = range;
        }
        assert.equal(inner.end.line, snapshot.script.document.lineCount - 1);
      }),
      { numRuns: Number(process.env.PROPSOFF_RUNS ?? 300) },
    );
  });
});

function order(one: Position, other: Position): number {
  return one.line - other.line || one.character - other.character;
}
