import type { CraftView } from '../../craft/view';
import type { MeasuredFlight, MeasuredLoops } from '../measured-flight';
import type { Recording } from '../recording';
import type { AxisResponse, MeasuredAnswer } from '../report';
import type { RecordingStep } from '../step';
import { flightRows } from './flight-rows';
import { unfilteredNoise } from './noise/unfiltered';
import { responsesOf } from './response/response';
import { measuredBy, withheld } from './span';

/** What of a flight, numbered from 1, setups are weighed by, for the craft that was flown. */
export function* measuredFlight(
  recording: Recording,
  flight: number,
  view: CraftView,
): Generator<RecordingStep, MeasuredFlight> {
  const rows = flightRows(recording, flight);
  if (rows === null)
    return {
      noise: withheld(
        `${recording.name} holds no flight whose rows follow each other in time.`,
        'Look at its time column, and record again.',
      ),
      loops: withheld('No rows of it follow each other in time.', 'Record again.'),
    };
  const noise = yield* unfilteredNoise(rows);
  const responses = yield* responsesOf(rows, view);
  return { noise, loops: loopsOf(responses, recording.name, view.pack) };
}

function loopsOf(
  responses: MeasuredAnswer<readonly AxisResponse[]>,
  name: string,
  pack: string | null,
): MeasuredAnswer<MeasuredLoops> {
  if ('reason' in responses) return responses;
  const axes = responses.told.map(({ axis, delay, lag, margins }) => ({
    axis,
    delay: delay.told,
    lag: lag.told,
    // From the answer alone it is that of the controller that flew, whatever the script says now.
    crossover: margins.told?.by === 'controller' ? margins.told.crossover : null,
  }));
  const isKnown = axes.some(({ delay, lag, crossover }) => (delay ?? lag ?? crossover) !== null);
  if (isKnown) return measuredBy({ name, pack, axes }, responses.basis);
  const [why] = responses.told.flatMap(({ lag }) => ('reason' in lag ? [lag] : []));
  return why ?? withheld('No axis tells how its motors answer.', 'Log what the motors are told.');
}
