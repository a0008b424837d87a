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
} from '../protocol';
import type { OnServerFault } from '../server';
import type { Session } from '../session';

type AllAnswers = ReturnType<typeof import('./answers').answersOnDemand>;

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
  const register = <P, R>(
    type: RequestType<P, R, void>,
    answer: (all: AllAnswers) => RequestHandler<P, R, void>,
  ) => connection.onRequest(type, async (params, token) => answer(await answers())(params, token));

  connection.onRequest(boardsRequest, async (token) => (await answers()).boards(token));
  connection.onRequest(parametersRequest, async (token) => (await answers()).parameters(token));
  register(boardTextRequest, (all) => all.boardText);
  register(readRequest, (all) => all.read);
  register(proveRequest, (all) => all.prove);
  register(learnRequest, (all) => all.learn);
  register(makeProfileRequest, (all) => all.makeProfile);

  register(sheetRequest, (all) => all.sheet);
  register(tryableRequest, (all) => all.tryable);
  register(tryRequest, (all) => all.tried);
  register(compareRequest, (all) => all.compare);
  register(hoverElsewhereRequest, (all) => all.hoverElsewhere);

  register(flightFormRequest, (all) => all.flightForm);
  register(flightAnswerRequest, (all) => all.flightAnswer);
  register(noteFlightRequest, (all) => all.noteFlight);

  register(benchCardRequest, (all) => all.benchCard);
  register(keepReadingsRequest, (all) => all.keepReadings);
}

/** What is wanted first loads it. */
function once<T>(load: () => Promise<T>): () => Promise<T> {
  let loaded: Promise<T> | null = null;
  return () => {
    loaded ??= load();
    return loaded;
  };
}
