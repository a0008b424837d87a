import type { CraftView } from '../craft/view';
import { copperGrowth, copperRatio, copperSpecificHeat, printedAt } from '../physics/motor-heat';
import { beyondModel } from './beyond-model';
import { full } from './drive-states';
import type { FigureSource } from './figure';
import { type FlyingStyle, flyingStyleOf } from './flying-style';
import { heatInputs } from './loss-figures';
import { boundOf, type FlownMotors, flownBy, lossesOf, warmBefore } from './motor-heat';
import { type Estimate, estimate, withinFactor } from './uncertain';
import { fine } from './why';

/**
 * For how long full throttle is held at most, s, by how a craft is flown: a punch, a climb out of a dive, a straight
 * between gates. Common practice: nobody was found to have counted.
 */
const heldBy: Readonly<Record<FlyingStyle, Estimate>> = {
  gentle: { likely: 2, low: 1, high: 4 },
  freestyle: { likely: 4, low: 2, high: 8 },
  race: { likely: 6, low: 3, high: 12 },
};

/** What the script says of it, else what its style of flying lets expect; null where it tells neither. */
export function heldOf(view: CraftView): { readonly held: Estimate; readonly from: string } | null {
  const path = 'craft.longest-full-throttle';
  if (!view.isSet(path) && view.isSet('craft.flying')) {
    const style = flyingStyleOf(view, []);
    return style === null ? null : { held: heldBy[style], from: `usual where craft.flying = ${style}` };
  }
  const seconds = view.quantity(path);
  return seconds === null ? null : { held: withinFactor(seconds, 1), from: view.shown(path) };
}

const heldFigure: FigureSource = {
  id: 'full-throttle-held',
  title: 'Longest full throttle, as it is flown',
  unit: 's',
  from: ['craft.longest-full-throttle', 'craft.flying'],
  concerns: isHeldTold,
  compute(view) {
    const told = heldOf(view);
    return told === null ? null : { ...told.held, why: told.from };
  },
};

export function isHeldTold(view: CraftView): boolean {
  return view.isSet('craft.longest-full-throttle') || view.isSet('craft.flying');
}

/** What the maker says that a motor bears, as far as it is not asked for more: a current, A, for so long, s. */
interface Rated {
  readonly current: number;
  readonly seconds: number;
}

function ratedOf(view: CraftView): Rated | null {
  const current = view.quantityOr('motor.current-limit', null);
  const seconds = view.quantityOr('motor.burst-time', null);
  return current === null || seconds === null ? null : { current, seconds };
}

/** By the maker's word where that is longer, s. */
function borne(flown: FlownMotors, rated: Rated | null): number | null {
  const bound = boundOf(flown);
  const state = full(flown.onFull);
  if (bound === null || state === null || rated === null) return bound;
  return state.motor.current <= rated.current ? Math.max(bound, rated.seconds) : bound;
}

const boundFigure: FigureSource = {
  id: 'full-throttle-seconds',
  title: 'Full throttle that the windings bear at the least, full pack',
  unit: 's',
  from: [
    'craft.longest-full-throttle',
    'motor.insulation-limit',
    'motor.burst-time',
    'motor.mass',
    ...heatInputs,
  ],
  whyNot: beyondModel,
  compute(view) {
    const known = flownBy(view);
    if (known === null) return null;
    const rated = ratedOf(view);
    const found = estimate(known.value, (flown) => borne(flown, rated));
    if (found === null) return null;
    const { likely } = known.value;
    const start = view.short(warmBefore(likely), 'degC');
    return {
      ...found,
      why: boundText(likely, rated),
      settledBy: view.isSet('motor.insulation-limit') ? [] : ['motor.insulation-limit'],
      assumed: [
        ...known.assumed,
        ...(likely.flown === null ? [`windings of ${start} before full throttle`] : []),
      ],
    };
  },
};

function boundText(flown: FlownMotors, rated: Rated | null): string {
  const { onFull, heat } = flown;
  const state = full(onFull);
  if (state === null) return '';
  if (rated !== null && borne(flown, rated) === rated.seconds)
    return `${fine(rated.seconds, 's')}, which the maker allows at ${fine(rated.current, 'A')}, and ${fine(state.motor.current, 'A')} flow`;
  const start = warmBefore(flown);
  const { copper } = lossesOf(onFull, state, printedAt);
  const store = `${fine(heat.mass * heat.copper, 'g')} × ${copperSpecificHeat} J/(kg*K)`;
  const ratio = `${fine(copperRatio(heat.limit), '')} / ${fine(copperRatio(start), '')}`;
  return `${store} / (${fine(copper, 'W')} × ${copperGrowth}) × lg(${ratio}) / lg(2.718), copper from ${fine(start, 'degC')} to ${fine(heat.limit, 'degC')} as if nothing cooled it`;
}

export const fullThrottleFigures: readonly FigureSource[] = [boundFigure, heldFigure];
