import type { CraftView } from '../../../craft/view';
import type { AxisName } from '../../../figures/axis-names';
import { CrossSpectra } from '../../../physics/cross-spectrum';
import { usualWelch, type WelchSetup } from '../../../physics/welch';
import type { MeasuredAnswer } from '../../report';
import type { Commands } from '../commands';
import { type FlightRows, segmentStarts } from '../flight-rows';
import { measuredBy, withheld } from '../span';
import { type ChangedGains, situationRows } from './gain-situations';
import { type PairSums, pairSums } from './pair-sums';

/** The signals of an axis, by their places in the sums. */
export const gainSignal = {
  command: 0,
  wanted: 1,
  gyro: 2,
  wantedSum: 3,
  gyroSum: 4,
  wantedSlope: 5,
  gyroSlope: 6,
  bent: 7,
} as const;
const signals = Object.keys(gainSignal).length;

/** How an axis was commanded, what was asked of it and how it turned, as cross spectra of parts of the flight. */
export interface GainSpectra {
  readonly axis: AxisName;
  readonly rate: number;
  /** Whether the gyro is the one before the board's filters. */
  readonly isUnfiltered: boolean;
  /** Parts of the flight one after the other, with about as many segments each. */
  readonly blocks: readonly PairSums[];
  readonly seconds: number;
}

/** Long enough for an integral, and short enough to find some in which no motor is at a limit, s. */
const segmentSeconds = 0.7;
const mostBlocks = 12;
const fewestSegments = 12;
/** More segments tell no more: every second, third, … is taken. */
const mostSegments = 800;
/** Rows a second that tell enough: more are taken together, Hz. */
const enough = 250;
const inOneGo = 16;
const startsInOneGo = 100;

/** Cross spectra of what the loop took and gave about an axis, by parts of the flight; or why there are none. */
export function* gainSpectra(
  rows: FlightRows,
  view: CraftView,
  axis: AxisName,
  commands: Commands,
  /** Rows in which the derivative was held by its limit; null: none. */
  held: Uint8Array | null,
): Generator<void, MeasuredAnswer<GainSpectra>> {
  const command = commands.of.get(axis);
  const wanted = rows.channel(`wanted.${axis}`);
  const filtered = rows.channel(`gyro.${axis}`);
  const gyro = filtered ?? rows.channel(`unfiltered-gyro.${axis}`);
  if (command === undefined) return commands.withoutYaw ?? none;
  if (wanted === null)
    return withheld(
      `No column says which rate was asked for about ${axis}.`,
      'Log what the sticks ask for, beside the gyro.',
    );
  if (gyro === null)
    return withheld(`No column says how it turns about ${axis}.`, 'Log the gyro about all three axes.');
  const shares = yield* situationRows(rows, view, axis, command);
  if (shares.told === null) return shares;
  yield;
  const inOne = Math.max(1, Math.floor(rows.rate / enough));
  const length = 2 ** Math.max(4, Math.round(Math.log2((segmentSeconds * rows.rate) / inOne)));
  const segment = inOne * length;
  const hop = Math.floor(segment / 2);
  const marks = [commands.atLimit, shares.told.leftOut, ...(held === null ? [] : [held])];
  const starts = yield* freeStarts(segmentStarts(rows.airborne, segment, hop), segment, marks);
  const seconds = (starts.length * hop) / rows.rate;
  if (starts.length < fewestSegments)
    return held === null ? tooFew(commands, seconds) : heldTooOften(seconds);
  const { told } = shares;
  const blocks = yield* blocksOf(starts, usualWelch(rows.rate / inOne, length), (buffers, start) =>
    fill(buffers, { command, wanted, gyro }, told, { start, inOne, rate: rows.rate }),
  );
  return measuredBy({ axis, rate: rows.rate, isUnfiltered: filtered === null, blocks, seconds }, '');
}

/** The cross spectra of the segments, summed over parts of the flight. `fillBuffers` writes the signals of a segment. */
function* blocksOf(
  starts: readonly number[],
  setup: WelchSetup,
  fillBuffers: (buffers: readonly Float64Array[], start: number) => void,
): Generator<void, readonly PairSums[]> {
  const count = Math.min(mostBlocks, Math.floor(starts.length / 3));
  const blocks = Array.from({ length: count }, () => new CrossSpectra(setup, signals));
  const buffers = Array.from({ length: signals }, () => new Float64Array(setup.segment));
  for (const [at, start] of starts.entries()) {
    if (at % inOneGo === inOneGo - 1) yield;
    fillBuffers(buffers, start);
    blocks[Math.floor((at * count) / starts.length)]?.add(buffers, 0);
  }
  const sums: PairSums[] = [];
  for (const one of blocks) {
    yield;
    if (one.segments > 0) sums.push(pairSums(one));
  }
  return sums;
}

