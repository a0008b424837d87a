import type { AxisName } from '../figures/axis-names';
import type { MeasuredNoise } from './measured-noise';
import type { MeasuredAnswer, MeasuredSpan } from './report';

/** All of a flight that setups are to be weighed by. Plain data. */
export interface MeasuredFlight {
  readonly noise: MeasuredAnswer<MeasuredNoise>;
  readonly loops: MeasuredAnswer<MeasuredLoops>;
}

/** How the axes of a craft answered their motors on a flight. */
export interface MeasuredLoops {
  /** Of the file. */
  readonly name: string;
  /** That was flown. */
  readonly pack: string | null;
  readonly axes: readonly FlownLoop[];
}

/** Null: it was not told. */
export interface FlownLoop {
  readonly axis: AxisName;
  /** What only waits from motor command to gyro, its filters too, ms. */
  readonly delay: MeasuredSpan | null;
  /** Time constant of the motors with their propellers, ms. */
  readonly lag: MeasuredSpan | null;
  /** Hz at which the measured craft with the script's controller crosses over. */
  readonly crossover: MeasuredSpan | null;
}
