import type { FromRecording } from './messages';

declare function acquireVsCodeApi(): { postMessage(message: FromRecording): void };

const api = acquireVsCodeApi();

export function post(message: FromRecording): void {
  api.postMessage(message);
}
