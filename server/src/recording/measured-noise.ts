import type { AxisName } from '../figures/axis-names';

/** What shook a craft before the board's filters, on one flight: what filters are to be weighed by. Plain data. */
export interface MeasuredNoise {
  /** Of the file. */
  readonly name: string;
  readonly isSimulated: boolean;
  /** Rows a second, Hz: of what lies above half of it nothing is known. */
  readonly rate: number;
  /** Hz, rising, from the lowest at which nothing is flown on purpose to half of the rate of rows. */
  readonly frequencies: Float64Array;
  readonly axes: readonly AxisShaken[];
  /** Moments all over the flight, for what follows the motors; none where their speeds were not logged. */
  readonly moments: readonly NoiseMoment[];
}

export interface AxisShaken {
  readonly axis: AxisName;
  /** Power in each bin, (deg/s)². */
  readonly powers: Float64Array;
  readonly tones: readonly StandingNoise[];
}

/** A tone that stands, whatever the motors do. */
export interface StandingNoise {
  /** Hz */
  readonly frequency: number;
  /** dB over the noise about it. */
  readonly above: number;
}

export interface NoiseMoment {
  /** How often a second each motor turned. */
  readonly turns: readonly number[];
  /** Power in each bin, (deg/s)², in the order of the axes. */
  readonly powers: readonly Float64Array[];
}
