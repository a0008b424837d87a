import type { MeasuredSpan, RecordingReport } from '../../../server/src/recording/report';
import type { RandomFlight } from '../../support/simulated-flights';

/** What is told of one quantity of one flight, beside what is true. */
export interface Case {
  readonly truth: number;
  /** Null where it is withheld. */
  readonly span: MeasuredSpan | null;
  /** Whole width of the span that no rows of that rate can do without, in its unit: not counted as width. */
  readonly blind?: number;
}

/** What the estimates are held to. */
export interface Quantity {
  readonly name: string;
  /** In the unit of the span, or as a share of the truth. */
  readonly tolerance: { readonly off: number } | { readonly share: number } | null;
  /** With fewer flights that excite it a share says little: the proof asks for so many. Left out: 20. */
  readonly fewest?: number;
  /** Null where the flight does not excite it. */
  readonly of: (flight: RandomFlight, report: RecordingReport) => Case | null;
}
