import type { CraftView } from '../craft/view';
import type { DriveState } from '../physics/drive';
import { shortText } from '../units/quantity';
import { type Carried, carriedBy, carriedOnFull, carriedToLand } from './drive';
import type { Computed, FigureSource } from './figure';
import { estimate } from './uncertain';
import { fine } from './why';

/** Settings that all of these hang on. */
const inputs = ['motor.kv', 'prop.diameter', 'prop.pitch', 'craft.mass', 'pack.<name>.cells'];

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
