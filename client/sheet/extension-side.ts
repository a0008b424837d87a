import type { FromSheet, ToSheet } from './messages';
import { type PageState, untouched } from './state';

declare function acquireVsCodeApi(): { postMessage(message: FromSheet): void };

const api = acquireVsCodeApi();
let state = untouched;

export function send(message: FromSheet): void {
  api.postMessage(message);
}

export function onMessage(listener: (message: ToSheet) => void): void {
  window.addEventListener('message', (event: MessageEvent<ToSheet>) => listener(event.data));
}

export function readState(): PageState {
  return state;
}

/** What the extension had kept. */
export function restoreState(kept: PageState): void {
  state = kept;
}

export function writeState(change: Partial<PageState>): void {
  state = { ...state, ...change };
  send({ kind: 'state', state });
}