/** The segments with none of their rows marked; of very many, some evenly spread. */
function* freeStarts(
  all: Iterable<number>,
  segment: number,
  marks: readonly Uint8Array[],
): Generator<void, readonly number[]> {
  const free: number[] = [];
  for (const start of all) {
    if (isFree(start, start + segment, marks)) free.push(start);
    if (free.length % startsInOneGo === 0) yield;
  }
  const every = Math.ceil(free.length / mostSegments);
  return every <= 1 ? free : free.filter((_, at) => at % every === 0);
}

function isFree(from: number, to: number, marks: readonly Uint8Array[]): boolean {
  for (const marked of marks) for (let row = from; row < to; row += 1) if (marked[row] === 1) return false;
  return true;
}

const none = withheld('The axis has no motors of its own.', 'Look at craft.layout.');

function heldTooOften(seconds: number): MeasuredAnswer<never> {
  return withheld(
    `Only ${seconds.toFixed(1)} s in which the derivative was not held by its limit (derivative.limit).`,
    'Fly half a minute of smaller steps in a calm hover, with an observer beside.',
  );
}

function tooFew({ limited }: Commands, seconds: number): MeasuredAnswer<never> {
  const share = Math.round(100 * limited);
  return limited > 0.2
    ? withheld(
        `Only ${seconds.toFixed(1)} s in which no motor was at idle or full: in ${share} % of the time one was.`,
        'Fly half a minute of small quick rolls and nods in a calm hover, with an observer beside.',
      )
    : withheld(
        `Only ${seconds.toFixed(1)} s of whole rows in ordinary flight.`,
        'Record half a minute of small quick rolls and nods in a calm hover, with an observer beside.',
      );
}

interface AxisColumns {
  readonly command: Float32Array;
  readonly wanted: Float32Array;
  readonly gyro: Float32Array;
}

interface SignalPiece {
  readonly start: number;
  /** So many rows in the place of one: their mean. */
  readonly inOne: number;
  readonly rate: number;
}

/**
 * All signals of a piece of the flight. What goes by a share that changes is taken times it, so that the gains themselves
 * stay what is looked for; sums and slopes are taken row by row, and a mean of rows is the same of all of them: what belongs
 * together stays together.
 */
function fill(
  room: readonly Float64Array[],
  { command, wanted, gyro }: AxisColumns,
  { proportional, integral, derivative }: ChangedGains,
  { start, inOne, rate }: SignalPiece,
): void {
  const length = room[0]?.length ?? 0;
  const slope = (values: Float32Array, row: number) =>
    (((values[row + 1] ?? Number.NaN) - (values[row - 1] ?? Number.NaN)) * rate) / 2;
  let [wantedSum, gyroSum] = [0, 0];
  for (const values of room) values.fill(0);
  const add = (which: number, at: number, value: number) => {
    const values = room[which];
    if (values !== undefined) values[at] = (values[at] ?? 0) + value / inOne;
  };
  for (let step = 0; step < length * inOne; step += 1) {
    const [row, at] = [start + step, Math.floor(step / inOne)];
    const [ask, turn] = [wanted[row] ?? Number.NaN, gyro[row] ?? Number.NaN];
    const [p, i, d] = [proportional?.[row] ?? 1, integral?.[row] ?? 1, derivative?.[row] ?? 1];
    wantedSum += (i * ask) / rate;
    gyroSum += (i * turn) / rate;
    add(gainSignal.command, at, command[row] ?? Number.NaN);
    add(gainSignal.wanted, at, p * ask);
    add(gainSignal.gyro, at, p * turn);
    add(gainSignal.wantedSum, at, wantedSum);
    add(gainSignal.gyroSum, at, gyroSum);
    add(gainSignal.wantedSlope, at, slope(wanted, row));
    add(gainSignal.gyroSlope, at, d * slope(gyro, row));
    add(gainSignal.bent, at, p * (ask - turn) * Math.abs(ask - turn));
  }
}
