import type { RecordingFindingWords } from '../catalog/model/recording-columns';
import type { CraftView } from '../craft/view';
import { expectedOf } from './estimate/beside-script';
import { type FlightRows, flightRows } from './estimate/flight-rows';
import { measuredGains } from './estimate/gains/gains';
import { hoverOf } from './estimate/hover';
import { estimateRemarks } from './estimate/left-out';
import { linkKept } from './estimate/link';
import { motorsOf } from './estimate/motors/motors';
import { noiseOf } from './estimate/noise/noise';
import { doing } from './estimate/noise/shaken';
import { packGave } from './estimate/pack/pack';
import { responsesOf } from './estimate/response/response';
import { withheld } from './estimate/span';
import { findingsOf } from './find/findings-of';
import { useMeasured } from './find/use-measured';
import type { Recording } from './recording';
import type { RecordingReport } from './report';
import type { RecordingStep } from './step';

/**
 * What one flight of a recording says, numbered from 1, beside the craft that was flown; null: none is known. `words`: of
 * the findings, from the catalogue. A generator that pauses every few milliseconds, and can be left.
 */
export function* reportOf(
  recording: Recording,
  flight: number,
  view: CraftView | null,
  words: readonly RecordingFindingWords[],
): Generator<RecordingStep, RecordingReport> {
  const rows = flightRows(recording, flight);
  if (rows === null) return emptyReport(recording, flight);
  const { noise, maps } = yield* noiseOf(rows, view);
  const motors = yield* motorsOf(rows);
  const parts = expectedOf(view);
  const pack = yield* doing(packGave(rows, parts), 0.92, 'pack');
  const hover = yield* doing(hoverOf(rows, parts), 0.94, 'the hover');
  const link = yield* doing(linkKept(rows), 0.96, 'link');
  const responses = yield* responsesOf(rows, view);
  const gains = yield* measuredGains(rows, view);
  const report: RecordingReport = {
    ...headOf(recording, flight, rows),
    findings: [],
    noise,
    noiseMaps: maps,
    motors,
    pack,
    hover,
    link,
    responses,
    gains,
    proposals: [],
  };
  yield { share: 0.98, doing: 'findings' };
  return {
    ...report,
    findings: findingsOf(report, view, words),
    proposals: view === null ? [] : useMeasured(report, view),
  };
}

function headOf(recording: Recording, flight: number, rows: FlightRows | null) {
  return {
    name: recording.name,
    flight,
    flights: recording.flights.length,
    seconds: rows?.seconds ?? 0,
    rate: rows?.rate ?? 0,
    isSimulated: recording.isSimulated === true,
    leftOut: [...recording.leftOut, ...(rows === null ? [] : estimateRemarks(recording, flight, rows))],
  };
}

function emptyReport(recording: Recording, flight: number): RecordingReport {
  const none = withheld(
    'No two rows of this flight follow each other in time.',
    'Look at the time column, and record again.',
  );
  return {
    ...headOf(recording, flight, null),
    findings: [],
    noise: none,
    noiseMaps: none,
    motors: none,
    pack: none,
    hover: none,
    link: none,
    responses: none,
    gains: none,
    proposals: [],
  };
}
