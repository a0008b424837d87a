import type {
  Connection,
  RequestHandler,
  RequestHandler0,
  RequestType,
  RequestType0,
} from 'vscode-languageserver';
import {
  benchCardRequest,
  boardsRequest,
  boardTextRequest,
  compareRequest,
  flightAnswerRequest,
  flightFormRequest,
  hoverElsewhereRequest,
  keepReadingsRequest,
  learnRequest,
  makeProfileRequest,
  noteFlightRequest,
  parametersRequest,
  proveRequest,
  readRequest,
  sheetRequest,
  tryableRequest,
  tryRequest,
} from './protocol';
import type { OnServerFault } from './server';
import type { Session } from './session';

/** What answers a request. */
export type Answers<T> =
  T extends RequestType<infer P, infer R, infer E>
    ? RequestHandler<P, R, E>
    : T extends RequestType0<infer R, infer E>
      ? RequestHandler0<R, E>
      : never;

/** Requests that wait for a person to open or start something: what answers them is loaded with the first. */
export function registerOnDemand(connection: Connection, session: Session, onFault: OnServerFault): void {
  const answers = once(async () => (await import('./answers')).answersOnDemand(session, onFault));

  connection.onRequest(boardsRequest, async (token) => (await answers()).boards(token));
  connection.onRequest(boardTextRequest, async (params, token) => (await answers()).boardText(params, token));
  connection.onRequest(readRequest, async (params, token) => (await answers()).read(params, token));
  connection.onRequest(proveRequest, async (params, token) => (await answers()).prove(params, token));
  connection.onRequest(learnRequest, async (params, token) => (await answers()).learn(params, token));
  connection.onRequest(parametersRequest, async (token) => (await answers()).parameters(token));
  connection.onRequest(makeProfileRequest, async (params, token) =>
    (await answers()).makeProfile(params, token),
  );

  connection.onRequest(sheetRequest, async (params, token) => (await answers()).sheet(params, token));
  connection.onRequest(tryableRequest, async (params, token) => (await answers()).tryable(params, token));
  connection.onRequest(tryRequest, async (params, token) => (await answers()).tried(params, token));
  connection.onRequest(compareRequest, async (params, token) => (await answers()).compare(params, token));
  connection.onRequest(hoverElsewhereRequest, async (params, token) =>
    (await answers()).hoverElsewhere(params, token),
  );

  connection.onRequest(flightFormRequest, async (params, token) =>
    (await answers()).flightForm(params, token),
  );
  connection.onRequest(flightAnswerRequest, async (params, token) =>
    (await answers()).flightAnswer(params, token),
  );
  connection.onRequest(noteFlightRequest, async (params, token) =>
    (await answers()).noteFlight(params, token),
  );

  connection.onRequest(benchCardRequest, async (params, token) => (await answers()).benchCard(params, token));
  connection.onRequest(keepReadingsRequest, async (params, token) =>
    (await answers()).keepReadings(params, token),
  );
}

/** What is wanted first loads it. */
function once<T>(load: () => Promise<T>): () => Promise<T> {
  let loaded: Promise<T> | null = null;
  return () => {
    loaded ??= load();
    return loaded;
  };
}
