import type { CraftView } from '../../craft/view';
import { axesOf } from '../../figures/axis';
import type { AxisName } from '../../figures/axis-names';
import { steeringTone } from '../../figures/filter-figures';
import { stickStepAt } from '../../figures/stick-step';
import { chainDelay } from '../../physics/filter';
import { shortNumber, withUnit } from '../../units/number-text';
import type { AxisResponse, MeasuredMargins, MeasuredSpan, RecordingReport } from '../report';
import type { FoundInFlight } from './found';
import { measuredText } from './measured-text';

/** What a control loop keeps: see the rule in the table of findings. */
const kept = { phase: 45, gain: 2, sensitivity: 2 };
/** What the sheet calls small, deg: where a margin itself lies below, its span need not. */
const small = 30;
/** %, of what is asked for. */
const mostPeak = 150;
/** By so much later than the script lets expect it is worth a look, ms; a share for a step. Ours. */
const later = { delay: 1, step: 1.5 };

/** An axis that is near to swinging, or answers later than the script lets expect. */
export function axesFound(report: RecordingReport, view: CraftView | null): readonly FoundInFlight[] {
  const responses = report.responses.told ?? [];
  return [
    ...responses.flatMap(nearSwinging),
    ...(view === null ? [] : responses.flatMap((one) => laterThanSaid(one, view))),
  ];
}

function nearSwinging({ axis, margins, peak }: AxisResponse): readonly FoundInFlight[] {
  if (margins.told !== null) {
    const what = tooSmall(margins.told);
    return what.length === 0
      ? []
      : [{ id: 'follow/near-swinging', values: { axis, what: what.join(', ') }, proposals: [] }];
  }
  if (peak.told === null || peak.told.low <= mostPeak) return [];
  return [{ id: 'follow/swings-after', values: { axis, peak: measuredText(peak.told) }, proposals: [] }];
}

/** Where all of a span lies on the wrong side, or a margin itself far on it. */
function tooSmall({
  phaseMargin,
  gainMargin,
  sensitivityPeak,
  crossover,
}: MeasuredMargins): readonly string[] {
  return [
    ...(phaseMargin.high < kept.phase || phaseMargin.likely < small
      ? [`a phase margin of ${measuredText(phaseMargin)} at ${shortNumber(crossover.likely, 2)} Hz`]
      : []),
    ...(gainMargin !== null && gainMargin.high < kept.gain
      ? [`${measuredText(gainMargin)} times the gain makes it swing`]
      : []),
    ...(sensitivityPeak.low > kept.sensitivity
      ? [`knocks made ${measuredText(sensitivityPeak)} times as large`]
      : []),
  ];
}

function laterThanSaid({ axis, delay, step }: AxisResponse, view: CraftView): readonly FoundInFlight[] {
  const expected = expectedOf(view, axis);
  if (expected === null) return [];
  // About yaw the motors' reaction has some of it come at once: half of a step lies where it creeps.
  return [
    ...beyond('late/later-than-script', axis, delay.told, expected.delay, expected.delay + later.delay),
    ...beyond(
      'late/slower-than-script',
      axis,
      step.told?.half ?? null,
      expected.half,
      later.step * expected.half,
    ),
  ];
}

function beyond(
  id: string,
  axis: string,
  measured: MeasuredSpan | null,
  expected: number,
  most: number,
): readonly FoundInFlight[] {
  if (measured === null || !(measured.low > most)) return [];
  const values = {
    axis,
    measured: measuredText(measured),
    expected: withUnit(shortNumber(expected), 'ms'),
  };
  return [{ id, values, proposals: [] }];
}

/** What waits between motor command and gyro, and when half of a small step has come, in the hover, ms; NaN: not known. */
function expectedOf(
  view: CraftView,
  axis: AxisName,
): { readonly delay: number; readonly half: number } | null {
  const placed = axesOf(view, axis)?.value.find(({ point }) => point.throttle === 'hover');
  if (placed === undefined) return null;
  const { gyroFilters, delay } = placed.axis.path;
  const filters = 1000 * chainDelay({ filters: gyroFilters }, steeringTone);
  const step = stickStepAt(view, axis, placed.place)?.value ?? null;
  const at = step === null ? -1 : step.values.findIndex((value) => value >= 0.5);
  return {
    delay: 1000 * delay + filters,
    half: step === null || at < 0 ? Number.NaN : 1000 * at * step.interval + filters,
  };
}
