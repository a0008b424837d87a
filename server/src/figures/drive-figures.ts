import { idleCurrentAt, motorEfficiency } from '../physics/motor';
import { discLoading } from '../physics/propeller';
import { blades, type DriveFigure, driveFigure, type InState, packCurrentText } from './drive-figure';
import { full, hovering } from './drive-states';
import type { FigureSource } from './figure';
import { fine } from './why';

const perMinute = (2 * Math.PI) / 60;

const hover = { pack: 'half-used', state: hovering } as const;

const driveFigureList: readonly DriveFigure[] = [
  {
    ...hover,
    id: 'hover-throttle',
    title: 'Throttle in the hover',
    unit: '%',
    reading: 'hover-throttle',
    from: ['motor.thrust-shape', 'power.even-thrust'],
    hint: { at: ['pack.<name>.cells'], words: (figure) => `hovers at ${figure}` },
    measure: askedInHover,
    why: hoverText,
  },
  {
    id: 'thrust-to-weight',
    title: 'Thrust-to-weight at full throttle, pack half used',
    unit: '',
    pack: 'half-used',
    state: full,
    measure: thrustToWeight,
    why: thrustToWeightText,
  },
  {
    id: 'thrust-to-weight-landing',
    title: 'Thrust-to-weight at full throttle, pack due to land',
    unit: '',
    from: ['power.land-cell'],
    pack: 'due-to-land',
    state: full,
    measure: thrustToWeight,
    why: thrustToWeightText,
  },
  {
    ...hover,
    id: 'hover-speed',
    title: 'Motor speed in the hover',
    unit: 'rpm',
    measure: ({ state }) => state.motor.speed / perMinute,
    why: ({ state: { thrust }, carried: { drive } }) => `sqrt(${fine(thrust, 'N')} / (${blades(drive)}))`,
  },
  {
    ...hover,
    id: 'hover-current',
    title: 'Current from the pack in the hover',
    unit: 'A',
    reading: 'hover-current',
    measure: ({ state }) => state.packCurrent,
    why: packCurrentText,
  },
  {
    ...hover,
    id: 'hover-power',
    title: 'Power from the pack in the hover',
    unit: 'W',
    measure: ({ state }) => state.packVoltage * state.packCurrent,
    why: ({ state }) => `${fine(state.packVoltage, 'V')} × ${fine(state.packCurrent, 'A')}`,
  },
  {
    ...hover,
    id: 'hover-motor-efficiency',
    title: 'Share of the power that reaches the propellers, in the hover',
    unit: '%',
    measure: ({ carried, state }) => 100 * motorEfficiency(carried.drive.motor, state.motor),
    why: efficiencyText,
  },
  {
    ...hover,
    id: 'disc-loading',
    title: 'Disc loading',
    unit: 'N/m^2',
    measure: ({ carried: { drive, weight } }) => discLoading(weight, drive.propeller.diameter, drive.count),
    why: ({ carried: { drive, weight } }) =>
      `${fine(weight, 'N')} / (${drive.count} × π × (${fine(drive.propeller.diameter, 'in')})^2 / 4)`,
  },
];

export const driveFigures: readonly FigureSource[] = driveFigureList.map(driveFigure);

function askedInHover({ carried, state }: InState): number | null {
  const asked = carried.throttle?.askedFor(state.throttle, state.packVoltage);
  return asked === undefined ? null : 100 * asked;
}

function hoverText(at: InState): string {
  const { carried, state } = at;
  const output = `${fine(state.motor.voltage, 'V')} / ${fine(state.packVoltage, 'V')}`;
  const asked = askedInHover(at) ?? 0;
  const isSame = Math.abs(asked - 100 * state.throttle) < 1e-6;
  if (isSame || carried.throttle === null) return output;
  return `${fine(asked / 100, '%')}, for which the motors are told ${output} = ${fine(state.throttle, '%')}`;
}

function thrustToWeight({ carried: { drive, weight }, state }: InState): number {
  return (drive.count * state.thrust) / weight;
}

function thrustToWeightText({ carried: { drive, weight }, state }: InState): string {
  return `${fine(drive.count * state.thrust, 'N')} / ${fine(weight, 'N')}`;
}

function efficiencyText({ carried, state: { motor } }: InState): string {
  const { speedConstant } = carried.drive.motor;
  const idle = idleCurrentAt(carried.drive.motor, motor.speed);
  const working = `(${fine(motor.current, 'A')} - ${fine(idle, 'A')})`;
  return `${working} × ${fine(motor.speed, 'rpm')} / (${fine(speedConstant, 'rpm/V')} × ${fine(motor.power, 'W')})`;
}
