import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { foldingRanges } from '../../../../server/src/features/navigation/folding';
import { scriptText } from '../../../support/script-text';
import { snapshotOf } from '../../../support/snapshot';

function folds(text: string): readonly string[] {
  return foldingRanges(snapshotOf(text).snapshot).map(({ first, last, kind }) => `${first}-${last} ${kind}`);
}

describe('folding', () => {
  it('leaves the header, the blank line and the comment on top of the next header in sight (H06)', () => {
    assert.deepEqual(folds('[a] # note\nx = 1\n\n# about b\n[b]\ny = 1'), ['0-1 section', '4-5 section']);
  });

  it('keeps a comment that stands on top of the next header without a blank line before', () => {
    assert.deepEqual(folds('[a]\nx = 1\ny = 2\n# about b\n# more\n[b]\n'), ['0-2 section', '3-4 comment']);
  });

  it('folds comments that end a section, blank lines after them stay, and the last section to the end of the script (H06)', () => {
    assert.deepEqual(folds('[a]\nx = 1\n# tail\n\n\n[b]\ny = 1\n# end\n\n'), ['0-2 section', '5-7 section']);
  });

  it('does not fold an empty section or a single comment (H06)', () => {
    assert.deepEqual(folds('# one\n\n[a]\n\n[b]\n'), []);
  });

  it('folds runs of comment lines as comments', () => {
    assert.deepEqual(folds('# one\n# two\n# three\n\n[a]\n# x\n# y\nz = 1'), [
      '0-2 comment',
      '4-7 section',
      '5-6 comment',
    ]);
  });

  it('folds a section whose header is not understood', () => {
    assert.deepEqual(folds('[=\nx = 1\n'), ['0-1 section']);
  });

  it('never ends a fold at or before its start, whatever the text (H06)', () => {
    fc.assert(
      fc.property(scriptText, (text) => {
        const { snapshot } = snapshotOf(text.replaceAll('|', ''));
        for (const { first, last } of foldingRanges(snapshot)) {
          assert.ok(last > first && last < snapshot.script.document.lineCount);
        }
      }),
      { numRuns: Number(process.env.PROPSOFF_RUNS ?? 300) },
    );
  });
});
