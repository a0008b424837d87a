import type { CraftView } from '../../../craft/view';
import { type AxisName, axisNames } from '../../../figures/axis-names';
import { chainOf, lowpassAt } from '../../../figures/filter-chain';
import { lowestLowpass, stagesOf } from '../../../figures/filter-stages';
import { fromBase, unitOf } from '../../../units/unit';
import type { MeasuredAnswer, MeasuredGain } from '../../report';
import type { RecordingStep } from '../../step';
import { type Commands, commandsOf } from '../commands';
import type { FlightRows } from '../flight-rows';
import { doing } from '../noise/shaken';
import { measuredBy, withheld } from '../span';
import { atDerivativeLimit } from './derivative-limit';
import type { PathSaid } from './gain-choice';
import { type GainSpectra, gainSpectra } from './gain-signals';
import { type AxisGains, axisGains } from './gain-spans';

/** With rows that come more seldom nothing is said of how an axis is held, Hz. */
const leastRate = 40;

/** The board's own gains, in real units: what it does to its motors for what it sees. */
export function* measuredGains(
  rows: FlightRows,
  view: CraftView | null,
): Generator<RecordingStep, MeasuredAnswer<readonly MeasuredGain[]>> {
  if (axisNames.every((axis) => rows.channel(`wanted.${axis}`) === null))
    return withheld(
      'No column says which rates were asked for.',
      'Say which column does, if one that was not read holds them; else log what the sticks ask for about each axis, beside the gyro.',
    );
  if (rows.rate < leastRate)
    return withheld(
      `Rows come ${rows.rate.toPrecision(3)} times a second: between two of them the board has done too much.`,
      'Log 100 rows a second or more; for the derivative, four times the cutoff of its filters.',
    );
  const commands = yield* doing(commandsOf(rows, view), 0.965, 'what the motors were told about each axis');
  if (commands.told === null || view === null) return commands.told === null ? commands : unnamed;
  const gains: MeasuredGain[] = [];
  let seconds = 0;
  let isHeld = false;
  for (const axis of axisNames) {
    yield { share: 0.965, doing: `gains of ${axis}` };
    const work = unboundedGains(rows, view, axis, commands.told);
    const found = yield* doing(work, 0.97, `gains of ${axis}`);
    seconds = Math.max(seconds, found.seconds);
    isHeld ||= found.isHeld;
    gains.push(...all(axis, found.gains));
  }
  return measuredBy(
    gains,
    `${seconds.toFixed(0)} s in which no motor was at a limit${isHeld ? ' and no derivative held by its own' : ''}; un-mixed by ${commands.basis}`,
  );
}

interface FoundGains {
  readonly gains: AxisGains | MeasuredAnswer<never>;
  readonly seconds: number;
  /** Whether rows were left out for the derivative’s limit. */
  readonly isHeld: boolean;
}

/** More often rows at the limit of a derivative are not looked for anew. */
const mostTimes = 3;
/** A share by which a gain that has hardly changed lets nothing else stand at its limit. */
const same = 0.03;

/**
 * The gains of an axis, from rows in which its derivative was not held by its limit: which those are is known once it is known
 * what it counts, so that it is looked for until that hardly changes.
 */
function* unboundedGains(
  rows: FlightRows,
  view: CraftView,
  axis: AxisName,
  commands: Commands,
): Generator<void, FoundGains> {
  const said = pathSaid(view, axis);
  const limit = view.isSet('derivative.limit') ? view.quantityOr('derivative.limit', null) : null;
  let held: Uint8Array | null = null;
  let taken = 0;
  for (let time = 1; ; time += 1) {
    const spectra: MeasuredAnswer<GainSpectra> = yield* gainSpectra(rows, view, axis, commands, held);
    if (spectra.told === null) return { gains: spectra, seconds: 0, isHeld: held !== null };
    const gains: AxisGains | MeasuredAnswer<never> = yield* axisGains(spectra.told, said);
    const found = { gains, seconds: spectra.told.seconds, isHeld: held !== null };
    const gain: number | null = 'told' in gains ? null : (gains.derivative.told?.likely ?? null);
    if (limit === null || gain === null || time === mostTimes || gain <= (1 + same) * taken) return found;
    const { derivativeCutoff: cutoff, ofError } = said;
    const now: Uint8Array | null = yield* atDerivativeLimit(rows, axis, { gain, limit, cutoff, ofError });
    if (now === null) return found;
    held = now;
    taken = gain;
  }
}

const unnamed = withheld('No craft script was named.', 'Name the script of the craft that was flown.');

const units = { proportional: '%/(deg/s)', integral: '%/deg', derivative: '%/(deg/s^2)' } as const;
const reportedTerms = ['proportional', 'integral', 'derivative'] as const;

function all(axis: AxisName, found: AxisGains | MeasuredAnswer<never>): readonly MeasuredGain[] {
  return reportedTerms.map((term) => {
    if ('told' in found) return { axis, term, gain: found };
    const gain = found[term];
    if (gain.told === null) return { axis, term, gain };
    const { likely, low, high } = gain.told;
    const unit = units[term];
    const inUnit = (value: number) => fromBase(value, unitOf(unit));
    return {
      axis,
      term,
      gain: measuredBy({ likely: inUnit(likely), low: inUnit(low), high: inUnit(high), unit }, gain.basis),
    };
  });
}

/** What the script says of the way from gyro to command. */
function pathSaid(view: CraftView, axis: AxisName): PathSaid {
  const gyro = chainOf(view, 'gyro');
  const derivative = chainOf(view, 'derivative');
  const cutoff = lowestLowpass(view, stagesOf(view, 'derivative'))?.cutoff ?? null;
  const controlRate = view.quantityOr('control.rate', null) ?? 0;
  const feedforward = view.quantityOr('control.feedforward-cutoff', null);
  return {
    gyroFilters: gyro?.value.all(null) ?? null,
    derivativeFilters: derivative?.value.all(null) ?? null,
    derivativeCutoff: cutoff,
    feedforwardFilters:
      feedforward === null || controlRate === 0 ? [] : lowpassAt(feedforward, 'first-order', controlRate),
    controlRate,
    ofError: view.wordOr('derivative.input', 'turning-rate') === 'error',
    feedforward: view.quantityOr(`control.${axis}.feedforward`, 0) ?? 0,
  };
}
