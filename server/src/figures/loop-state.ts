import type { Axis } from '../physics/loop';
import { axisCurve, type Band, type LoopCurve } from '../physics/loop-curve';
import { type Margins, marginsOf, nearly, roughly, type Stability, stabilityOf } from '../physics/stability';
import { axesOf, type PlacedAxis } from './axis';
import type { AxisName } from './axis-names';
import { bodyOf } from './body';
import { model } from './model';
import { rotorOf } from './motor-lag';
import { type MotorResponse, pointAt, turnedResponses } from './operating-points';
import { estimateAbout } from './uncertain';

/**
 * A loop with all that is told of it. It is written out field by field wherever it is made anew, as its axis is: a sheet
 * makes a hundred, and spreading them took a changed filter a tenth of its time.
 */
export interface Loop {
  readonly axis: Axis;
  readonly stability: Stability;
  /** Null for one that swings, or that has no answer. */
  readonly margins: Margins | null;
}

/** The loop of an axis where it comes nearest to swinging, and what its doubts make of it there. */
export interface LoopState extends Loop {
  readonly placed: PlacedAxis;
  /** The same at every place, in the order of the places. */
  readonly everywhere: readonly (Loop & { readonly place: string })[];
  /** With each doubt turned by itself, down and up. */
  readonly turned: readonly (readonly [Loop, Loop])[];
  /** With all doubts turned together, as far as is as likely: towards swinging, and away from it. */
  readonly ends: { readonly worse: Loop; readonly better: Loop };
  /** Every loop that its doubts make of it, by themselves and together. */
  readonly doubted: readonly Loop[];
  /** Whether it may swing by what is doubtful of it: then both margins may be gone, never one alone. */
  readonly maySwing: boolean;
}

/** Hz: below where loops of large craft cross. */
const lowest = 0.1;

/** From there to what the control loop can tell. */
export const loopBandOf = model<[], Band>('band of loops', (own) => {
  const [gyro, control] = [own.quantity('gyro.rate'), own.quantity('control.rate')];
  if (gyro === null || control === null || control > gyro || control <= 2 * lowest) return null;
  return { value: { from: lowest, to: control / 2 } };
});

/** Null where a part of the loop is not known. */
export const loopOf = model<[name: AxisName], LoopState>('loop', (own, name) => {
  const axes = axesOf(own, name);
  const band = loopBandOf(own)?.value ?? null;
  const worst = axes === null || band === null ? null : worstOf(axes.value, band);
  if (axes === null || band === null || worst === null) return null;
  const { placed, curve, everywhere } = worst;
  const doubts = doubtsAt(own, name, placed.point.place)?.value;
  if (doubts === undefined) return null;
  const headline = closed(placed.axis, curve);
  const { axis, stability, margins } = headline;
  const moved = (axis: Axis) => closed(axis, axisCurve(axis, band), nearly);
  const turned = doubts.map(
    ({ low, high, apply }) => [moved(apply(placed.axis, low)), moved(apply(placed.axis, high))] as const,
  );
  const ends = endsOf(headline, doubts, turned, moved);
  const doubted = [...turned.flat(), ends.worse, ends.better];
  const maySwing = doubted.some((one) => one.stability.verdict === 'swings') || mayLose(margins, turned);
  return {
    value: { axis, stability, margins, placed, everywhere, turned, ends, doubted, maySwing },
    assumed: [placed.place, ...axes.assumed],
  };
});

/** Whether one of the margins may be gone. */
function mayLose(margins: Margins | null, turned: LoopState['turned']): boolean {
  if (margins === null) return true;
  const phase = estimateAbout(margins.phaseMargin, turned, (one) => one.margins?.phaseMargin ?? 0);
  return phase.low <= 0 || (margins.gainMargin !== null && gainSpan(margins.gainMargin, turned).low <= 1);
}

/** Gains multiply: their span is one of ratios. A loop that swings has less than the gain that it has. */
export function gainSpan(likely: number, turned: LoopState['turned']) {
  const { low, high } = estimateAbout(Math.log(likely), turned, ({ stability, margins }) =>
    Math.log(stability.verdict === 'calm' ? (margins?.gainMargin ?? likely) : 1),
  );
  // What went through a logarithm and back may miss by the last digit.
  return { low: Math.min(likely, Math.exp(low)), high: Math.max(likely, Math.exp(high)) };
}

