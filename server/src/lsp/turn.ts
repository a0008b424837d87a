/**
 * Runs something once what is waiting already has had its turn. A web worker lacks `setImmediate`; there the
 * connection takes its messages by `setTimeout` as well.
 */
export function nextTurn(run: () => void): void {
  if (typeof setImmediate === 'function') setImmediate(run);
  else setTimeout(run, 0);
}
