import type { CraftView } from '../../craft/view';
import type { AxisName } from '../../figures/axis-names';
import { type MotorArm, motorArms, motorPlaces } from '../../figures/layouts';
import type { MeasuredAnswer } from '../report';
import { measuredBy, withheld } from './span';

/** How the motors are told to turn the craft, by the script. */
export interface Mix {
  readonly motors: number;
  /** What the hardest-working motor does for each motor of an axis, −1 to 1, from the first output on; yaw is null where it can't be said. */
  readonly shares: Readonly<Record<AxisName, readonly number[] | null>>;
}

/** Metres from motor to motor: only the form of a layout counts here. */
const anySpacing = 1;

/**
 * Which way each motor, in the order of the board's outputs, turns the craft: as much as it sits off the axis, beside the
 * one that sits the farthest. Right, nose up and clockwise are more.
 */
export function mixOf(view: CraftView | null): MeasuredAnswer<Mix> {
  if (view === null)
    return withheld(
      'Only a craft script says where the motors sit, and none was named.',
      'Name the script of the craft that was flown.',
    );
  const layout = view.word('craft.layout') ?? '';
  const places = motorPlaces(layout);
  const arms = motorArms(layout, anySpacing, view.quantityOr('craft.width-to-length', null) ?? 1);
  if (places === undefined || arms === null)
    return withheld('The script doesn’t say how the motors are laid out.', 'Write craft.layout.');
  const order = view.words('motor.order');
  if (order === null)
    return withheld(
      'The script doesn’t say which motor is on which output.',
      'Write motor.order, in the order of the recording’s columns.',
    );
  const at = order.map((place) => places.indexOf(place));
  if (new Set(at).size !== places.length || at.includes(-1) || at.length !== places.length)
    return withheld(
      'motor.order doesn’t name each place of the layout once.',
      'Mend motor.order, and open the recording again.',
    );
  const armOf = (motor: number) => armAt(layout, arms, places[motor] ?? '');
  const off = (of: (arm: MotorArm) => number) => {
    const all = at.map((motor) => of(armOf(motor)));
    const longest = Math.max(...all.map(Math.abs));
    return all.map((one) => one / longest);
  };
  return measuredBy(
    {
      motors: places.length,
      shares: {
        roll: off(({ aside }) => -aside),
        pitch: off(({ ahead }) => ahead),
        yaw: yawShares(view, layout, at.map(armOf)),
      },
    },
    'the script’s layout and motor order',
  );
}

/** Of layouts whose arms are not told in the order of their places, the place's own words say where it sits. */
function armAt(layout: string, arms: readonly MotorArm[], place: string): MotorArm {
  if (layout === 'quad-plus') return plusArms.get(place) ?? nowhere;
  const said = {
    ahead: signOf(place, 'front', 'rear'),
    aside: signOf(place, 'right', 'left'),
  };
  const sided = place.split('-').filter((word) => word !== 'upper' && word !== 'lower');
  const fitting = arms.filter(
    ({ ahead, aside }) =>
      (said.ahead === 0 ? Math.abs(ahead) < 1e-6 : ahead * said.ahead > 1e-6) &&
      (said.aside === 0 ? Math.abs(aside) < 1e-6 : aside * said.aside > 1e-6),
  );
  if (fitting.length <= 1) return fitting[0] ?? nowhere;
  // Of two arms in the same quarter, the first word says to which side it is nearer.
  const isAlong = sided[0] === 'front' || sided[0] === 'rear';
  return [...fitting].sort((one, other) =>
    isAlong ? Math.abs(other.ahead) - Math.abs(one.ahead) : Math.abs(one.ahead) - Math.abs(other.ahead),
  )[0] as MotorArm;
}

const nowhere: MotorArm = { ahead: 0, aside: 0 };
const plusArms: ReadonlyMap<string, MotorArm> = new Map([
  ['front', { ahead: 1, aside: 0 }],
  ['rear', { ahead: -1, aside: 0 }],
  ['left', { ahead: 0, aside: -1 }],
  ['right', { ahead: 0, aside: 1 }],
]);

function signOf(place: string, more: string, less: string): number {
  const words = place.split('-');
  return words.includes(more) ? 1 : words.includes(less) ? -1 : 0;
}

/** Layouts round a ring on which neighbours turn against each other, and of which the front motors are two. */
const alternating = ['quad-x', 'quad-wide', 'hex-x', 'octo-x'];

/** Its reaction turns the craft against a motor: one that turns clockwise makes it turn to the left. */
function yawShares(view: CraftView, layout: string, arms: readonly MotorArm[]): readonly number[] | null {
  const spin = view.word('motor.spin');
  if (spin === null || !alternating.includes(layout)) return null;
  const round = [...arms].sort((one, other) => bearing(one) - bearing(other));
  // The first to the right of the nose sweeps towards the middle where it turns counterclockwise.
  const first = spin === 'inward' ? 1 : -1;
  return arms.map((arm) => (round.indexOf(arm) % 2 === 0 ? first : -first));
}

function bearing({ ahead, aside }: MotorArm): number {
  const turn = Math.atan2(aside, ahead);
  return turn < 0 ? turn + 2 * Math.PI : turn;
}
