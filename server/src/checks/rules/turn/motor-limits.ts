import type { CraftView } from '../../../craft/view';
import { fullCell, packCount, packPath } from '../../../figures/pack-in-view';
import type { CodeRule, ReportFinding, RuleFinding } from '../../rule';

/** Above this voltage a full cell is more than the ratings in cells were made for. Common practice. */
const ratedCell = 4.25;

interface Limited {
  readonly id: string;
  readonly path: string;
  /** "The motors": as the sentence begins. */
  readonly who: string;
}

const limited: readonly Limited[] = [
  { id: 'turn/motor-cells', path: 'motor.cells-limit', who: 'The motors' },
  { id: 'turn/esc-cells', path: 'esc.cells-limit', who: 'The speed controllers' },
];

const cellsLimits: CodeRule = {
  ids: [...limited.map(({ id }) => id), 'turn/high-voltage-at-limit'],
  scope: 'pack',
  check(view, report) {
    const at = packPath(view, 'cells');
    const cells = packCount(view, 'cells');
    if (at === null || cells === null) return;
    for (const one of limited) {
      const limit = view.count(one.path);
      if (limit === null) continue;
      if (cells > limit) report(tooMany(one, at, cells, limit));
      else if (cells === limit) reportHighVoltage(view, one, at, cells, report);
    }
  },
};

function tooMany({ id, path, who }: Limited, at: string, cells: number, limit: number): RuleFinding {
  const values = { cells: cellsText(cells), limit: cellsText(limit) };
  return { id, at, values, related: [{ at: path, message: `${who} take ${cellsText(limit)} at most.` }] };
}

/** Ratings in cells mean cells of 4.2 V; a pack of higher ones at the very limit is over it in volts. */
function reportHighVoltage(
  view: CraftView,
  { path, who }: Limited,
  at: string,
  cells: number,
  report: ReportFinding,
): void {
  const full = fullCell(view);
  // What is made for a single cell is made for either kind.
  if (full === null || full <= ratedCell || cells === 1) return;
  const values = {
    who: who.toLowerCase(),
    cells: cellsText(cells),
    full: view.amount(cells * full, 'V'),
    rated: view.amount(cells * 4.2, 'V'),
  };
  report({
    id: 'turn/high-voltage-at-limit',
    at,
    values,
    related: [{ at: path, message: `The limit of ${who.toLowerCase()}.` }],
  });
}

function cellsText(cells: number): string {
  return cells === 1 ? '1 cell' : `${cells} cells`;
}

export const motorLimitRules: readonly CodeRule[] = [cellsLimits];
