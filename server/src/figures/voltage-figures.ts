import type { CraftView } from '../craft/view';
import { flightResistance } from './carried';
import { carriedToLand } from './drive';
import { type DriveFigure, driveFigure, type InState } from './drive-figure';
import { full, hovering } from './drive-states';
import type { Computed, FigureSource } from './figure';
import { estimate } from './uncertain';
import { fine } from './why';

/** What a pack still shows, and what it still gives, from full to due to land. */
const voltageFigureList: readonly DriveFigure[] = [
  {
    id: 'hover-voltage-full',
    title: 'Voltage in the hover, full pack',
    unit: 'V',
    from: ['pack.<name>.full-cell', 'pack.<name>.resistance'],
    pack: 'full',
    state: hovering,
    measure: ({ state }) => state.packVoltage,
    why: (at) => sagText(at, flightResistance(at.carried)),
  },
  {
    id: 'thrust-to-weight-full',
    title: 'Thrust-to-weight at full throttle, full pack',
    unit: '',
    from: ['pack.<name>.full-cell'],
    pack: 'full',
    state: full,
    measure: ({ carried: { drive, weight }, state }) => (drive.count * state.thrust) / weight,
    why: ({ carried: { drive, weight }, state }) =>
      `${fine(drive.count * state.thrust, 'N')} / ${fine(weight, 'N')}`,
  },
  {
    id: 'least-voltage',
    title: 'Voltage at full throttle, pack due to land',
    unit: 'V',
    from: ['power.land-cell', 'pack.<name>.resistance'],
    pack: 'due-to-land',
    state: full,
    measure: ({ state }) => state.packVoltage,
    why: (at) => sagText(at, at.carried.drive.sourceResistance),
  },
];

export const voltageFigures: readonly FigureSource[] = [
  ...voltageFigureList.map(driveFigure),
  {
    id: 'drop-out-room',
    title: 'Voltage left before the board drops out, pack due to land',
    unit: 'V',
    isSigned: true,
    from: ['board.drop-out', 'power.land-cell', 'pack.<name>.resistance'],
    compute: dropOutRoom,
  },
];

function sagText({ carried: { drive }, state }: InState, resistance: number): string {
  return `${fine(drive.openVoltage, 'V')} - ${fine(resistance, 'mohm')} × ${fine(state.packCurrent, 'A')}`;
}

/** Only against a stated drop-out: none is ever assumed. */
function dropOutRoom(view: CraftView): Computed | null {
  const dropOut = view.quantity('board.drop-out');
  const known = carriedToLand(view);
  if (dropOut === null || known === null) return null;
  const least = estimate(known.value, (carried) => full(carried)?.packVoltage ?? null);
  if (least === null) return null;
  return {
    likely: least.likely - dropOut,
    low: least.low - dropOut,
    high: least.high - dropOut,
    why: `${fine(least.likely, 'V')} - ${view.shown('board.drop-out')}`,
    assumed: known.assumed,
  };
}
