import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { semanticTokens } from '../../../server/src/features/semantic-tokens';
import { scriptText } from '../../support/script-text';
import { snapshotOf } from '../../support/snapshot';

function tokensIn(text: string): readonly string[] {
  const { snapshot } = snapshotOf(text);
  return semanticTokens(snapshot).map(({ line, start, length, type }) => {
    const covered = snapshot.script.document.lineAt(line)?.text.slice(start, start + length);
    return `${type} ${covered}`;
  });
}

describe('semantic tokens', () => {
  it('tells key, number, unit and comment apart, in UTF-16 units (H05)', () => {
    const { snapshot } = snapshotOf('gyro.filter.1.cutoff = -120 Hz # \u{1F6E0} note\r\n[gyro]\r\n[gyro]');
    assert.deepEqual(semanticTokens(snapshot), [
      { line: 0, start: 0, length: 20, type: 'property' },
      { line: 0, start: 23, length: 4, type: 'number' },
      { line: 0, start: 28, length: 2, type: 'unit' },
      { line: 0, start: 31, length: 9, type: 'comment' },
      { line: 1, start: 1, length: 4, type: 'namespace' },
      { line: 2, start: 1, length: 4, type: 'namespace' },
    ]);
  });

  it('marks includes, constants, packs and acceptances', () => {
    const text =
      'include "club.craft"\nlet quiet = 2 * low\n[gyro.filter.1 @ cruise] # accept tune/x: why not\n';
    assert.deepEqual(tokensIn(text), [
      'keyword include',
      'string "club.craft"',
      'keyword let',
      'variable quiet',
      'number 2',
      'variable low',
      'namespace gyro.filter.1',
      'namespace cruise',
      'acceptance # accept tune/x: why not',
    ]);
  });

  it('tells words from constants by the kind of the parameter', () => {
    assert.deepEqual(tokensIn('[gyro.filter.1]\nkind = none\ncutoff = min(quiet, gyro.rate)'), [
      'namespace gyro.filter.1',
      'property kind',
      'enumMember none',
      'property cutoff',
      'keyword min',
      'variable quiet',
      'property gyro.rate',
    ]);
    assert.deepEqual(tokensIn('flight.first.pack = sprint').slice(1), ['namespace sprint']);
  });

  it('gives the lines of a range only', () => {
    const { snapshot } = snapshotOf('a = 1\nb = 2\nc = 3');
    const range = { start: { line: 1, character: 0 }, end: { line: 1, character: 5 } };
    assert.deepEqual(
      semanticTokens(snapshot, range).map(({ line }) => line),
      [1, 1],
    );
  });

  it('is sorted, does not overlap and stays inside its lines, whatever the text (H05)', () => {
    fc.assert(
      fc.property(scriptText, (text) => {
        const { snapshot } = snapshotOf(text.replaceAll('|', ''));
        let last = { line: 0, end: 0 };
        for (const { line, start, length } of semanticTokens(snapshot)) {
          const from = line === last.line ? last.end : 0;
          assert.ok(line >= last.line && start >= from && length > 0);
          last = { line, end: start + length };
          assert.ok(last.end <= (snapshot.script.document.lineAt(line)?.text.length ?? 0));
        }
      }),
      { numRuns: Number(process.env.PROPSOFF_RUNS ?? 300) },
    );
  });
});
