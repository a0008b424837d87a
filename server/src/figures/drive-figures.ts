import type { CraftView } from '../craft/view';
import { type DriveState, stateAtThrottle, stateForThrust } from '../physics/drive';
import { idleCurrentAt, motorEfficiency } from '../physics/motor';
import { discLoading } from '../physics/propeller';
import { shortText } from '../units/quantity';
import { type Carried, carriedBy, carriedOnFull, carriedToLand } from './drive';
import type { Computed, FigureSource } from './figure';
import { packPath, packQuantity } from './pack-in-view';
import { estimate } from './uncertain';
import { fine } from './why';

const perMinute = (2 * Math.PI) / 60;

/** Settings that all of these hang on. */
const inputs = ['motor.kv', 'prop.diameter', 'prop.pitch', 'craft.mass', 'pack.<name>.cells'];

/** Many figures ask for the same state of the same model. */
const hovers = new WeakMap<Carried, DriveState | null>();
const fulls = new WeakMap<Carried, DriveState | null>();

/** Hovering: all propellers together carry the weight; null where pack and motors can't. */
export function hovering(carried: Carried): DriveState | null {
  const known = hovers.get(carried);
  if (known !== undefined) return known;
  const state = stateForThrust(carried.drive, carried.weight);
  hovers.set(carried, state);
  return state;
}

/** Full throttle, as far as the script lets it go; null where that can't be read. */
export function full(carried: Carried): DriveState | null {
  const known = fulls.get(carried);
  if (known !== undefined) return known;
  const { drive, throttle } = carried;
  const state = throttle === null ? null : stateAtThrottle(drive, throttle.most);
  fulls.set(carried, state);
  return state;
}

/** How much is left in the pack, with what a title does not tell of it. */
const packs = {
  full: { carried: carriedOnFull, words: () => [] },
  'half-used': {
    carried: carriedBy,
    words: ({ drive }: Carried) => [`a pack half used, at its nominal ${shortText(drive.openVoltage, 'V')}`],
  },
  'due-to-land': { carried: carriedToLand, words: () => [] },
} as const;

/** A figure of the craft in one state, with the formula that it comes from. */
export interface InState {
  readonly carried: Carried;
  readonly state: DriveState;
  readonly view: CraftView;
}

export interface DriveFigure {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  readonly hint?: NonNullable<FigureSource['hint']>;
  /** Further settings that it hangs on. */
  readonly from?: readonly string[];
  readonly pack: keyof typeof packs;
  readonly state: (carried: Carried) => DriveState | null;
  /** In the unit. */
  readonly measure: (at: InState) => number | null;
  readonly why: (at: InState) => string;
}

export function driveFigure({ id, title, unit, hint, from = [], ...how }: DriveFigure): FigureSource {
  return {
    id,
    title,
    unit,
    ...(hint === undefined ? {} : { hint }),
    from: [...inputs, ...from],
    compute(view): Computed | null {
      const { carried: carriedIn, words } = packs[how.pack];
      const known = carriedIn(view);
      if (known === null) return null;
      const found = estimate(known.value, (carried) => {
        const state = how.state(carried);
        return state === null ? null : how.measure({ carried, state, view });
      });
      const { likely: carried } = known.value;
      const state = how.state(carried);
      if (found === null || state === null) return null;
      const assumed = [...known.assumed, ...words(carried)];
      return { ...found, why: how.why({ carried, state, view }), assumed };
    },
  };
}

const hover = { pack: 'half-used', state: hovering } as const;

const driveFigureList: readonly DriveFigure[] = [
  {
    ...hover,
    id: 'hover-throttle',
    title: 'Throttle in the hover',
    unit: '%',
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
    id: 'minutes-to-landing',
    title: 'Hovering time until the reserve is reached',
    unit: 'min',
    from: ['pack.<name>.capacity', 'power.charge-reserve'],
    hint: { at: ['pack.<name>.capacity'], words: (figure) => `hovers ${figure}` },
    measure: (at) => minutes(at, 'power.charge-reserve'),
    why: (at) => minutesText(at, 'power.charge-reserve'),
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
  {
    ...hover,
    id: 'minutes-to-warning',
    title: 'Hovering time until the warning',
    unit: 'min',
    from: ['pack.<name>.capacity', 'power.used-warning'],
    measure: (at) => minutes(at, 'power.used-warning'),
    why: (at) => minutesText(at, 'power.used-warning'),
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

/** What a propeller makes of the square of its turns a second, in N s². */
export function blades({ propeller, airDensity }: Carried['drive']): string {
  const { thrustCoefficient, diameter } = propeller;
  return `${fine(thrustCoefficient, '')} × ${fine(airDensity, 'kg/m^3')} × (${fine(diameter, 'in')})^4`;
}

export function packCurrentText({ carried: { drive }, state }: InState): string {
  const { motor, packVoltage } = state;
  const motors = `${drive.count} × ${fine(motor.voltage, 'V')} × ${fine(motor.current, 'A')}`;
  return `(${motors} + ${fine(drive.otherPower, 'W')}) / ${fine(packVoltage, 'V')}`;
}

function efficiencyText({ carried, state: { motor } }: InState): string {
  const { speedConstant } = carried.drive.motor;
  const idle = idleCurrentAt(carried.drive.motor, motor.speed);
  const current = fine(motor.current, 'A');
  const shares = `(${current} - ${fine(idle, 'A')}) / ${current}`;
  return `${shares} × ${fine(motor.speed, 'rpm')} / (${fine(speedConstant, 'rpm/V')} × ${fine(motor.voltage, 'V')})`;
}

/** Share of the charge that may be used: up to the warning, or all but the reserve. */
function usable(view: CraftView, path: 'power.used-warning' | 'power.charge-reserve'): number | null {
  const share = view.quantity(path);
  return share === null ? null : path === 'power.charge-reserve' ? 1 - share : share;
}

function minutes({ state, view }: InState, path: Parameters<typeof usable>[1]): number | null {
  const charge = packQuantity(view, 'capacity');
  const share = usable(view, path);
  return charge === null || share === null ? null : (share * charge) / state.packCurrent / 60;
}

function minutesText({ state, view }: InState, path: Parameters<typeof usable>[1]): string {
  const capacity = packPath(view, 'capacity');
  const share = view.short(usable(view, path) ?? 0, '%');
  return `${share} × ${capacity === null ? '' : view.shown(capacity)} / ${fine(state.packCurrent, 'A')}`;
}
