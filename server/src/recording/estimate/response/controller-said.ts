import type { CraftView } from '../../../craft/view';
import type { AxisName } from '../../../figures/axis-names';
import { chainOf } from '../../../figures/filter-chain';
import { type Complex, times, unit } from '../../../physics/complex';
import { controller, filteredTone } from '../../../physics/loop';
import type { MeasuredAnswer } from '../../report';
import { measuredBy, withheld } from '../span';

/** From the gyro behind its filters to the command, at a frequency in Hz. */
export type ControllerSaid = (frequency: number) => Complex;

/** The controller of an axis as the script has it. `turns`: of the motors, a second, for filters that follow them. */
export function controllerSaid(
  view: CraftView | null,
  axis: AxisName,
  turns: number | null,
): MeasuredAnswer<ControllerSaid> {
  if (view === null)
    return withheld('No craft script was named.', 'Name the script of the craft that was flown.');
  const path = (term: string) => `control.${axis}.${term}`;
  const of = (term: string) => view.quantityOr(path(term), null);
  const proportional = of('proportional');
  if (proportional === null || proportional <= 0)
    return withheld(
      `The script doesn’t say how strongly ${axis} is held.`,
      `Write ${path('proportional')}, with the integral and derivative beside it; what the board’s own numbers come to is told under its gains, or taught in Say What Settings Mean.`,
    );
  const derivative = of('derivative') ?? 0;
  const filters = chainOf(view, 'derivative');
  if (derivative !== 0 && filters === null)
    return withheld(
      'The script doesn’t say how the derivative is filtered.',
      'Write derivative.filter.1.kind, or derivative.chain = none.',
    );
  const rate = view.quantityOr('control.rate', null);
  const halfRound = rate === null ? 0 : 0.5 / rate;
  const gains = { proportional, integral: of('integral') ?? 0, derivative };
  const derivativeFilters = derivative === 0 ? [] : (filters?.value.all(turns) ?? []);
  return measuredBy((frequency) => {
    const tone = filteredTone({ gyroFilters: [], derivativeFilters }, frequency);
    // The difference of two rounds is what was half a round before.
    const derived = times(tone.derived, unit(-2 * Math.PI * frequency * halfRound));
    return controller(gains, { ...tone, derived });
  }, `the controller of the script about ${axis}`);
}

/** Why the open loop can’t be told by the answer alone; null: all of the controller works on the error. */
export function whyNotByAnswer(view: CraftView | null, axis: AxisName): MeasuredAnswer<never> | null {
  if (view === null)
    return withheld('No craft script was named.', 'Name the script of the craft that was flown.');
  const feedforward = `control.${axis}.feedforward`;
  const isWithout = view.isSet(feedforward) && view.quantityOr(feedforward, null) === 0;
  const isOfError = view.isSet('derivative.input') && view.word('derivative.input') === 'error';
  if (isWithout && isOfError) return null;
  return withheld(
    'The answer alone tells the loop only where nothing of the stick goes past the error.',
    `Write derivative.input = error and ${feedforward} = 0, if the board is set so.`,
  );
}
