import type { CraftView } from '../craft/view';
import { beyondModel } from './beyond-model';
import type { Carried } from './carried';
import { carriedBy } from './drive';
import { full, hovering } from './drive-states';
import type { Computed, FigureSource } from './figure';
import {
  type Discharge,
  dischargeText,
  type FlightGoal,
  flightEnds,
  flightGoals,
  flightWith,
} from './flight-time';
import { type FlyingStyle, flyingStyleOf, powerMultiple } from './flying-style';
import { model } from './model';
import { tellsPackKind } from './pack-source';
import { changedIn, type Doubtful, estimate, withDoubts } from './uncertain';
import { fine } from './why';

/** A craft with how hard it is flown. */
export interface FlownCraft {
  readonly carried: Carried;
  readonly style: FlyingStyle;
  /** Where in its span the multiple of the hover's power lies: as the way of a doubt. */
  readonly hardness: number;
}

/** With a pack half used, in the style of craft.flying. */
const flownAs = model<[], Doubtful<FlownCraft>>('how it is flown', (own) => {
  const assumed: string[] = [];
  const style = flyingStyleOf(own, assumed);
  const carried = carriedBy(own);
  if (style === null || carried === null) return null;
  const flown = changedIn(carried.value, (one): FlownCraft => ({ carried: one, style, hardness: 0 }));
  return {
    value: withDoubts(flown, [
      { of: 'how hard it is flown', at: (one, way) => ({ ...one, hardness: one.hardness + way }) },
    ]),
    assumed: [...carried.assumed, ...assumed, 'a mean power inferred from motor commands, not measured'],
  };
});

/** Mean power that the pack gives while it is flown so, W; null where the craft can't hover. */
function flyingPower(flown: FlownCraft): number | null {
  const mean = meanOf(flown);
  return mean === null ? null : Math.min(mean.asked, mean.most);
}

/** What the style asks for, and the most that pack and motors give, W. */
function meanOf({ carried, style, hardness }: FlownCraft) {
  const [hover, most] = [hovering(carried), full(carried)];
  if (hover === null || most === null) return null;
  const hoverPower = hover.packVoltage * hover.packCurrent;
  const { likely, low, high } = powerMultiple(style, (carried.drive.count * most.thrust) / carried.weight);
  const multiple = likely * (hardness < 0 ? low / likely : high / likely) ** Math.abs(hardness);
  return { hoverPower, multiple, asked: multiple * hoverPower, most: most.packVoltage * most.packCurrent };
}

export const flyingFigures: readonly FigureSource[] = [
  flyingFigure({
    id: 'flying-power',
    title: 'Mean power from the pack, as it is flown',
    unit: 'W',
    from: [],
    measureIn: () => flyingPower,
    why: (_, flown) => powerText(flown),
  }),
  minutesFigure('landing'),
  minutesFigure('warning'),
];

function minutesFigure(goal: FlightGoal): FigureSource {
  const { words, from, ends } = flightGoals[goal];
  return flyingFigure({
    id: `flying-minutes-to-${goal}`,
    title: `Flying time ${words}, as it is flown`,
    unit: 'min',
    from: ['pack.<name>.capacity', ...from],
    measureIn(view) {
      const flightOf = flightIn(view, goal);
      return (flown) => {
        const flight = flightOf(flown);
        return flight === null ? null : flight.seconds / 60;
      };
    },
    why: (view, flown) => {
      const flight = flightIn(view, goal)(flown);
      const text = flight === null ? '' : dischargeText(view, flown.carried, flight, goal);
      return `${text}, for a mean of ${powerText(flown)}`;
    },
    whyNot: () => `Flown so, even a full pack shows ${ends} from the start.`,
  });
}

/** At its mean power from a full pack; null where the pack can't give that, or is down from the start. */
function flightIn(view: CraftView, goal: FlightGoal): (flown: FlownCraft) => Discharge | null {
  const ends = flightEnds(view, goal);
  return (flown) => {
    const power = flyingPower(flown);
    if (power === null || ends === null) return null;
    return flightWith(flown.carried, { power, current: 0 }, ends(flown.carried));
  };
}

interface FlyingFigure extends Pick<FigureSource, 'id' | 'title' | 'unit' | 'from'> {
  readonly measureIn: (view: CraftView) => (flown: FlownCraft) => number | null;
  readonly why: (view: CraftView, flown: FlownCraft) => string;
  readonly whyNot?: () => string;
}

function flyingFigure({ id, title, unit, from, measureIn, why, whyNot }: FlyingFigure): FigureSource {
  return {
    id,
    title,
    unit,
    from: ['craft.flying', 'craft.purpose', ...from],
    whyNot: (view) => beyondModel(view) ?? (flownAs(view) === null ? null : (whyNot?.() ?? null)),
    compute(view): Computed | null {
      const known = flownAs(view);
      if (known === null) return null;
      const found = estimate(known.value, measureIn(view));
      if (found === null) return null;
      const { likely } = known.value;
      return { ...found, why: why(view, likely), settledBy: tellsPackKind(view), assumed: known.assumed };
    },
  };
}

function powerText(flown: FlownCraft): string {
  const mean = meanOf(flown);
  if (mean === null) return '';
  const { hoverPower, multiple, asked, most } = mean;
  return asked > most
    ? `${fine(most, 'W')}, all that motors and pack give at full throttle`
    : `${fine(multiple, '')} × ${fine(hoverPower, 'W')}, the power of a hover`;
}
