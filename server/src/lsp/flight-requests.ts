import type { Connection } from 'vscode-languageserver';
import { answerFault, flightEdit, flightForm, flownRecord } from '../features/note-flight';
import type { Snapshot } from '../features/snapshot';
import {
  type FlightNoted,
  type FlightToNote,
  flightAnswerRequest,
  flightFormRequest,
  noteFlightRequest,
} from './protocol';
import { answering } from './request';
import type { OnServerFault } from './server';
import type { Session } from './session';

/** Notes of flights. */
export function registerFlightRequests(
  connection: Connection,
  session: Session,
  onFault: OnServerFault,
): void {
  connection.onRequest(
    flightFormRequest,
    answering(session, onFault, 'what to note of a flight', ({ snapshot }, { record, today }) =>
      flightForm(snapshot, record, today),
    ),
  );
  connection.onRequest(
    flightAnswerRequest,
    answering(session, onFault, 'an answer about a flight', ({ snapshot }, answer) =>
      answerFault(snapshot.catalog, answer),
    ),
  );
  connection.onRequest(
    noteFlightRequest,
    answering(session, onFault, 'noting a flight', ({ snapshot }, flight) =>
      notedFlight(session, snapshot, flight),
    ),
  );
}

/** The edit that notes a flight, for the text as it stands. */
export function notedFlight(
  session: Session,
  snapshot: Snapshot,
  { name, pack, answers }: FlightToNote,
): FlightNoted | null {
  const version = session.workspace.get(snapshot.uri)?.version;
  if (version === undefined) return null;
  const { start, end, text } = flightEdit(snapshot, name, answers);
  const range = session.clientRange(snapshot.script, { start, end });
  const record = `${JSON.stringify(flownRecord(snapshot, name, pack), null, 2)}\n`;
  return { version, range, newText: text, record };
}
