import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import {
  type DocumentSymbol,
  documentSymbols,
  mostSymbols,
} from '../../../../server/src/features/navigation/document-symbols';
import type { Position, Range } from '../../../../server/src/features/range';
import { scriptText } from '../../../support/script-text';
import { snapshotOf } from '../../../support/snapshot';

function symbolsIn(text: string): readonly DocumentSymbol[] {
  return documentSymbols(snapshotOf(text).snapshot);
}

/** The outline as a person reads it, children indented. */
function outline(text: string): readonly string[] {
  const told = ({ name, detail }: DocumentSymbol) => (detail === '' ? name : `${name} | ${detail}`);
  return symbolsIn(text).flatMap((symbol) => [
    told(symbol),
    ...symbol.children.map((child) => `  ${told(child)}`),
  ]);
}

describe('document symbols', () => {
  it('puts settings under their sections, with the value as written', () => {
    const text = 'let quiet = 90 Hz # low\n[stick]\nroll.curve = 0 % -> 0 deg/s, 100 % -> 650 deg/s\n';
    assert.deepEqual(outline(text).slice(0, 1), ['quiet | 90 Hz']);
    assert.equal(outline(text)[2], '  roll.curve | 0 % -> 0 deg/s, 100 % -> 650 deg/s');
  });

  it('names packs, switches and sections for one pack as they are spoken of', () => {
    const text = '[pack.sprint]\ncells = 6\n[switch.self-level]\n[gyro.filter.1 @ sprint]\n';
    const names = symbolsIn(text).map(({ name, kind }) => `${kind}: ${name}`);
    assert.deepEqual(names, [
      'pack: pack sprint',
      'switch: switch self-level',
      'section: gyro.filter.1 @ sprint',
    ]);
    assert.equal(symbolsIn(text)[1]?.detail, 'Self-level');
  });

  it('lists what cannot be understood without empty names (H07)', () => {
    assert.deepEqual(outline('include "club.craft"\n[=\nx = 1\nmass =\n= 5\nkey\n'), [
      'club.craft | include',
      '[= | not understood',
      '  x | 1',
      '  mass',
      '  key',
    ]);
    assert.deepEqual(outline(''), []);
    assert.deepEqual(outline('include ""'), ['"" | include']);
  });

  it('ends a section before the comment on top of the next one', () => {
    const [first] = symbolsIn('[a]\nx = 1\n\n# b\n[b]');
    assert.deepEqual(first?.range.end, { line: 1, character: 5 });
  });

  it('shortens long values', () => {
    const detail = symbolsIn(`let note = "${'x'.repeat(200)}"`)[0]?.detail ?? '';
    assert.equal(detail.length, 80);
    assert.ok(detail.endsWith('…'));
  });

  it('says at the end how many entries are left out', () => {
    const text = `[own]\n${Array.from({ length: mostSymbols + 20 }, (_, at) => `x${at} = 1`).join('\n')}\n[gyro]`;
    const symbols = symbolsIn(text);
    const all = symbols.reduce((sum, { children }) => sum + 1 + children.length, 0);
    assert.equal(all, mostSymbols + 1);
    assert.equal(symbols.at(-1)?.name, '… and 22 more');
  });

  it('keeps selections inside ranges and children inside parents, whatever the text (H07)', () => {
    fc.assert(
      fc.property(scriptText, (text) => {
        for (const symbol of symbolsIn(text.replaceAll('|', ''))) checkSymbol(symbol);
      }),
      { numRuns: Number(process.env.PROPSOFF_RUNS ?? 300) },
    );
  });
});

function checkSymbol({ name, range, selection, children }: DocumentSymbol): void {
  assert.notEqual(name.trim(), '');
  assert.ok(contains(range, selection));
  for (const child of children) {
    assert.ok(contains(range, child.range));
    checkSymbol(child);
  }
}

function contains(outer: Range, inner: Range): boolean {
  const order = (one: Position, other: Position) => one.line - other.line || one.character - other.character;
  return order(outer.start, inner.start) <= 0 && order(inner.end, outer.end) <= 0;
}
