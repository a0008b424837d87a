import type {
  MeasuredAnswer,
  MeasuredSpan,
  Peak,
  RecordingReport,
} from '../../../server/src/recording/report';
import type { RandomFlight } from '../../support/simulated-flights';
import { following } from './following';
import type { Quantity } from './quantity';

const turn = 2 * Math.PI;
const decibels = (ratio: number) => 10 * Math.log10(ratio);

/** Rows so seldom show a frequency at another one, Hz. */
export function folded(frequency: number, rate: number): number {
  const within = frequency % rate;
  return Math.min(within, rate - within);
}

const axes = ['roll', 'pitch', 'yaw'] as const;
type Axis = (typeof axes)[number];

/** Density of what has no tone, (rad/s)²/Hz, in the hover. */
function floorOf({ craft }: RandomFlight): number {
  const { sensor, air } = craft.shaking;
  return sensor ** 2 + air ** 2;
}

const hasUnfiltered = ({ layout }: RandomFlight) => layout.columns.some(({ of }) => of === 'unfiltered.roll');
const hasSpeeds = ({ layout }: RandomFlight) => layout.columns.some(({ of }) => of === 'speed.1');

/** Where the tones of all motors are in the hover, Hz: folded, with what they stand for. */
function motorTones({ truth, craft, rate }: RandomFlight): readonly number[] {
  return truth.meanSpeeds.flatMap((speed) =>
    [1, craft.propeller.blades].map((order) => folded((order * speed) / turn, rate)),
  );
}

/** A peak that a noise of its width and strength makes stands so many dB over the floor. */
function toneAbove(flight: RandomFlight, axis: Axis): number {
  const [tone] = flight.craft.shaking.frame;
  if (tone === undefined) return Number.NEGATIVE_INFINITY;
  const width = Math.max(1, Math.PI * tone.damping * tone.frequency);
  return decibels(tone.strength[axis] ** 2 / width / floorOf(flight));
}

/** Enough to stand out of noise and motors. */
const clear = 15;

const peaksAbout = (report: RecordingReport, axis: Axis): readonly Peak[] =>
  report.noise.told?.find((one) => one.axis === axis)?.peaks ?? [];

/** The axis on which something is loudest. */
function loudest(measure: (axis: Axis) => number): Axis {
  return [...axes].sort((one, other) => measure(other) - measure(one))[0] ?? 'roll';
}

const steadyTone: Quantity = {
  name: 'steady tone',
  tolerance: { off: 1 },
  of(flight, report) {
    const [frequency = 0] = flight.truth.tones;
    const axis = loudest((one) => toneAbove(flight, one));
    const isLost = frequency > 0.47 * flight.rate || frequency > 1.2 * cutoffOf(flight);
    const isMasked = motorTones(flight).some((tone) => Math.abs(tone / frequency - 1) < 0.07);
    if (isLost || isMasked || toneAbove(flight, axis) < clear) return null;
    const near = peaksAbout(report, axis)
      .filter(({ order, frequency: { likely } }) => order === null && Math.abs(likely - frequency) < 6)
      .sort((one, other) => other.aboveFloor.likely - one.aboveFloor.likely);
    return { truth: frequency, span: near[0]?.frequency ?? null };
  },
};

function cutoffOf(flight: RandomFlight): number {
  const [filter] = flight.craft.board.gyroFilters;
  return hasUnfiltered(flight) || filter?.kind !== 'butterworth' ? Number.POSITIVE_INFINITY : filter.cutoff;
}

/** Where motors turn evenly all the time nobody can say what turns with them: least share between slow and fast. */
const leastUneven = 0.12;

function speedsMove(flight: RandomFlight): boolean {
  const speed = flight.rows.columns.get('speed.1');
  if (!hasSpeeds(flight) || speed === undefined) return false;
  const rising = speed.filter((_, row) => row % 20 === 0).sort();
  const at = (share: number) => rising[Math.floor(share * (rising.length - 1))] ?? 0;
  return at(0.95) - at(0.3) > leastUneven * at(0.5);
}

/** How far the tone of the loudest motor stands out once speeds have spread it by so much, dB. */
function orderAbove(flight: RandomFlight, blade: boolean): number {
  const { craft, truth } = flight;
  const loud = Math.max(...craft.motors.map(({ shaftTone, bladeTone }) => (blade ? bladeTone : shaftTone)));
  const frequency = ((blade ? craft.propeller.blades : 1) * (truth.meanSpeeds[0] ?? 0)) / turn;
  return decibels(loud ** 2 / 2 / (0.04 * frequency) / floorOf(flight));
}

