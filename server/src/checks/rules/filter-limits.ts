import type { CraftView } from '../../craft/view';
import { lowpasses, notches, type Stage, workingCutoff } from '../../figures/filter-stages';
import { alias, halfRate } from '../../physics/sampling';
import type { Amount } from '../../units/told-apart';
import type { CodeRule, RuleFinding, RuleFix } from '../rule';

/** Cutoffs and centres against half the rate at which a filter works. */
export const filterLimitRules: readonly CodeRule[] = [
  {
    ids: ['tune/lowpass-above-half-rate', 'tune/lowpass-near-half-rate'],
    scope: 'pack',
    check(view, report) {
      for (const stage of lowpasses) {
        const finding = lowpassFinding(view, stage);
        if (finding !== null) report(finding);
      }
    },
  },
  {
    ids: ['tune/notch-above-half-rate'],
    scope: 'pack',
    check(view, report) {
      for (const { path, rate: ratePath } of notches(view)) {
        const centre = view.quantity(`${path}.centre`);
        const rate = view.quantity(ratePath);
        if (centre === null || rate === null || rate <= 0 || centre < halfRate(rate)) continue;
        const values = { centre: hertz(view, centre), seen: hertz(view, alias(centre, rate)) };
        report({
          id: 'tune/notch-above-half-rate',
          at: `${path}.centre`,
          values: { ...values, ...ratesText(view, rate) },
          related: [{ at: ratePath, message: 'The rate.' }],
        });
      }
    },
  },
  {
    ids: ['tune/tracker-above-half-rate'],
    scope: 'pack',
    check(view, report) {
      const to = view.quantity('gyro.tracker.to');
      const rate = view.quantity('gyro.rate');
      const isOn = (view.count('gyro.tracker.count') ?? 0) > 0;
      if (!isOn || to === null || rate === null || to < halfRate(rate)) return;
      report({
        id: 'tune/tracker-above-half-rate',
        at: 'gyro.tracker.to',
        values: { to: hertz(view, to), ...ratesText(view, rate) },
        related: [{ at: 'gyro.rate', message: 'The rate of the gyro.' }],
        fixes: lowered(view, 'gyro.tracker.to', nearHalf * halfRate(rate)),
      });
    },
  },
  {
    ids: ['tune/noise-folds-into-loop'],
    scope: 'pack',
    check(view, report) {
      const finding = foldingFinding(view);
      if (finding !== null) report(finding);
    },
  },
];

/** Share of half the rate beyond which a low-pass has next to nothing left to cut: a choice of ours. */
const nearHalf = 0.8;

function lowpassFinding(view: CraftView, { path, rate: ratePath }: Stage): RuleFinding | null {
  const cutoff = workingCutoff(view, path);
  const rate = view.quantity(ratePath);
  const fair = nearHalf * halfRate(rate ?? 0);
  if (cutoff === null || rate === null || cutoff <= fair * (1 + 1e-9)) return null;
  return {
    id: cutoff >= halfRate(rate) ? 'tune/lowpass-above-half-rate' : 'tune/lowpass-near-half-rate',
    at: `${path}.cutoff`,
    values: {
      cutoff: hertz(view, cutoff),
      fair: hertz(view, fair),
      ...ratesText(view, rate),
    },
    related: [{ at: ratePath, message: 'The rate.' }],
    fixes: lowered(view, `${path}.cutoff`, fair),
  };
}

/** Brings a frequency down to one that makes sense, in whole hertz and as far as its parameter goes. */
function lowered(view: CraftView, set: string, most: number): readonly RuleFix[] {
  const { low, high } = view.catalog.parameter(set)?.range ?? { low: 0, high: Number.POSITIVE_INFINITY };
  const value = Math.min(high, Math.floor(most));
  if (value < low || value <= 0) return [];
  const to = view.exact(value, 'Hz');
  return [{ title: `Write ${to}`, set, to }];
}

/** A loop slower than the gyro leaves samples out, and what is left above half its rate folds down. */
function foldingFinding(view: CraftView): RuleFinding | null {
  const gyro = view.quantity('gyro.rate');
  const control = view.quantity('control.rate');
  const stages = lowpasses.filter(({ rate }) => rate === 'gyro.rate');
  const working = stages.flatMap(({ path }) => {
    const cutoff = workingCutoff(view, path);
    return cutoff === null ? [] : [{ path, cutoff }];
  });
  const [lowest] = working.sort((one, other) => one.cutoff - other.cutoff);
  if (gyro === null || control === null || lowest === undefined || control >= gyro) return null;
  const { path, cutoff } = lowest;
  if (cutoff < halfRate(control) || cutoff >= halfRate(gyro)) return null;
  return {
    id: 'tune/noise-folds-into-loop',
    at: `${path}.cutoff`,
    values: {
      gyro: view.amount(gyro, 'kHz'),
      control: view.amount(control, 'kHz'),
      tone: hertz(view, 0.9 * cutoff),
      cutoff: hertz(view, cutoff),
      seen: hertz(view, alias(0.9 * cutoff, control)),
      half: hertz(view, halfRate(control)),
    },
    related: [{ at: 'control.rate', message: 'The rate of the loop.' }],
  };
}

function ratesText(view: CraftView, rate: number) {
  return { rate: view.amount(rate, 'kHz'), half: hertz(view, halfRate(rate)) };
}

function hertz(view: CraftView, value: number): Amount {
  return view.amount(value, 'Hz');
}
