import type { CraftView } from '../craft/view';
import type { DriveState } from '../physics/drive';
import { idleCurrentAt } from '../physics/motor';
import { copperRatio } from '../physics/motor-heat';
import { beyondModel } from './beyond-model';
import type { Carried } from './carried';
import { answeredIn, full, hovering } from './drive-states';
import type { Computed, FigureSource } from './figure';
import { controllerLossOf, lossesOf, type Warm, warmBy } from './motor-heat';
import { estimate } from './uncertain';
import { fine } from './why';

/** Settings that all of these hang on. */
export const heatInputs = [
  'motor.resistance',
  'motor.kv',
  'prop.diameter',
  'craft.mass',
  'pack.<name>.cells',
];

/** A motor in one state: half used in the hover, full at full throttle. */
interface MotorAtWork {
  readonly id: 'hover' | 'full';
  readonly words: string;
  readonly carried: (model: Warm) => Carried;
  readonly state: (carried: Carried) => DriveState | null;
}

const places: readonly MotorAtWork[] = [
  { id: 'hover', words: 'in the hover', carried: ({ halfUsed }) => halfUsed, state: hovering },
  { id: 'full', words: 'at full throttle, full pack', carried: ({ onFull }) => onFull, state: full },
];

interface At {
  readonly warm: number;
  readonly carried: Carried;
  readonly state: DriveState;
}

interface Loss {
  readonly id: string;
  readonly title: string;
  readonly from: readonly string[];
  readonly measure: (at: At) => number;
  readonly why: (at: At) => string;
}

const losses: readonly Loss[] = [
  {
    id: 'copper-loss',
    title: 'Heat in the winding of a motor',
    from: [],
    measure: ({ warm, carried, state }) => lossesOf(carried, state, warm).copper,
    why: ({ warm, carried: { drive }, state: { motor } }) =>
      `(${fine(motor.current, 'A')})^2 × ${fine(drive.motor.resistance, 'mohm')} × ${fine(copperRatio(warm), '')}, copper at ${fine(warm, 'degC')}`,
  },
  {
    id: 'iron-loss',
    title: 'Heat in iron and bearings of a motor',
    from: ['motor.idle-current'],
    measure: ({ warm, carried, state }) => lossesOf(carried, state, warm).iron,
    why: ({ carried: { drive }, state: { motor } }) =>
      `${fine(idleCurrentAt(drive.motor, motor.speed), 'A')} × ${fine(motor.speed, 'rpm')} / ${fine(drive.motor.speedConstant, 'rpm/V')}`,
  },
  {
    id: 'controller-loss',
    title: 'Heat in a speed controller',
    from: [],
    measure: ({ carried, state }) => controllerLossOf(carried, state),
    why: ({ carried: { drive }, state: { motor, packVoltage } }) =>
      `${fine(drive.controllerLoss, '%')} × ${fine(packVoltage, 'V')} × ${fine(motor.current, 'A')}`,
  },
];

export const lossFigures: readonly FigureSource[] = places.flatMap((place) =>
  losses.map(({ id, title, from, measure, why }) => ({
    id: `${place.id}-${id}`,
    title: `${title}, ${place.words}`,
    unit: 'W',
    from: [...heatInputs, ...from],
    whyNot: beyondModel,
    compute(view: CraftView): Computed | null {
      const known = warmBy(view);
      if (known === null) return null;
      const at = (one: Warm): At | null => {
        const carried = place.carried(one);
        const state = place.state(carried);
        return state === null ? null : { warm: one.warm, carried, state };
      };
      const measured = (one: Warm) => {
        const there = at(one);
        return there === null ? null : measure(there);
      };
      const found = estimate(known.value, measured, answeredIn(place.state));
      const likely = at(known.value.likely);
      return found === null || likely === null
        ? null
        : { ...found, why: why(likely), assumed: known.assumed };
    },
  })),
);
