import type { MotorLaws } from '../catalog/model/motors';
import type { CraftView } from '../craft/view';
import { estimateByLaw, type MotorLaw, type MotorMeasures, measuresOf } from '../physics/motor-law';
import { tellingRows, tellingRowsInWords } from './motor-bench';
import type { Substitute } from './substitute';
import { type Estimate, withinFactor } from './uncertain';

/** What a sales page tells of the motors, as far as the script has it. */
function told(view: CraftView): MotorMeasures {
  return measuresOf({
    statorDiameter: view.quantityOr('motor.stator-diameter', null),
    statorHeight: view.quantityOr('motor.stator-height', null),
    mass: view.quantityOr('motor.mass', null),
    speedConstant: view.quantity('motor.kv'),
  });
}

/** Notes that the stator's size is missing: it is what every sales page tells. */
function lacksSize(view: CraftView): null {
  for (const path of statorSize) view.quantity(path);
  return null;
}

const statorSize = ['motor.stator-diameter', 'motor.stator-height'];

/** What does in place of the stator's size. */
export const insteadOfSize: Substitute = {
  of: statorSize,
  by: [
    { write: ['motor.mass'] },
    { write: ['motor.resistance', 'motor.idle-current'] },
    { write: tellingRows, ...tellingRowsInWords },
  ],
};

const bySize = 'the size of its stator';
const byMass = 'its mass';

/** A winding by what a sales page tells, ohm. */
export interface EstimatedWinding {
  readonly resistance: Estimate;
  /** What throttle and speed see of it. */
  readonly underLoad: Estimate;
}

/** Of a motor whose size or mass is told with its kv; null without. */
export function estimatedWinding(view: CraftView, assumed: string[]): EstimatedWinding | null {
  const laws = view.catalog.motorLaws;
  const measures = told(view);
  const found = laws === null ? null : windingBy(laws, measures);
  if (laws === null || found === null) return lacksSize(view);
  const { resistance, from, law } = found;
  const { likely } = resistance;
  const seen = laws.underLoad.resistance;
  // As much less sure as the winding is, which lies farther from the motors that are listed.
  const farther = Math.max(1, (0.5 * Math.log(resistance.high / resistance.low)) / Math.log(law.factor));
  const reach = (end: number) => seen.likely * (end / seen.likely) ** farther;
  const underLoad = {
    likely: seen.likely * likely,
    low: reach(seen.low) * likely,
    high: reach(seen.high) * likely,
  };
  assumed.push(`a winding of ${spanText(view, resistance, 'mohm')}, estimated from ${from} and kv`);
  return { resistance, underLoad };
}

function windingBy({ resistance, motorConstant }: MotorLaws, measures: MotorMeasures) {
  const bounded = (law: MotorLaw, constant: MotorLaw) => {
    const [found, other] = [estimateByLaw(law, measures), byConstant(constant, measures)];
    if (found === null || other === null) return null;
    const { likely, low, high } = withinFactor(found.likely, found.factor);
    // Far from the motors that are listed the two laws part: neither is ruled out.
    return { likely, low: Math.min(low, other), high: Math.max(high, other) };
  };
  const bigger = bounded(resistance.bySize, motorConstant.bySize);
  if (bigger !== null) return { resistance: bigger, from: bySize, law: resistance.bySize };
  const lighter = bounded(resistance.byMass, motorConstant.byMass);
  return lighter === null ? null : { resistance: lighter, from: byMass, law: resistance.byMass };
}

/** A winding's resistance from its torque a volt-second and the motor constant: (K / Km)², in ohm. */
function byConstant(law: MotorLaw, measures: MotorMeasures): number | null {
  const constant = estimateByLaw(law, measures);
  if (constant === null || measures.kv === undefined) return null;
  return (60 / (2 * Math.PI * measures.kv) / constant.likely) ** 2;
}

/** The current without a load, A: the mass tells it better than the stator's size. */
export function estimatedIdleCurrent(view: CraftView, assumed: string[]): Estimate | null {
  const laws = view.catalog.motorLaws?.idleCurrent;
  if (laws === undefined) return null;
  const measures = told(view);
  const weighed = estimateByLaw(laws.byMass, measures);
  const found = weighed ?? estimateByLaw(laws.bySize, measures);
  if (found === null) return lacksSize(view);
  const estimate = withinFactor(found.likely, found.factor);
  const from = weighed === null ? bySize : byMass;
  assumed.push(`a no-load current of ${spanText(view, estimate, 'A')}, estimated from ${from} and kv`);
  return estimate;
}

function spanText(view: CraftView, { likely, low, high }: Estimate, unit: string): string {
  return `${view.short(likely, unit)} (${view.short(low, unit)} to ${view.short(high, unit)})`;
}

/** One motor's mass, kg: weighed or printed, else by the stator's size; null where neither is told. */
export function motorMassOf(view: CraftView, assumed: string[]): Estimate | null {
  const given = view.quantityOr('motor.mass', null);
  if (given !== null) return withinFactor(given, 1);
  const law = view.catalog.motorLaws?.mass;
  const found = law === undefined ? null : estimateByLaw(law, told(view));
  if (found === null) return null;
  const estimate = withinFactor(1e-3 * found.likely, found.factor);
  assumed.push(`motors of ${spanText(view, estimate, 'g')}, estimated from ${bySize}`);
  return estimate;
}
