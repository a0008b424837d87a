import type { CraftView } from '../../../craft/view';
import { lowpassAt } from '../../../figures/filter-chain';
import { chainDecibels } from '../../../figures/filter-figures';
import {
  allStages,
  kindOf,
  lowestLowpass,
  lowpassCutoff,
  type Stage,
  stagesBefore,
  stagesOf,
} from '../../../figures/filter-stages';
import { alias, halfRate } from '../../../physics/sampling';
import type { Amount } from '../../../units/distinct-texts';
import type { CodeRule, RuleFinding, RuleFix } from '../../rule';
import { perStage } from './per-stage';

/** Cutoffs and centres against half the rate at which a filter works, and against what stands before it. */
export const filterLimitRules: readonly CodeRule[] = [
  {
    ids: ['tune/lowpass-above-half-rate', 'tune/lowpass-near-half-rate'],
    scope: 'pack',
    check(view, report) {
      for (const stage of allStages(view)) {
        const finding = lowpassFinding(view, stage);
        if (finding !== null) report(finding);
      }
    },
  },
  perStage('tune/notch-above-half-rate', ['notch'], (view, { path, rate: ratePath }) => {
    const centre = view.quantity(`${path}.centre`);
    const rate = view.quantity(ratePath);
    if (centre === null || rate === null || rate <= 0 || centre < halfRate(rate)) return null;
    const values = { centre: hertz(view, centre), seen: hertz(view, alias(centre, rate)) };
    return {
      at: `${path}.centre`,
      values: { ...values, ...ratesText(view, rate) },
      related: [{ at: ratePath, message: 'The rate.' }],
    };
  }),
  perStage('tune/search-above-half-rate', ['follow-noise'], (view, { path, rate: ratePath }) => {
    const to = view.quantity(`${path}.to`);
    const rate = view.quantity(ratePath);
    if (to === null || rate === null || rate <= 0 || to < halfRate(rate)) return null;
    return {
      at: `${path}.to`,
      values: { to: hertz(view, to), ...ratesText(view, rate) },
      related: [{ at: ratePath, message: 'The rate.' }],
      fixes: lowered(view, `${path}.to`, nearHalf * halfRate(rate)),
    };
  }),
  perStage('tune/search-behind-lowpass', ['follow-noise'], hiddenFromSearch),
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

/** dB: a search that finds less of a tone than this has hardly anything to find. A choice of ours. */
const leastHeard = -20;

function lowpassFinding(view: CraftView, stage: Stage): RuleFinding | null {
  const cutoff = lowpassCutoff(view, stage);
  const rate = view.quantity(stage.rate);
  const fair = nearHalf * halfRate(rate ?? 0);
  if (cutoff === null || rate === null || cutoff <= fair * (1 + 1e-9)) return null;
  return {
    id: cutoff >= halfRate(rate) ? 'tune/lowpass-above-half-rate' : 'tune/lowpass-near-half-rate',
    at: `${stage.path}.cutoff`,
    values: {
      cutoff: hertz(view, cutoff),
      fair: hertz(view, fair),
      ...ratesText(view, rate),
    },
    related: [{ at: stage.rate, message: 'The rate.' }],
    fixes: lowered(view, `${stage.path}.cutoff`, fair),
  };
}

/** Brings a frequency down to one that makes sense, in whole hertz and as far as its parameter goes. */
function lowered(view: CraftView, set: string, most: number): readonly RuleFix[] {
  const { low, high } = view.catalog.parameter(set)?.range ?? { low: 0, high: Number.POSITIVE_INFINITY };
  const value = Math.min(high, Math.floor(most));
  if (value < low || value <= 0) return [];
  const to = view.exact(value, 'Hz');
  return [{ title: 'Write {to}', set, to }];
}

/** The order counts: what an earlier low-pass has taken away, a search can't find. */
function hiddenFromSearch(view: CraftView, stage: Stage): Omit<RuleFinding, 'id'> | null {
  const from = view.quantity(`${stage.path}.from`);
  const rate = view.quantity(stage.rate);
  if (from === null || rate === null || from >= halfRate(rate)) return null;
  const before = stagesBefore(view, stage);
  const filters = before.flatMap((one) => {
    const cutoff = lowpassCutoff(view, one);
    return cutoff === null ? [] : lowpassAt(cutoff, kindOf(view, one), rate);
  });
  const left = chainDecibels(filters, from);
  const lowest = lowestLowpass(view, before);
  if (lowest === null || left > leastHeard) return null;
  return {
    at: `${stage.path}.from`,
    values: {
      filter: `${stage.number}`,
      from: hertz(view, from),
      other: `${lowest.stage.number}`,
      cutoff: hertz(view, lowest.cutoff),
      left: view.short(left, 'dB'),
    },
    related: [{ at: `${lowest.stage.path}.cutoff`, message: 'The low-pass before it.' }],
  };
}

/** A loop slower than the gyro leaves samples out, and what is left above half its rate folds down. */
function foldingFinding(view: CraftView): RuleFinding | null {
  const gyro = view.quantity('gyro.rate');
  const control = view.quantity('control.rate');
  const lowest = lowestLowpass(view, stagesOf(view, 'gyro'));
  if (gyro === null || control === null || lowest === null || control >= gyro) return null;
  const { stage, cutoff } = lowest;
  if (cutoff < halfRate(control) || cutoff >= halfRate(gyro)) return null;
  return {
    id: 'tune/noise-folds-into-loop',
    at: `${stage.path}.cutoff`,
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
