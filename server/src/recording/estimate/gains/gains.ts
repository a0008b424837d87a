import type { CraftView } from '../../../craft/view';
import { type AxisName, axisNames } from '../../../figures/axis-names';
import { chainOf, lowpassAt } from '../../../figures/filter-chain';
import { lowestLowpass, stagesOf } from '../../../figures/filter-stages';
import { fromBase, unitOf } from '../../../units/unit';
import type { MeasuredGain, Told } from '../../report';
import type { RecordingStep } from '../../step';
import { commandsOf } from '../commands';
import type { FlightRows } from '../flight-rows';
import { doing } from '../noise/shaken';
import { told, withheld } from '../span';
import type { PathSaid } from './gain-choice';
import { gainSpectra } from './gain-signals';
import { type AxisGains, axisGains } from './gain-spans';

/** With rows that come more seldom nothing is said of how an axis is held, Hz. */
const leastRate = 40;

/** The board's own gains, in real units: what it does to its motors for what it sees. */
export function* measuredGains(
  rows: FlightRows,
  view: CraftView | null,
): Generator<RecordingStep, Told<readonly MeasuredGain[]>> {
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
  for (const axis of axisNames) {
    yield { share: 0.965, doing: `gains of ${axis}` };
    const spectra = yield* doing(gainSpectra(rows, view, axis, commands.told), 0.97, `gains of ${axis}`);
    if (spectra.told === null) {
      gains.push(...all(axis, spectra));
      continue;
    }
    seconds = Math.max(seconds, spectra.told.seconds);
    const found = yield* doing(axisGains(spectra.told, pathSaid(view, axis)), 0.97, `gains of ${axis}`);
    gains.push(...all(axis, found));
  }
  return told(
    gains,
    `${seconds.toFixed(0)} s in which no motor was at a limit; un-mixed by ${commands.basis}`,
  );
}

const unnamed = withheld('No craft script was named.', 'Name the script of the craft that was flown.');

const units = { proportional: '%/(deg/s)', integral: '%/deg', derivative: '%/(deg/s^2)' } as const;
const toldTerms = ['proportional', 'integral', 'derivative'] as const;

function all(axis: AxisName, found: AxisGains | Told<never>): readonly MeasuredGain[] {
  return toldTerms.map((term) => {
    if ('told' in found) return { axis, term, gain: found };
    const gain = found[term];
    if (gain.told === null) return { axis, term, gain };
    const { likely, low, high } = gain.told;
    const unit = units[term];
    const inUnit = (value: number) => fromBase(value, unitOf(unit));
    return {
      axis,
      term,
      gain: told({ likely: inUnit(likely), low: inUnit(low), high: inUnit(high), unit }, gain.basis),
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
