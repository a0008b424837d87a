import { inBase } from '../../../catalog/known-parameter';
import { CraftView } from '../../../craft/view';
import { chemistryInView, fullCell, packCount, packPath } from '../../../figures/pack-in-view';
import type { CodeRule } from '../../rule';

/** Voltages of the pack in view at which a flight may begin or go on: from warning to full. */
interface PackVoltages {
  readonly pack: string;
  readonly cells: number;
  readonly low: number;
  readonly high: number;
}

function voltagesOf(view: CraftView): PackVoltages | null {
  const cells = packCount(view, 'cells');
  const full = fullCell(view);
  const warn = view.quantity('power.warn-cell') ?? usualWarning(view);
  if (view.pack === null || cells === null || full === null || warn === null) return null;
  return { pack: view.pack, cells, low: cells * warn, high: cells * full };
}

function usualWarning(view: CraftView): number | null {
  const chemistry = chemistryInView(view);
  return chemistry === undefined ? null : inBase(chemistry.warn);
}

/**
 * A board that counts cells by the voltage at plugging in can't tell two packs of the craft apart where their
 * voltages overlap.
 */
const ambiguous: CodeRule = {
  ids: ['power/cell-count-ambiguous'],
  scope: 'pack',
  check(view, report) {
    if (view.word('power.cells') !== 'auto') return;
    const own = voltagesOf(view);
    const at = packPath(view, 'cells');
    if (own === null || at === null) return;
    for (const name of view.craft.packs()) {
      const other = voltagesOf(new CraftView(view.craft, name));
      if (other === null || other.cells <= own.cells || other.low >= own.high - 1e-9) continue;
      report({
        id: 'power/cell-count-ambiguous',
        at,
        values: {
          other: other.pack,
          cells: cellsText(own.cells),
          more: cellsText(other.cells),
          low: view.amount(other.low, 'V'),
          high: view.amount(own.high, 'V'),
        },
        related: [{ at: `pack.${name}.cells`, message: `Pack ${name} reaches down into the same voltages.` }],
      });
    }
  },
};

/** An automatic count takes the pack for full: one of many cells at storage charge is read as one of fewer. */
const storedPack: CodeRule = {
  ids: ['power/stored-pack-miscounted'],
  scope: 'pack',
  check(view, report) {
    if (view.word('power.cells') !== 'auto') return;
    const cells = packCount(view, 'cells');
    const full = fullCell(view);
    const at = packPath(view, 'cells');
    const storage = chemistryInView(view)?.storage;
    if (cells === null || full === null || at === null || storage === undefined) return;
    const stored = cells * inBase(storage);
    if (stored > (cells - 1) * full + 1e-9) return;
    const values = {
      cells: cellsText(cells),
      stored: view.amount(stored, 'V'),
      fewer: cellsText(cells - 1),
      full: view.amount((cells - 1) * full, 'V'),
    };
    const fixes = [{ title: 'Write {to}', set: 'power.cells', to: String(cells) }];
    report({ id: 'power/stored-pack-miscounted', at, values, fixes });
  },
};

const wrongCount: CodeRule = {
  ids: ['power/cell-count-wrong'],
  scope: 'pack',
  check(view, report) {
    const said = view.count('power.cells');
    const cells = packCount(view, 'cells');
    const path = packPath(view, 'cells');
    if (said === null || cells === null || path === null || said === cells) return;
    const values = { said: cellsText(said), cells: cellsText(cells) };
    const related = [{ at: path, message: `This pack has ${cellsText(cells)}.` }];
    report({ id: 'power/cell-count-wrong', at: 'power.cells', values, related });
  },
};

function cellsText(cells: number): string {
  return cells === 1 ? '1 cell' : `${cells} cells`;
}

export const cellCountRules: readonly CodeRule[] = [ambiguous, storedPack, wrongCount];
