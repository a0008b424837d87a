import {
  answerFault,
  type FlightAnswer,
  type FlightForm,
  flightEdit,
  flightForm,
  flownRecord,
} from '../../features/flight/note-flight';
import type { FlightNoted, FlightToNote, LastFlight } from '../protocol';
import type { Context } from './row';

export function flightFormOf({ snapshot }: Context, { record, today }: LastFlight): FlightForm {
  return flightForm(snapshot, record, today);
}

export function flightAnswerFault({ snapshot }: Context, answer: FlightAnswer): string | null {
  return answerFault(snapshot.catalog, answer);
}

/** The edit that notes a flight, for the text as it stands. */
export function noteFlight(
  { session, snapshot }: Context,
  { name, pack, answers }: FlightToNote,
): FlightNoted | null {
  const version = session.workspace.get(snapshot.uri)?.version;
  if (version === undefined) return null;
  const { start, end, text } = flightEdit(snapshot, name, answers);
  const range = session.clientRange(snapshot.script, { start, end });
  const record = `${JSON.stringify(flownRecord(snapshot, name, pack), null, 2)}\n`;
  return { version, range, newText: text, record };
}
