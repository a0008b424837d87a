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

/** What the pilot has changed about the page; the editor keeps it through hiding, moving and reload. */
export interface PageState {
  /** Folds that stand otherwise than at first. */
  readonly toggled: readonly string[];
  readonly scroll: number;
}

export function readState(): PageState {
  const state = api.getState();
  const isOurs = typeof state === 'object' && state !== null && 'toggled' in state && 'scroll' in state;
  return isOurs ? (state as PageState) : { toggled: [], scroll: 0 };
}

export function writeState(change: Partial<PageState>): void {
  api.setState({ ...readState(), ...change });
}