/** Motor tones of every order against what the report calls an order near it. */
function order(name: string, blade: boolean): Quantity {
  return {
    name,
    tolerance: { share: 0.02 },
    of(flight, report) {
      const { craft, truth, rate } = flight;
      const wanted = blade ? craft.propeller.blades : 1;
      const frequency = (wanted * (truth.meanSpeeds[0] ?? 0)) / turn;
      const [tone = 0] = truth.tones;
      const seen = folded(frequency, rate);
      const isSeldom = rate < 300;
      const isLost = isSeldom || seen < 30 || seen > 0.46 * rate || Math.abs(seen / tone - 1) < 0.08;
      if (isLost || !speedsMove(flight) || !hasUnfiltered(flight) || orderAbove(flight, blade) < clear)
        return null;
      const near = axes
        .flatMap((axis) => peaksAbout(report, axis))
        .flatMap((peak) => (peak.order === null ? [] : [{ ...peak, order: peak.order }]))
        .filter((peak) => Math.abs(peak.order.likely / wanted - 1) < 0.15)
        .sort((one, other) => other.aboveFloor.likely - one.aboveFloor.likely);
      return { truth: wanted, span: near[0]?.order ?? null };
    },
  };
}

function spanOf(answer: MeasuredAnswer<MeasuredSpan> | undefined): MeasuredSpan | null {
  return answer?.told ?? null;
}

const lag: Quantity = {
  name: 'motor time constant',
  tolerance: { share: 0.1 },
  of(flight, report) {
    if (!hasSpeeds(flight) || flight.rate < 300) return null;
    const { up, down } = flight.truth.lag;
    // Small steps up and down alike: the mean of how fast it answers either way.
    const truth = (1000 * 2) / (1 / up + 1 / down);
    const motor = report.motors.told?.find((one) => one.motor === 1 + (flight.seed % 4));
    return { truth, span: spanOf(motor?.lag) };
  },
};

/** By how much the load of the pack moves, V, when it moves for a second or longer. */
function packSwing(flight: RandomFlight): number {
  const current = flight.rows.columns.get('current') ?? new Float64Array(0);
  const size = Math.round(flight.rate);
  const means: number[] = [];
  for (let from = 0; from + size <= current.length; from += size)
    means.push(current.subarray(from, from + size).reduce((sum, one) => sum + one, 0) / size);
  const rising = means.sort((one, other) => one - other);
  const at = (share: number) => rising[Math.floor(share * (rising.length - 1))] ?? 0;
  return flight.truth.resistanceAtTenSeconds * (at(0.95) - at(0.05));
}

const resistance: Quantity = {
  name: 'resistance at 10 s',
  tolerance: { share: 0.1 },
  of(flight, report) {
    if (packSwing(flight) < 0.1) return null;
    return {
      truth: 1000 * flight.truth.resistanceAtTenSeconds,
      span: spanOf(report.pack.told?.resistanceAtTenSeconds),
    };
  },
};

const resistanceAtOnce: Quantity = {
  name: 'resistance at 1 s',
  tolerance: { share: 0.1 },
  of(flight, report) {
    if (packSwing(flight) < 0.1) return null;
    return {
      truth: 1000 * flight.truth.resistanceAtOneSecond,
      span: spanOf(report.pack.told?.resistanceAtOneSecond),
    };
  },
};

const hover: Quantity = {
  name: 'hover throttle',
  tolerance: { share: 0.1 },
  of: (flight, report) => ({
    truth: 100 * flight.truth.hoverThrottle,
    span: report.hover.told?.throttle ?? null,
  }),
};

const balance: Quantity = {
  name: 'balance',
  tolerance: { off: 2 },
  of(flight, report) {
    const index = flight.seed % 4;
    const motor = report.motors.told?.find((one) => one.motor === index + 1);
    return { truth: 100 * (flight.truth.harder[index] ?? 0), span: motor?.harder ?? null };
  },
};

const charge: Quantity = {
  name: 'charge used',
  tolerance: { share: 0.1 },
  of: (flight, report) => ({
    truth: flight.truth.usedCharge / 3.6,
    span: spanOf(report.pack.told?.usedCharge),
  }),
};

export const quantities: readonly Quantity[] = [
  steadyTone,
  order('order of the shaft', false),
  order('order of the blades', true),
  lag,
  resistance,
  resistanceAtOnce,
  hover,
  balance,
  charge,
  ...following,
];
