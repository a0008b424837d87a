import type { CraftView } from '../craft/view';
import { boxInertia, pointInertia } from '../physics/inertia';
import { mixedArm } from '../physics/mixing';
import type { AxisName } from './axis-names';
import { type MotorArm, motorArms, motorPlaces } from './layouts';
import { flyingMass } from './mass';
import { model } from './model';
import { motorMassOf } from './motor-size';

/** How a craft takes to being turned about an axis. */
export interface Body {
  /** kg m² */
  readonly inertia: number;
  /** Share by which the inertia may be off. */
  readonly spread: number;
  /** Torque (Nm) a unit that the hardest-working motor changes: of thrust (N), or in yaw of torque (Nm). */
  readonly leverage: number;
}

export const bodyOf = model<[name: AxisName], Body>('body', (own, name) => {
  const arms = armsOf(own);
  const places = motorPlaces(own.word('craft.layout') ?? '');
  if (arms === null || places === undefined) return null;
  const inertia = inertiaOf(own, name, arms);
  if (inertia === null) return null;
  const each = places.length / arms.length;
  const leverage = name === 'yaw' ? places.length : each * mixedArm(arms.map(offAxis[name]));
  const { value, spread, assumed } = inertia;
  return { value: { inertia: value, spread, leverage }, assumed };
});

const offAxis = {
  roll: ({ aside }: MotorArm) => aside,
  pitch: ({ ahead }: MotorArm) => ahead,
  yaw: ({ ahead, aside }: MotorArm) => Math.hypot(ahead, aside),
};

function armsOf(view: CraftView): readonly MotorArm[] | null {
  const layout = view.word('craft.layout');
  const spacing = view.quantity('craft.motor-spacing');
  if (layout === null || spacing === null) return null;
  const ratio = layout === 'quad-wide' ? view.quantity('craft.width-to-length') : null;
  return motorArms(layout, spacing, ratio);
}

interface Inertia {
  readonly value: number;
  readonly spread: number;
  readonly assumed: readonly string[];
}

/** Shares by which an inertia that was measured, or estimated without and with the motors' mass, may be off. */
const spreads = { measured: 0.15, estimated: 0.35, weighed: 0.25 };

function inertiaOf(view: CraftView, name: AxisName, arms: readonly MotorArm[]): Inertia | null {
  const given = view.quantityOr(`craft.inertia.${name}`, null);
  if (given !== null) return { value: given, spread: spreads.measured, assumed: [] };
  const spacing = view.quantity('craft.motor-spacing');
  const whole = flyingMass(view);
  const outer = outerMass(view);
  if (spacing === null || whole === null || outer === null) return null;
  const ends = arms.map((arm) => ({ mass: outer.mass / arms.length, distance: offAxis[name](arm) }));
  const [one, other] = acrossAxis[name];
  const box = boxInertia(Math.max(0, whole - outer.mass), one * spacing, other * spacing);
  return {
    value: pointInertia(ends) + box,
    spread: outer.isWeighed ? spreads.weighed : spreads.estimated,
    assumed: [`inertia about ${name} of a usual build: ${outer.words}`],
  };
}

/**
 * Shares of the dry mass that hang out at the arms in all and without motors and propellers, and sizes of the rest
 * against the motor spacing. Common practice.
 */
const build = { atArms: 0.42, besideMotors: 0.08, width: 0.25, length: 0.45, height: 0.2 };

/** Sides of what does not hang out at the arms, those that lie across an axis. */
const acrossAxis = {
  roll: [build.width, build.height],
  pitch: [build.length, build.height],
  yaw: [build.width, build.length],
} as const;

/** What hangs out at the ends of the arms, kg: weighed motors with their propellers, or a usual share of the craft. */
function outerMass(view: CraftView) {
  const craft = view.quantity('craft.mass');
  const count = motorPlaces(view.word('craft.layout') ?? '')?.length;
  if (craft === null || count === undefined) return null;
  const weighed: string[] = [];
  const motor = motorMassOf(view, weighed)?.likely ?? null;
  if (motor === null) {
    return {
      mass: build.atArms * craft,
      isWeighed: false,
      words: `${build.atArms * 100} % of the dry mass out at the motors`,
    };
  }
  const propeller = view.quantityOr('prop.mass', null) ?? 0;
  const mass = Math.min(craft, count * (motor + propeller) + build.besideMotors * craft);
  return {
    mass,
    isWeighed: weighed.length === 0,
    words: [`${view.short(mass, 'g')} of motors, propellers and arms outside`, ...weighed].join(', '),
  };
}
