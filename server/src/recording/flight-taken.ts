import type { Recording } from './recording';
import type { RecordingReport } from './report';

/**
 * Which flight of a file is told, counted from 1: the one that is asked for, else the longest, of several as long the
 * first. Null where the file holds none, or not so many.
 */
export function flightTaken(
  { flights, time }: Pick<Recording, 'flights' | 'time'>,
  asked: number | null,
): number | null {
  const { length } = flights;
  if (asked !== null) return Number.isInteger(asked) && asked >= 1 && asked <= length ? asked : null;
  const seconds = flights.map(({ from, to }) => (time[to - 1] ?? 0) - (time[from] ?? 0));
  return length === 0 ? null : seconds.indexOf(Math.max(...seconds)) + 1;
}

/** `dusk.csv`; of a file with several flights `flight 2 of the 3 in dusk.csv, the longest`. */
export function flightTakenText(
  file: string,
  { flight, flights }: Pick<RecordingReport, 'flight' | 'flights'>,
  asked: number | null,
): string {
  if (flights < 2) return file;
  return `flight ${flight} of the ${flights} in ${file}${asked === null ? ', the longest' : ''}`;
}
