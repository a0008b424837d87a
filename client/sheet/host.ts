import type { FromSheet, ToSheet } from './messages';

/** What a page in the editor gets to talk to its extension and to keep its state. */
interface EditorApi {
  postMessage(message: FromSheet): void;
  getState(): unknown;
  setState(state: unknown): void;
}

declare function acquireVsCodeApi(): EditorApi;

const api = acquireVsCodeApi();

export function send(message: FromSheet): void {
  api.postMessage(message);
}

export function onMessage(listener: (message: ToSheet) => void): void {
  window.addEventListener('message', (event: MessageEvent<ToSheet>) => listener(event.data));
}

/** What the pilot has folded away, and where the page was scrolled to; survives hiding and reload. */
export interface PageState {
  readonly closed: readonly string[];
  readonly scroll: number;
}

export function readState(): PageState {
  const state = api.getState();
  const isOurs = typeof state === 'object' && state !== null && 'closed' in state && 'scroll' in state;
  return isOurs ? (state as PageState) : { closed: [], scroll: 0 };
}

export function writeState(state: PageState): void {
  api.setState(state);
}
