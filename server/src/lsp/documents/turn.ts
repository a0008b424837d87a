/**
 * Runs something once what is waiting already has had its turn. A web worker lacks `setImmediate`; there the
 * connection takes its messages by `setTimeout` as well.
 */
export function nextTurn(run: () => void): void {
  if (typeof setImmediate === 'function') setImmediate(run);
  else setTimeout(run, 0);
}

/** Whether messages are still coming in. The connection takes one in each turn of the event loop. */
export class Traffic {
  private isQuiet = true;

  /** A message is being dealt with. */
  noted(): void {
    this.isQuiet = false;
  }

  /** Whether none came since this was asked last. Asked once in each turn: then none is waiting either. */
  isOver(): boolean {
    const { isQuiet } = this;
    this.isQuiet = true;
    return isQuiet;
  }
}
