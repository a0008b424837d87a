import { inBase } from '../../../catalog/known-parameter';
import type { Chemistry } from '../../../catalog/model/hardware';
import type { CraftView } from '../../../craft/view';
import { chemistryInView, fullCell, leftAtRest, packPath } from '../../../figures/pack-in-view';
import type { CodeRule, ReportFinding, RuleFix } from '../../rule';

/** Left between the landing voltage and an empty cell for the sag of the last climb. Common practice. */
const leastAboveEmpty = 0.15;
/**
 * A warning that comes with more of the charge left, by a cell at rest, is early: in the air the load pulls
 * the voltage down, so that still more is left than this. Common practice.
 */
const mostLeft = 0.2;
/** Chargers and meters differ by this much. */
const slack = 0.021;

/** The voltages of the script against what the chemistry of the pack in view bears. */
const cellVoltages: CodeRule = {
  ids: [
    'power/land-below-empty',
    'power/land-close-to-empty',
    'power/land-above-nominal',
    'power/warn-above-full',
    'power/warn-early',
    'power/take-off-above-full',
    'power/full-above-chemistry',
  ],
  scope: 'pack',
  check(view, report) {
    const chemistry = chemistryInView(view);
    if (chemistry === undefined) return;
    checkLanding(view, chemistry, report);
    checkWarning(view, chemistry, report);
    checkTakeOff(view, report);
    checkFull(view, chemistry, report);
  },
};

function checkLanding(view: CraftView, chemistry: Chemistry, report: ReportFinding): void {
  const { empty, land, warn, name, nominal } = chemistry;
  const at = 'power.land-cell';
  const value = view.quantity(at);
  if (value === null) return;
  if (value >= inBase(nominal)) {
    const values = { land: view.shown(at), chemistry: name, nominal, usual: land };
    report({
      id: 'power/land-above-nominal',
      at,
      values,
      fixes: [{ title: 'Land at {to}', set: at, to: land }],
    });
    return;
  }
  if (value >= inBase(empty) + leastAboveEmpty) return;
  const isEmpty = value < inBase(empty) - 1e-9;
  const fixes = [landAt(view, land, warn)];
  const values = { land: view.shown(at), chemistry: name, empty, usual: land };
  report({ id: isEmpty ? 'power/land-below-empty' : 'power/land-close-to-empty', at, values, fixes });
}

/** The warning moves along where it would come too late. */
function landAt(view: CraftView, land: string, warn: string): RuleFix {
  const set = 'power.land-cell';
  const given = view.quantityOr('power.warn-cell', null);
  if (given === null || given > inBase(land)) return { title: 'Land at {to}', set, to: land };
  const also = [{ set: 'power.warn-cell', to: warn }];
  return { title: 'Land at {to}, and warn at {warn}', values: { warn }, set, to: land, also };
}

function checkWarning(view: CraftView, chemistry: Chemistry, report: ReportFinding): void {
  const at = 'power.warn-cell';
  const value = view.quantity(at);
  const full = fullCell(view);
  const { warn } = chemistry;
  if (value === null || full === null) return;
  const fixes = [{ title: 'Warn at {to}', set: at, to: warn }];
  const left = leftAtRest(chemistry, value);
  const values = {
    warn: view.shown(at),
    chemistry: chemistry.name,
    full: view.amount(full, 'V'),
    usual: warn,
    left: left === null ? '' : view.amount(Math.round(100 * left) / 100, '%'),
  };
  if (value >= full - 1e-9) report({ id: 'power/warn-above-full', at, values, fixes });
  else if (left === null ? value > inBase(chemistry.nominal) + 1e-9 : left > mostLeft)
    report({ id: 'power/warn-early', at, values, fixes });
}

function checkTakeOff(view: CraftView, report: ReportFinding): void {
  const at = 'power.take-off-cell';
  const value = view.quantity(at);
  const full = fullCell(view);
  if (value === null || full === null || value <= full + 1e-9) return;
  report({
    id: 'power/take-off-above-full',
    at,
    values: { given: view.shown(at), full: view.amount(full, 'V') },
    fixes: [{ title: 'Ask for {to}', set: at, to: nearFull(view, full) }],
  });
}

/** A little less than a full cell, which a charger and a meter may both call full. */
function nearFull(view: CraftView, full: number): string {
  return view.exact(Math.round((full - 0.1) * 100) / 100, 'V');
}

function checkFull(view: CraftView, { full, name }: Chemistry, report: ReportFinding): void {
  const at = packPath(view, 'full-cell');
  if (at === null || !view.isSet(at)) return;
  const value = view.quantity(at);
  if (value === null || value <= inBase(full) + slack) return;
  const fixes = [{ title: 'Write {to}', set: at, to: full }];
  report({
    id: 'power/full-above-chemistry',
    at,
    values: { given: view.shown(at), chemistry: name, full },
    fixes,
  });
}

export const cellVoltageRules: readonly CodeRule[] = [cellVoltages];
