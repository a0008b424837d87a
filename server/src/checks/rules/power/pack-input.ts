import type { CraftView } from '../../../craft/view';
import { figureOf } from '../../../figures';
import { boardDivider, dividerOf, dividerText, referenceVoltage } from '../../../figures/measuring';
import { packCount, packPath } from '../../../figures/pack-in-view';
import type { CodeRule, RuleFix } from '../../rule';

/** Share of the converter's reference above which a full pack has no room left for spikes. Common practice. */
const closeTo = 0.96;
/** Two dividers whose ratios differ by more than resistors do. */
const resistorSpread = 0.04;

/** What a full pack puts on the converter, against what it can read. */
const overflow: CodeRule = {
  ids: ['power/divider-overflow', 'power/divider-close'],
  scope: 'pack',
  check(view, report) {
    if (view.isSet('power.measure') && view.word('power.measure') !== 'board') return;
    const tap = figureOf(view, 'divider-at-full-pack')?.likely;
    const limit = figureOf(view, 'pack-input-limit')?.likely;
    const reference = referenceVoltage(view);
    const divider = dividerOf(view);
    const cells = packPath(view, 'cells');
    if (tap === undefined || limit === undefined || reference === null) return;
    if (divider === null || cells === null || tap <= closeTo * reference) return;
    const full = figureOf(view, 'pack-full-voltage')?.likely ?? 0;
    const isSaid = divider.from === 'script';
    report({
      id: tap > reference * (1 + 1e-9) ? 'power/divider-overflow' : 'power/divider-close',
      at: isSaid ? 'power.divider-upper' : cells,
      values: {
        full: view.amount(full, 'V'),
        tap: view.amount(tap, 'V'),
        reference: view.amount(reference, 'V'),
        limit: view.amount(limit, 'V'),
        divider: dividerText(view, divider),
      },
      related: isSaid
        ? [{ at: cells, message: 'A full pack has {full}.', values: { full: view.short(full, 'V') } }]
        : [],
      fixes: isSaid ? largerUpper(view, divider.lower, full / reference) : packOut(view),
    });
  },
};

/** Leaves a tenth of what the converter reads for spikes. */
function largerUpper(view: CraftView, lower: number, ratio: number): readonly RuleFix[] {
  const to = view.exact(Math.ceil(((1.1 * ratio - 1) * lower) / 100) * 100, 'kohm');
  const look = 'that this resistor is fitted: measure before a pack goes on';
  return [{ title: 'Write {to}, for another upper resistor', set: 'power.divider-upper', to, look }];
}

function packOut({ pack }: CraftView): readonly RuleFix[] {
  return pack === null
    ? []
    : [{ title: 'Take pack {pack} out of this craft', values: { pack }, remove: [`pack.${pack}.*`] }];
}

const otherDivider: CodeRule = {
  ids: ['power/divider-not-the-boards'],
  scope: 'craft',
  check(view, report) {
    const said = dividerOf(view);
    const own = boardDivider(view);
    if (said === null || own === null || said.from === 'board') return;
    const ratio = ({ upper, lower }: typeof said) => (upper + lower) / lower;
    const shift = ratio(said) / ratio(own) - 1;
    if (Math.abs(shift) <= resistorSpread) return;
    report({
      id: 'power/divider-not-the-boards',
      at: view.isSet('power.divider-upper') ? 'power.divider-upper' : 'power.divider-lower',
      values: {
        said: dividerText(view, said),
        own: dividerText(view, own),
        board: view.boardTitle,
        shift: view.amount(Math.abs(shift), '%'),
        way: shift > 0 ? 'high' : 'low',
      },
    });
  },
};

const cellsAboveBoard: CodeRule = {
  ids: ['power/cells-above-board'],
  scope: 'pack',
  check(view, report) {
    const most = view.hardware.packInput?.mostCells;
    const cells = packCount(view, 'cells');
    const at = packPath(view, 'cells');
    if (most === undefined || cells === null || at === null || cells <= most) return;
    const values = { cells: String(cells), board: view.boardTitle, most: String(most) };
    report({ id: 'power/cells-above-board', at, values });
  },
};

const shuntMissing: CodeRule = {
  ids: ['power/shunt-not-on-board'],
  scope: 'craft',
  check(view, report) {
    if (view.hardware.packInput?.currentShunt !== false) return;
    if (view.word('power.current-measure') !== 'shunt') return;
    report({
      id: 'power/shunt-not-on-board',
      at: 'power.current-measure',
      values: { board: view.boardTitle },
    });
  },
};

const sensorOverflow: CodeRule = {
  ids: ['power/current-sensor-overflow'],
  scope: 'pack',
  check(view, report) {
    const limit = figureOf(view, 'current-sensor-limit')?.likely;
    const paths = ['wire.battery-lead.peak-current', 'wire.battery-lead.current'];
    const at = paths.find((path) => view.quantity(path) !== null);
    const current = at === undefined ? null : view.quantity(at);
    if (limit === undefined || at === undefined || current === null || current <= limit) return;
    const values = {
      current: view.shown(at),
      limit: view.amount(limit, 'A'),
      scale: view.shown('power.current-scale'),
    };
    const related = [
      { at, message: 'The battery lead carries {current}.', values: { current: view.shown(at) } },
    ];
    report({ id: 'power/current-sensor-overflow', at: 'power.current-scale', values, related });
  },
};

export const packInputRules: readonly CodeRule[] = [
  overflow,
  otherDivider,
  cellsAboveBoard,
  shuntMissing,
  sensorOverflow,
];
