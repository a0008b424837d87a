import type { CraftView } from '../craft/view';
import { turnsPerSecond, type UnderLoad } from '../physics/motor';
import { pitchSpeed, tipSpeed } from '../physics/propeller';
import { airOf } from './air';
import { blades, type DriveFigure, driveFigure, type InState, packCurrentText } from './drive-figure';
import { full } from './drive-states';
import type { FigureSource } from './figure';
import { fine } from './why';

const perMinute = (2 * Math.PI) / 60;

/** Full throttle with a pack fresh from the charger: what motors, controllers, blades and pack have to bear. */
const atMost = { pack: 'full', state: full, from: ['pack.<name>.full-cell'] } as const;

const limitFigureList: readonly DriveFigure[] = [
  {
    ...atMost,
    id: 'full-current',
    title: 'Current from the pack at full throttle, full pack',
    unit: 'A',
    from: [...atMost.from, 'power.current-cap'],
    measureIn: (view) => {
      const cap = capOf(view);
      return ({ state }) => Math.min(state.packCurrent, cap);
    },
    why: (at, view) =>
      at.state.packCurrent > capOf(view)
        ? `${fine(capOf(view), 'A')}, where power.current-cap eases the motors back`
        : packCurrentText(at),
  },
  {
    ...atMost,
    id: 'full-speed',
    title: 'Motor speed at full throttle, full pack',
    unit: 'rpm',
    measure: ({ state }) => state.motor.speed / perMinute,
    why: ({ carried: { drive }, state: { motor } }) =>
      `${fine(underLoad(drive).speedConstant, 'rpm/V')} × (${fine(motor.voltage, 'V')} - ${fine(motor.current, 'A')} × ${fine(underLoad(drive).resistance, 'mohm')})`,
  },
  {
    ...atMost,
    id: 'full-thrust',
    title: 'Thrust at full throttle, full pack',
    unit: 'N',
    measure: ({ carried: { drive }, state }) => drive.count * state.thrust,
    why: ({ carried: { drive }, state }) =>
      `${drive.count} × ${blades(drive)} × (${turnsText(state.motor)})^2`,
  },
  {
    ...atMost,
    id: 'full-motor-current',
    title: 'Current of one motor at full throttle, full pack',
    unit: 'A',
    measure: ({ state }) => state.motor.current,
    why: ({ carried: { drive }, state: { motor } }) =>
      `(${fine(motor.voltage, 'V')} - ${fine(motor.speed, 'rpm')} / ${fine(underLoad(drive).speedConstant, 'rpm/V')}) / ${fine(underLoad(drive).resistance, 'mohm')}`,
  },
  {
    ...atMost,
    id: 'full-sag',
    title: 'Voltage that a full pack loses at full throttle',
    unit: 'V',
    measure: ({ carried: { drive }, state }) => drive.openVoltage - state.packVoltage,
    why: ({ carried: { drive }, state }) =>
      `${fine(drive.sourceResistance, 'mohm')} × ${fine(state.packCurrent, 'A')}`,
  },
  {
    ...atMost,
    id: 'tip-speed',
    title: 'Speed of the blade tips at full throttle, full pack',
    unit: 'm/s',
    measure: tipsOf,
    why: ({ carried: { drive }, state }) =>
      `π × ${fine(drive.propeller.diameter, 'in')} × ${turnsText(state.motor)}`,
  },
  {
    ...atMost,
    id: 'tip-mach',
    title: 'Blade tips at full throttle, of the speed of sound, full pack',
    unit: '%',
    measureIn: (view) => {
      const sound = soundOf(view);
      return (at) => (sound === null ? null : (100 * tipsOf(at)) / sound);
    },
    why: (at, view) => `${fine(tipsOf(at), 'm/s')} / ${fine(soundOf(view) ?? 0, 'm/s')}`,
  },
  {
    ...atMost,
    id: 'pitch-speed',
    title: 'Pitch speed at full throttle, full pack',
    unit: 'm/s',
    measure: ({ carried: { pitch }, state }) => pitchSpeed(pitch, state.motor.speed),
    why: ({ carried: { pitch }, state }) => `${fine(pitch, 'in')} × ${turnsText(state.motor)}`,
  },
];

export const limitFigures: readonly FigureSource[] = limitFigureList.map(driveFigure);

/** What throttle and speed see of the motors. */
function underLoad({ motor }: InState['carried']['drive']): UnderLoad {
  return motor.underLoad ?? motor;
}

/** What the board lets the pack give for long, A. */
function capOf(view: CraftView): number {
  return view.quantityOr('power.current-cap', null) ?? Number.POSITIVE_INFINITY;
}

function tipsOf({ carried: { drive }, state }: InState): number {
  return tipSpeed(drive.propeller.diameter, state.motor.speed);
}

function soundOf(view: CraftView): number | null {
  return airOf(view)?.value.sound ?? null;
}

function turnsText({ speed }: InState['state']['motor']): string {
  return fine(turnsPerSecond(speed), 'Hz');
}
