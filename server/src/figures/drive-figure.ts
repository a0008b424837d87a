import type { CraftView } from '../craft/view';
import type { DriveState } from '../physics/drive';
import { shortText } from '../units/quantity';
import { beyondModel } from './beyond-model';
import type { Carried } from './carried';
import { carriedBy, carriedCold, carriedOnFull, carriedToLand } from './drive';
import { answeredIn } from './drive-states';
import type { Computed, FigureSource } from './figure';
import type { ReadingKind } from './flight-readings';
import { measuredOn } from './measured';
import { tellsPackKind } from './pack-source';
import { estimate } from './uncertain';
import { fine } from './why';

/** Settings that all of these hang on. */
const inputs = [
  'motor.kv',
  'motor.stator-diameter',
  'motor.stator-height',
  'prop.diameter',
  'prop.pitch',
  'craft.mass',
  'pack.<name>.cells',
];

/** How much is left in the pack, with what a title does not tell of it. */
const packs = {
  full: { carried: carriedOnFull, words: () => [] },
  'half-used': {
    carried: carriedBy,
    words: ({ drive }: Carried) => [`a pack half used, at its nominal ${shortText(drive.openVoltage, 'V')}`],
  },
  'from full': { carried: carriedBy, words: () => [] },
  'from full, cold': { carried: carriedCold, words: () => [] },
  'due-to-land': { carried: carriedToLand, words: () => [] },
} as const;

/** A craft in one state. */
export interface InState {
  readonly carried: Carried;
  readonly state: DriveState;
}

/** In the unit of a figure. */
type StateMeasure = (at: InState) => number | null;

/** One that reads the script: once, whatever is in doubt. */
type ReadingMeasure = (view: CraftView) => StateMeasure;

/** A figure of the craft in one state, with the formula that it comes from. */
export type DriveFigure = ToldFigure &
  ({ readonly measure: StateMeasure } | { readonly measureIn: ReadingMeasure });

interface ToldFigure {
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  readonly hint?: NonNullable<FigureSource['hint']>;
  /** Further settings that it hangs on. */
  readonly from?: readonly string[];
  /** What a flight may have measured of it. */
  readonly reading?: ReadingKind;
  readonly pack: keyof typeof packs;
  readonly state: (carried: Carried) => DriveState | null;
  readonly why: (at: InState, view: CraftView) => string;
  /** Why there is none although the craft hovers, in a sentence. */
  readonly whyNot?: (view: CraftView) => string | null;
}

export function driveFigure({ id, title, unit, hint, from = [], ...how }: DriveFigure): FigureSource {
  return {
    id,
    title,
    unit,
    ...(hint === undefined ? {} : { hint }),
    from: [...inputs, ...from],
    whyNot: (view) => beyondModel(view) ?? how.whyNot?.(view) ?? null,
    compute(view): Computed | null {
      const { carried: carriedIn, words } = packs[how.pack];
      const known = carriedIn(view);
      if (known === null) return null;
      const measure = 'measure' in how ? how.measure : how.measureIn(view);
      const measured = (carried: Carried) => {
        const state = how.state(carried);
        return state === null ? null : measure({ carried, state });
      };
      const found = estimate(known.value, measured, answeredIn(how.state));
      const { likely: carried } = known.value;
      const state = how.state(carried);
      if (found === null || state === null) return null;
      const assumed = [...known.assumed, ...words(carried)];
      const { reading: kind } = how;
      return {
        ...found,
        why: how.why({ carried, state }, view),
        measured: kind === undefined ? [] : measuredOn(view, { kind }),
        settledBy: tellsPackKind(view),
        assumed,
      };
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
  const motors = `${drive.count} × ${fine(motor.power, 'W')}`;
  const lost = `${drive.count} × ${fine(drive.controllerLoss, '%')} × ${fine(motor.current, 'A')}`;
  return `(${motors} + ${fine(drive.otherPower, 'W')}) / ${fine(packVoltage, 'V')} + ${lost}`;
}
