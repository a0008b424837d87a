import {
  answerFault,
  type FlightAnswer,
  type FlightForm,
  type FlightSection,
  flightEdit,
  flightForm,
  flownRecord,
} from '../../features/flight/note-flight';
import type { FlightNoted, FlightToNote, LastFlight } from '../flight-protocol';
import type { ScriptContext } from './about-script';

export function flightFormOf({ snapshot }: ScriptContext, { record, today }: LastFlight): FlightForm {
  return flightForm(snapshot, record, today);
}

export function flightAnswerFault({ snapshot }: ScriptContext, answer: FlightAnswer): string | null {
  return answerFault(snapshot.catalog, answer);
}

/** The edit that notes a flight, for the text as it stands. */
export function noteFlight(
  context: ScriptContext,
  { name, pack, answers }: FlightToNote,
): FlightNoted | null {
  return noteFlights(context, [{ name, answers }], pack);
}

/** The same for several at once; `pack`: that of the last. */
export function noteFlights(
  { session, snapshot }: ScriptContext,
  flights: readonly FlightSection[],
  pack: string | null,
): FlightNoted | null {
  const version = session.workspace.get(snapshot.uri)?.version;
  const last = flights.at(-1);
  if (version === undefined || last === undefined) return null;
  const { start, end, text } = flightEdit(snapshot, flights);
  const range = session.clientRange(snapshot.script, { start, end });
  const record = `${JSON.stringify(flownRecord(snapshot, last.name, pack), null, 2)}\n`;
  return { version, range, newText: text, record };
}
