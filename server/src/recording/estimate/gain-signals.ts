import type { CraftView } from '../../craft/view';
import type { AxisName } from '../../figures/axis-names';
import { CrossSpectra } from '../../physics/cross-spectrum';
import { usualWelch } from '../../physics/welch';
import type { Told } from '../report';
import type { Commands } from './commands';
import { type FlightRows, segmentStarts } from './flight-rows';
import { type ChangedGains, situationRows } from './gain-situations';
import { type PairSums, pairSums } from './pair-sums';
import { told, withheld } from './span';

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
  readonly segments: number;
  readonly seconds: number;
}

/** Long enough for an integral, and short enough to find some in which no motor is at a limit, s. */
const segmentSeconds = 0.7;
const mostBlocks = 12;
const fewestSegments = 12;
/** More segments tell no more: every second, third, … is taken. */
const mostSegments = 1500;
const inOneGo = 24;

export function* gainSpectra(
  rows: FlightRows,
  view: CraftView,
  axis: AxisName,
  commands: Commands,
): Generator<void, Told<GainSpectra>> {
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
  const shares = situationRows(rows, view, axis, command);
  if (shares.told === null) return shares;
  yield;
  const made = signalsOf(rows, { command, wanted, gyro }, shares.told);
  yield;
  const segment = 2 ** Math.max(4, Math.round(Math.log2(segmentSeconds * rows.rate)));
  const free = segmentStarts(rows.airborne, segment, segment / 2).filter((start) => {
    for (let row = start; row < start + segment; row += 1)
      if (commands.atLimit[row] === 1 || shares.told?.leftOut[row] === 1) return false;
    return true;
  });
  const every = Math.ceil(free.length / mostSegments);
  const starts = every <= 1 ? free : free.filter((_, at) => at % every === 0);
  if (starts.length < fewestSegments) return tooFew(commands, (starts.length * segment) / 2 / rows.rate);
  const setup = usualWelch(rows.rate, segment);
  const count = Math.min(mostBlocks, Math.floor(starts.length / 3));
  const blocks = Array.from({ length: count }, () => new CrossSpectra(setup, signals));
  for (const [at, start] of starts.entries()) {
    if (at % inOneGo === inOneGo - 1) yield;
    blocks[Math.floor((at * count) / starts.length)]?.add(made, start);
  }
  return told(
    {
      axis,
      rate: rows.rate,
      isUnfiltered: filtered === null,
      blocks: blocks.filter((one) => one.segments > 0).map(pairSums),
      segments: blocks.reduce((sum, one) => sum + one.segments, 0),
      seconds: (starts.length * segment) / 2 / rows.rate,
    },
    '',
  );
}

const none = withheld('The axis has no motors of its own.', 'Look at craft.layout.');

function tooFew({ limited }: Commands, seconds: number): Told<never> {
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

/**
 * What goes by a share that changes is taken times it, so that the gains themselves stay what is looked for. Sums and
 * slopes are taken row by row: a window then leaves what belongs together together.
 */
function signalsOf(
  { rate, airborne }: FlightRows,
  { command, wanted, gyro }: AxisColumns,
  { proportional, integral, derivative }: ChangedGains,
): readonly Float64Array[] {
  const made = Array.from({ length: signals }, () => new Float64Array(command.length).fill(Number.NaN));
  const at = (place: number) => made[place] as Float64Array;
  for (const { from, to } of airborne) {
    let [wantedSum, gyroSum] = [0, 0];
    for (let row = from; row < to; row += 1) {
      const [ask, turn] = [wanted[row] ?? Number.NaN, gyro[row] ?? Number.NaN];
      const [p, i, d] = [proportional?.[row] ?? 1, integral?.[row] ?? 1, derivative?.[row] ?? 1];
      if (!Number.isNaN(ask)) wantedSum += (i * ask) / rate;
      if (!Number.isNaN(turn)) gyroSum += (i * turn) / rate;
      at(gainSignal.command)[row] = command[row] ?? Number.NaN;
      at(gainSignal.wanted)[row] = p * ask;
      at(gainSignal.gyro)[row] = p * turn;
      at(gainSignal.wantedSum)[row] = wantedSum;
      at(gainSignal.gyroSum)[row] = gyroSum;
      const [before, after] = [Math.max(from, row - 1), Math.min(to - 1, row + 1)];
      const slope = (values: Float32Array) =>
        (((values[after] ?? Number.NaN) - (values[before] ?? Number.NaN)) * rate) /
        Math.max(1, after - before);
      at(gainSignal.wantedSlope)[row] = slope(wanted);
      at(gainSignal.gyroSlope)[row] = d * slope(gyro);
      at(gainSignal.bent)[row] = p * (ask - turn) * Math.abs(ask - turn);
    }
  }
  return made;
}
