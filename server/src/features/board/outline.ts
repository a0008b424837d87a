import type { Translation } from '../../board/translation';
import type { DocumentSymbol } from '../navigation/document-symbols';
import type { FoldingRange } from '../navigation/folding';
import { rangeInLine } from '../range';

/** The settings of a board's text under their groups, in the order of the text. */
export function boardOutline({ lines }: Translation): readonly DocumentSymbol[] {
  return stretches(lines).map(({ group, first, last }) => {
    const settings = lines.slice(first, last + 1).flatMap(({ line, text }, index): DocumentSymbol[] => {
      if (line.kind !== 'setting') return [];
      const range = rangeInLine(first + index, { start: 0, end: text.length });
      const selection = rangeInLine(first + index, line.name);
      return [
        { name: line.name.text, detail: line.value.text, kind: 'setting', range, selection, children: [] },
      ];
    });
    const end = { line: last, character: lines[last]?.text.length ?? 0 };
    const range = { start: { line: first, character: 0 }, end };
    const selection = rangeInLine(first, { start: 0, end: lines[first]?.text.length ?? 0 });
    const name = group === '' ? 'settings' : group;
    return { name, detail: '', kind: 'section', range, selection, children: settings };
  });
}

export function boardFolding({ lines }: Translation): readonly FoldingRange[] {
  return stretches(lines)
    .filter(({ first, last }) => last > first)
    .map(({ first, last }) => ({ first, last, kind: 'section' }));
}

interface Stretch {
  readonly group: string;
  readonly first: number;
  readonly last: number;
}

/** Lines of one group that stand together. */
function stretches(lines: Translation['lines']): readonly Stretch[] {
  const found: Stretch[] = [];
  for (const [number, { line, group }] of lines.entries()) {
    if (line.kind !== 'setting' && line.kind !== 'heading') continue;
    const before = found.at(-1);
    if (before !== undefined && before.group === group) found[found.length - 1] = { ...before, last: number };
    else found.push({ group, first: number, last: number });
  }
  return found;
}
