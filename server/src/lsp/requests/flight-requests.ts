import { answerFault, flightEdit, flightForm, flownRecord } from '../../features/flight/note-flight';
import type { Snapshot } from '../../features/snapshot';
import type {
  FlightNoted,
  FlightToNote,
  flightAnswerRequest,
  flightFormRequest,
  noteFlightRequest,
} from '../protocol';
import type { OnServerFault } from '../server';
import type { Session } from '../session';
import type { Answers } from './on-demand';
import { answering } from './request';

export interface FlightAnswers {
  readonly flightForm: Answers<typeof flightFormRequest>;
  readonly flightAnswer: Answers<typeof flightAnswerRequest>;
  readonly noteFlight: Answers<typeof noteFlightRequest>;
}

/** Notes of flights. */
export function flightAnswers(session: Session, onFault: OnServerFault): FlightAnswers {
  return {
    flightForm: answering(session, onFault, 'what to note of a flight', ({ snapshot }, { record, today }) =>
      flightForm(snapshot, record, today),
    ),
    flightAnswer: answering(session, onFault, 'an answer about a flight', ({ snapshot }, answer) =>
      answerFault(snapshot.catalog, answer),
    ),
    noteFlight: answering(session, onFault, 'noting a flight', ({ snapshot }, flight) =>
      notedFlight(session, snapshot, flight),
    ),
  };
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
