import type { CraftView } from '../craft/view';
import { flightRows } from './estimate/flight-rows';
import { noiseOf } from './estimate/noise';
import { withheld } from './estimate/span';
import type { Recording } from './recording';
import type { RecordingReport } from './report';
import type { RecordingStep } from './step';

/**
 * What one flight of a recording says, numbered from 1, beside the craft that was flown; null: none is known. A generator
 * that pauses every few milliseconds, and can be left.
 */
export function* reportOf(
  recording: Recording,
  flight: number,
  view: CraftView | null,
): Generator<RecordingStep, RecordingReport> {
  const rows = flightRows(recording, flight);
  const missing = withheld('not computed yet', '');
  const nothing = withheld(
    'No two rows of this flight follow each other in time.',
    'Look at the time column, and record again.',
  );
  const { noise, maps } = rows === null ? { noise: nothing, maps: nothing } : yield* noiseOf(rows, view);
  return {
    name: recording.name,
    flight,
    flights: recording.flights.length,
    seconds: rows?.seconds ?? 0,
    rate: rows?.rate ?? 0,
    isSimulated: recording.isSimulated === true,
    leftOut: recording.leftOut,
    findings: [],
    noise,
    noiseMaps: maps,
    motors: missing,
    pack: missing,
    hover: missing,
    link: missing,
    proposals: [],
  };
}
