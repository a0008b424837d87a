import type { CraftView } from '../craft/view';
import type { Carried } from './carried';
import { type DriveFigure, driveFigure } from './drive-figure';
import { hovering } from './drive-states';
import type { FigureSource } from './figure';
import {
  type Discharge,
  dischargeText,
  type FlightGoal,
  flightEnds,
  flightGoals,
  hoverFlight,
} from './flight-time';

/** How long a craft hovers from a full pack: to the voltage or the charge at which it is due, whichever is first. */
function minutesFigure(goal: FlightGoal, warmth: 'fresh' | 'cold'): DriveFigure {
  const { words, from, ends } = flightGoals[goal];
  const isCold = warmth === 'cold';
  return {
    id: `minutes-to-${goal}${isCold ? '-cold' : ''}`,
    title: `Hovering time ${words}${isCold ? ', cold pack' : ''}`,
    unit: 'min',
    from: [
      'pack.<name>.capacity',
      ...from,
      'pack.<name>.resistance',
      'pack.<name>.full-cell',
      ...(isCold ? ['pack.<name>.coldest'] : []),
    ],
    pack: isCold ? 'from full, cold' : 'from full',
    state: hovering,
    measureIn: (view) => {
      const flightOf = flightIn(view, goal);
      return ({ carried }) => {
        const flight = flightOf(carried);
        return flight === null ? null : flight.seconds / 60;
      };
    },
    why: ({ carried }, view) => {
      const flight = flightIn(view, goal)(carried);
      return flight === null ? '' : dischargeText(view, carried, flight, goal);
    },
    whyNot: () => `Even a full pack shows ${ends} from the start.`,
  };
}

export const minutesFigures: readonly FigureSource[] = [
  {
    ...driveFigure(minutesFigure('landing', 'fresh')),
    hint: { at: ['pack.<name>.capacity'], words: (figure) => `hovers ${figure}` },
  },
  ...[
    minutesFigure('warning', 'fresh'),
    minutesFigure('landing', 'cold'),
    minutesFigure('warning', 'cold'),
  ].map(driveFigure),
];

function flightIn(view: CraftView, goal: FlightGoal): (carried: Carried) => Discharge | null {
  const ends = flightEnds(view, goal);
  return (carried) => (ends === null ? null : hoverFlight(carried, ends(carried)));
}
