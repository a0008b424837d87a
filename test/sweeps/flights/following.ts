import type {
  AxisResponse,
  MeasuredAnswer,
  MeasuredSpan,
  RecordingReport,
} from '../../../server/src/recording/report';
import type { SimulatedGains } from '../../simulator/craft';
import { waitsOf } from '../../simulator/linear';
import type { LoopTruth } from '../../simulator/loop-truth';
import type { RandomFlight } from '../../support/simulated-flights';
import type { Quantity } from './quantity';
import { type Steered, steeredOf } from './steered';

// What is told of how a craft follows and how late it is, beside the loop that the simulator really has.

/** A flight that excites: the sticks ask for enough (rad/s rms), no motor stands at a limit for long, and it shows. */
const enough = { asked: 1, limited: 0.05, coherence: 0.6 };

const degree = Math.PI / 180;

/** Where a flight moved an axis well enough to tell of it, and logged what was asked for. */
function excited(flight: RandomFlight): Steered | null {
  const steered = steeredOf(flight);
  if (steered === null) return null;
  return steered.asked >= enough.asked && steered.limited <= enough.limited ? steered : null;
}

/** Whether rows show a frequency (Hz), and what is there follows from the sticks. */
function shows({ rate }: RandomFlight, { coherence }: Steered, frequency: number): boolean {
  return frequency < 0.4 * rate && coherence(frequency) >= enough.coherence;
}

function spanOf<T>(
  answer: MeasuredAnswer<T> | undefined,
  of: (told: T) => MeasuredSpan | null,
): MeasuredSpan | null {
  return answer === undefined || answer.told === null ? null : of(answer.told);
}

const itself = (span: MeasuredSpan) => span;

function responseOf(report: RecordingReport, { axis }: Steered): AxisResponse | undefined {
  return report.responses.told?.find((one) => one.axis === axis);
}

const bandwidth: Quantity = {
  name: 'bandwidth',
  tolerance: { share: 0.1 },
  of(flight, report) {
    const steered = excited(flight);
    const truth = steered?.truth.bandwidth ?? null;
    if (steered === null || truth === null || !shows(flight, steered, truth)) return null;
    return { truth, span: spanOf(responseOf(report, steered)?.bandwidth, itself) };
  },
};

/** A peak that is worth the name, as a ratio. */
const leastPeak = 1.1;

const peak: Quantity = {
  name: 'peak of the answer',
  tolerance: { share: 0.1 },
  of(flight, report) {
    const steered = excited(flight);
    const truth = steered?.truth;
    if (steered === null || truth === undefined || truth.peak < leastPeak) return null;
    if (truth.bandwidth === null || !shows(flight, steered, truth.bandwidth)) return null;
    return { truth: 100 * truth.peak, span: spanOf(responseOf(report, steered)?.peak, itself) };
  },
};

const phaseDelay: Quantity = {
  name: 'phase delay',
  tolerance: { share: 0.15 },
  // Few craft answer still at twice the frequency of half a turn.
  fewest: 10,
  of(flight, report) {
    const steered = excited(flight);
    const { halfTurn = null, phaseDelay: late = null } = steered?.truth ?? {};
    if (steered === null || halfTurn === null || late === null) return null;
    // All the way from half a turn to twice its frequency.
    if (![1, 1.3, 1.6, 2].every((times) => shows(flight, steered, times * halfTurn))) return null;
    // Sticks and gyro may come from two rows, of which half makes phase delay.
    const blind = 1000 / flight.rate;
    return { truth: 1000 * late, span: spanOf(responseOf(report, steered)?.phaseDelay, itself), blind };
  },
};

/** Up to here at least what the craft does must follow from the sticks to tell a wait from a lag, Hz. */
const toTellDelay = 20;

/** Rows in which the columns are of one moment. */
const isUnskewed = ({ recorder }: RandomFlight) => recorder.outputsLate === 0;

const delay: Quantity = {
  name: 'delay',
  tolerance: { off: 0.3 },
  of(flight, report) {
    const steered = excited(flight);
    if (steered === null || !isUnskewed(flight) || !shows(flight, steered, toTellDelay)) return null;
    const { plain, filters } = waitsOf(flight.craft, toTellDelay);
    const truth = 1000 * (plain + filters);
    // Columns that are a row apart can't be seen: a row to either side belongs to the span.
    const blind = 2000 / flight.rate;
    return { truth, span: spanOf(responseOf(report, steered)?.delay, itself), blind };
  },
};

function margin(
  name: string,
  tolerance: Quantity['tolerance'],
  of: (truth: LoopTruth) => { readonly truth: number; readonly at: number } | null,
  told: (margins: NonNullable<AxisResponse['margins']['told']>) => MeasuredSpan | null,
): Quantity {
  return {
    name,
    tolerance,
    of(flight, report) {
      const steered = excited(flight);
      const found = steered === null ? null : of(steered.truth);
      if (steered === null || found === null || !shows(flight, steered, found.at)) return null;
      // A row more or less of waiting, which nobody sees, belongs to the span.
      const [sooner, later] = [-1, 1].map(
        (rows) => of(steered.waiting(rows / flight.rate))?.truth ?? found.truth,
      );
      const blind = Math.abs((sooner ?? 0) - (later ?? 0));
      return { truth: found.truth, span: spanOf(responseOf(report, steered)?.margins, told), blind };
    },
  };
}

const phaseMargin = margin(
  'phase margin',
  { off: 6 },
  ({ phaseMargin: left, crossover }) =>
    left === null || crossover === null ? null : { truth: left / degree, at: crossover },
  (margins) => margins.phaseMargin,
);

const gainMargin = margin(
  'gain margin',
  { share: 0.2 },
  ({ gainMargin: left, turning }) =>
    left === null || turning === null ? null : { truth: left, at: turning },
  (margins) => margins.gainMargin,
);

/** Of so many radians a second the command is a share a rad/s, of degrees a second in %. */
const inScript = 100 * degree;

type Term = 'proportional' | 'integral' | 'derivative';

function gain(
  term: Term,
  share: number,
  isExcited: (flight: RandomFlight, gains: SimulatedGains) => boolean,
) {
  return {
    name: `board's ${term}`,
    tolerance: { share },
    of(flight: RandomFlight, report: RecordingReport) {
      const steered = excited(flight);
      if (steered === null) return null;
      const gains = flight.craft.board.gains[steered.axis];
      if (gains[term] <= 0 || !isExcited(flight, gains)) return null;
      const found = report.gains.told?.find((one) => one.axis === steered.axis && one.term === term);
      return { truth: inScript * gains[term], span: spanOf(found?.gain, itself) };
    },
  } satisfies Quantity;
}

/** Rows so often show the derivative behind its filters. */
const timesCutoff = 4;

function seesDerivative({ craft, rate }: RandomFlight): boolean {
  return craft.board.derivativeFilters.every(
    (filter) => filter.kind === 'butterworth' && rate >= timesCutoff * filter.cutoff,
  );
}

export const following: readonly Quantity[] = [
  bandwidth,
  peak,
  phaseDelay,
  delay,
  phaseMargin,
  gainMargin,
  gain('proportional', 0.1, () => true),
  gain('integral', 0.25, () => true),
  gain('derivative', 0.2, seesDerivative),
];
