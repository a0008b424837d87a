import type { CraftView } from '../../../craft/view';
import { figureOf } from '../../../figures';
import { axisNames } from '../../../figures/axis-names';
import { lowpassAt } from '../../../figures/filter-chain';
import { steeringTone } from '../../../figures/filter-figures';
import { isLowpass, isUnfiltered, kindOf, stagesOf, unfilteredAt } from '../../../figures/filter-stages';
import { chainDelay, chainGain } from '../../../physics/filter';
import { halfRate } from '../../../physics/sampling';
import type { CodeRule } from '../../rule';
import { filterOn } from './filter-fixes';

/** Filters that are turned off: what the motors pay for it. */
export const filtersOffRules: readonly CodeRule[] = [
  {
    ids: ['tune/all-filters-off', 'tune/gyro-unfiltered'],
    scope: 'pack',
    check(view, report) {
      if (!isUnfiltered(view, 'gyro')) return;
      const cells = view.pack === null ? null : view.count(`pack.${view.pack}.cells`);
      const isHot = cells !== null && cells >= manyCells && isUnfiltered(view, 'derivative');
      report({
        id: isHot ? 'tune/all-filters-off' : 'tune/gyro-unfiltered',
        at: unfilteredAt(view, 'gyro'),
        values: { ...(isHot ? { cells: String(cells) } : {}), ...wouldHelp(view) },
        related: isHot
          ? [{ at: unfilteredAt(view, 'derivative'), message: 'The derivative is not filtered either.' }]
          : [],
        fixes: filterOn(view, 'gyro', ...(isHot ? (['derivative'] as const) : [])),
      });
    },
  },
  {
    ids: ['tune/derivative-unfiltered'],
    scope: 'pack',
    check(view, report) {
      if (!isUnfiltered(view, 'derivative') || hasNoDerivative(view)) return;
      report({
        id: 'tune/derivative-unfiltered',
        at: unfilteredAt(view, 'derivative'),
        values: {
          low: view.amount(steering, 'Hz'),
          high: view.amount(motorTone, 'Hz'),
          times: String(Math.round(motorTone / steering)),
        },
        fixes: filterOn(view, 'derivative'),
      });
    },
  },
];

/** Cells from which motors without any filter are known to run hot. */
const manyCells = 4;

/** Hz: how fast a pilot steers at most, and a tone of small motors, to compare. Common practice. */
const steering = 10;
const motorTone = 300;

/**
 * What the low-passes that are off would do at the cutoffs that still stand in the script; without any, what one
 * at half the motor tone would: decibels off the tone, for how much delay.
 */
function wouldHelp(view: CraftView): Readonly<Record<'tone' | 'filter' | 'cut' | 'cost', string>> {
  const tone = figureOf(view, 'hover-tone')?.likely;
  const rate = view.quantity('gyro.rate');
  if (tone === undefined || rate === null || tone >= halfRate(rate))
    return { tone: '', filter: '', cut: '', cost: '' };
  const written = writtenCutoffs(view).filter((cutoff) => lowpassAt(cutoff, null, rate).length > 0);
  const cutoffs = written.length > 0 ? written : [tone / 2];
  const filters = cutoffs.flatMap((cutoff) => lowpassAt(cutoff, null, rate));
  const shown = written.map((cutoff) => view.short(cutoff, 'Hz')).join(' and ');
  return {
    tone: view.short(tone, 'Hz'),
    filter:
      written.length > 0 ? `a low-pass at the ${shown} that still stand here` : 'a low-pass at half of it',
    cut: view.short(-20 * Math.log10(chainGain({ filters }, tone)), 'dB'),
    cost: view.short(chainDelay({ filters }, steeringTone), 'ms'),
  };
}

function writtenCutoffs(view: CraftView): readonly number[] {
  return stagesOf(view, 'gyro').flatMap((stage) => {
    const cutoff = `${stage.path}.cutoff`;
    const isOff = kindOf(view, stage) === 'none' || isLowpass(kindOf(view, stage));
    return isOff && view.isSet(cutoff) ? (view.quantity(cutoff) ?? []) : [];
  });
}

/** Whether the script itself sets every derivative gain to nothing. */
function hasNoDerivative(view: CraftView): boolean {
  return axisNames.every((axis) => view.quantity(`control.${axis}.derivative`) === 0);
}