/** The axis where it comes nearest to swinging, with its curve, and its loop at every place; null without a place. */
function worstOf(axes: readonly PlacedAxis[], band: Band) {
  const everywhere: (Loop & { readonly place: string })[] = [];
  let [nearest, worst]: [number, { placed: PlacedAxis; curve: LoopCurve } | null] = [
    Number.POSITIVE_INFINITY,
    null,
  ];
  for (const placed of axes) {
    const curve = axisCurve(placed.axis, band);
    const loop = closed(placed.axis, curve, roughly);
    const { axis, stability, margins } = loop;
    everywhere.push({ axis, stability, margins, place: placed.place });
    if (worst !== null && nearness(loop) >= nearest) continue;
    [nearest, worst] = [nearness(loop), { placed, curve }];
  }
  return worst === null ? null : { placed: worst.placed, curve: worst.curve, everywhere };
}

function closed(axis: Axis, curve: LoopCurve, tries?: number): Loop {
  const stability = stabilityOf(curve, tries);
  return { axis, stability, margins: marginsOf(stability) };
}

/** The distance from swinging; below 0 for a loop that swings. One without an answer is no measure for the others. */
function nearness({ stability }: Loop): number {
  const { verdict, nearest } = stability;
  if (verdict === 'unanswered') return Number.POSITIVE_INFINITY;
  return verdict === 'calm' ? nearest.distance : -nearest.distance;
}

/** Something that multiplies an axis, as far down and up as it may be. */
interface LoopDoubt {
  readonly low: number;
  readonly high: number;
  readonly apply: (axis: Axis, by: number) => Axis;
}

/** What is doubtful of an axis at a place; null where that is not known. */
const doubtsAt = model<[name: AxisName, place: string], readonly LoopDoubt[]>(
  'doubts of a loop',
  (own, name, place) => {
    const body = bodyOf(own, name);
    const rotor = rotorOf(own);
    const point = pointAt(own, place);
    if (body === null || rotor === null || point === undefined) return null;
    const strength = ({ drag, thrust }: MotorResponse) => (name === 'yaw' ? drag : thrust);
    const responses = turnedResponses(own, place)?.value ?? [];
    const value = doubtsOf({
      body: body.value.spread,
      slopes: responses.map((pair) => pair.map((one) => strength(one) / strength(point.motor) - 1)),
      rotor: rotor.value.factor,
    });
    return { value };
  },
);

interface Spreads {
  /** Share by which the inertia may be off. */
  readonly body: number;
  /** What each doubt of the drive does to the motors' strength, as shares. */
  readonly slopes: readonly (readonly number[])[];
  /** Factor by which the rotors' inertia may be off. */
  readonly rotor: number;
}

function doubtsOf({ body, slopes, rotor }: Spreads): readonly LoopDoubt[] {
  const weaker = [1 / (1 + body) - 1, ...slopes.map((pair) => Math.min(0, ...pair))];
  const stronger = [1 / (1 - body) - 1, ...slopes.map((pair) => Math.max(0, ...pair))];
  return [
    {
      low: Math.max(0.05, 1 - Math.hypot(...weaker)),
      high: 1 + Math.hypot(...stronger),
      apply: (axis, by) => turnedAxis(axis, by, 1),
    },
    // The same inertia lags and reacts.
    {
      low: 1 / rotor,
      high: rotor,
      apply: (axis, by) => turnedAxis(axis, 1, by),
    },
  ];
}

/** An axis that turns by a factor more strongly, with rotors that are by another factor as heavy. */
function turnedAxis(
  { gains, path, authority, motorLag, reactionLead }: Axis,
  stronger: number,
  heavier: number,
): Axis {
  return {
    gains,
    path,
    authority: stronger * authority,
    motorLag: heavier * motorLag,
    reactionLead: heavier * reactionLead,
  };
}

/**
 * Towards swinging all doubts are turned together: each by what it does to the distance from swinging, so that the
 * whole is as far from likely as one alone. Away from it the doubt that takes it furthest will do.
 * Source: first-order reliability method, any textbook on structural reliability.
 */
function endsOf(
  likely: Loop,
  doubts: readonly LoopDoubt[],
  turned: readonly (readonly [Loop, Loop])[],
  moved: (axis: Axis) => Loop,
): LoopState['ends'] {
  const falls = turned.map((pair) =>
    pair.map((one) =>
      one.stability.verdict === 'unanswered' ? 0 : Math.max(0, nearness(likely) - nearness(one)),
    ),
  );
  const steepest = falls.map((pair) => Math.max(...pair));
  const whole = Math.hypot(...steepest);
  const better = turned
    .flat()
    .filter(({ stability }) => stability.verdict === 'calm')
    .reduce((best, one) => (nearness(one) > nearness(best) ? one : best), likely);
  if (whole === 0) return { worse: likely, better };
  const axis = doubts.reduce((turning, { low, high, apply }, index) => {
    const [down = 0, up = 0] = falls[index] ?? [];
    return apply(turning, (down > up ? low : high) ** ((steepest[index] ?? 0) / whole));
  }, likely.axis);
  return { worse: moved(axis), better };
}
