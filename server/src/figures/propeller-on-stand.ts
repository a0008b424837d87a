import type { CraftView } from '../craft/view';
import type { FittedLaw } from '../physics/bench-table';
import type { EstimatedPropeller } from '../physics/propeller-estimate';
import { benchAir, benchDrag, benchOf } from './motor-bench';
import { type MotorPlate, motorPlateOf } from './motor-plate';

/** A coefficient with the factor that holds it nine times of ten. */
interface Coefficient {
  readonly likely: number;
  readonly factor: number;
}

/** Coefficients of a propeller by a maker's table, how far they go together, and what was assumed, in words. */
export interface StandPropeller {
  readonly thrust: Coefficient;
  readonly power: Coefficient;
  readonly correlation: number;
  readonly words: readonly string[];
}

/** 90 % lie within so many standard deviations. */
const ninety = 1.645;
/** No stand, scale and meter is surer than this factor. Common practice. */
const leastFactor = 1.04;

function within(spread: number): number {
  return Math.max(leastFactor, Math.exp(ninety * spread));
}

/** Null without a table that tells of it. `like`: what like propellers have, where the table has no speeds. */
export function propellerOnStand(
  view: CraftView,
  diameter: number,
  like: EstimatedPropeller,
): StandPropeller | null {
  const bench = benchOf(view);
  if (bench === null || bench.rows.length === 0) return null;
  const toThrust = (benchAir * diameter ** 4) / (2 * Math.PI) ** 2;
  const toPower = (benchAir * diameter ** 5) / (2 * Math.PI) ** 3;
  const rows = `the maker’s table (${bench.rows.length} rows)`;
  const thrust =
    bench.thrust === null
      ? like.thrust
      : { likely: bench.thrust.value / toThrust, factor: within(bench.thrust.spread) };
  const words = [bench.thrust === null ? likeOthers : `thrust coefficient by ${rows}`];
  if (bench.drag !== null) {
    const power = { likely: bench.drag.value / toPower, factor: within(bench.drag.spread) };
    return { thrust, power, correlation: 0, words: [...words, `power coefficient by ${rows}`] };
  }
  const plate = motorPlateOf(view, []);
  const drags =
    plate === null ? null : dragsOf(plate, (motor) => benchDrag(bench, motor, thrust.likely * toThrust));
  if (drags === null) return null;
  const [drag, wider] = drags;
  const [likely, own] = [drag.value / toPower, Math.log(within(drag.spread))];
  words.push(`power coefficient by the watts of ${rows}`);
  if (bench.thrust !== null)
    return { thrust, power: { likely, factor: Math.exp(Math.hypot(own, wider)) }, correlation: 0, words };
  // Without speeds, a thrust that is off moves the speed, and the drag with it: what thrust costs stays as it is.
  const shared = 1.5 * Math.log(thrust.factor);
  const whole = Math.hypot(shared, own, wider);
  return { thrust, power: { likely, factor: Math.exp(whole) }, correlation: shared / whole, words };
}

const likeOthers = 'thrust coefficient of like propellers in an open data set';

interface Winding {
  readonly speedConstant: number;
  readonly resistance: number;
  readonly friction: number;
}

/** The drag by the likely winding, and how far the ends of the winding's span take its logarithm. */
function dragsOf(
  { speedConstant, resistance, current }: MotorPlate,
  dragWith: (motor: Winding) => FittedLaw | null,
): readonly [FittedLaw, number] | null {
  const friction = current.likely / speedConstant;
  const of = (ohms: number) => dragWith({ speedConstant, resistance: ohms, friction });
  const likely = of(resistance.likely);
  if (likely === null) return null;
  const moved = [resistance.low, resistance.high].map((ohms) => {
    const other = of(ohms);
    return other === null ? 0 : Math.abs(Math.log(other.value / likely.value));
  });
  return [likely, Math.max(...moved)];
}
