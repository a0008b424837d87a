import type { CraftView } from '../../craft/view';
import { figureOf } from '../../figures';
import { lowpassAt } from '../../figures/filter-chain';
import { steeringTone } from '../../figures/filter-figures';
import { isDerivativeUnfiltered, isGyroUnfiltered } from '../../figures/filter-stages';
import { chainDelay, chainGain } from '../../physics/filter';
import { halfRate } from '../../physics/sampling';
import type { CodeRule } from '../rule';

/** Filters that are turned off: what the motors pay for it. */
export const filtersOffRules: readonly CodeRule[] = [
  {
    ids: ['tune/all-filters-off', 'tune/gyro-unfiltered'],
    scope: 'pack',
    check(view, report) {
      if (!isGyroUnfiltered(view)) return;
      const cells = view.pack === null ? null : view.count(`pack.${view.pack}.cells`);
      const isHot = cells !== null && cells >= manyCells && isDerivativeUnfiltered(view);
      report({
        id: isHot ? 'tune/all-filters-off' : 'tune/gyro-unfiltered',
        at: 'gyro.lowpass.shape',
        values: { ...(isHot ? { cells: String(cells) } : noFilters(view)), ...wouldHelp(view) },
        related: isHot ? [{ at: 'derivative.lowpass.shape', message: 'This one is off as well.' }] : [],
      });
    },
  },
  {
    ids: ['tune/derivative-unfiltered'],
    scope: 'pack',
    check(view, report) {
      if (!isDerivativeUnfiltered(view) || hasNoDerivative(view)) return;
      report({
        id: 'tune/derivative-unfiltered',
        at: 'derivative.lowpass.shape',
        values: {
          low: view.amount(steering, 'Hz'),
          high: view.amount(motorTone, 'Hz'),
          times: String(Math.round(motorTone / steering)),
        },
      });
    },
  },
];

/** Cells from which motors without any filter are known to run hot. */
const manyCells = 4;

/** Hz: how fast a pilot steers at most, and a tone of small motors, to compare. Common practice. */
const steering = 10;
const motorTone = 300;

function noFilters(view: CraftView) {
  return {
    notches: String(view.members('gyro.notch').length),
    trackers: view.shown('gyro.tracker.count'),
    tones: view.shown('gyro.tones.harmonics'),
  };
}

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
  return ['gyro.lowpass.cutoff', 'gyro.second-lowpass.cutoff'].flatMap((path) =>
    view.isSet(path) ? (view.quantity(path) ?? []) : [],
  );
}

/** Whether the script itself sets every derivative gain to nothing. */
function hasNoDerivative(view: CraftView): boolean {
  return ['roll', 'pitch', 'yaw'].every((axis) => view.quantity(`control.${axis}.derivative`) === 0);
}
