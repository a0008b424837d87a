import type { CancellationToken } from 'vscode-languageserver';
import { stopIfCancelled } from '../cancelled';
import { nextTurn } from '../documents/turn';

/** How long work may go on before others get their turn, ms. */
const slice = 8;

/** Lets other messages in between, and ends when the client has lost interest. */
export async function inSlices<S, T>(
  work: Generator<S, T>,
  token: CancellationToken,
  report: (step: S) => Promise<void>,
): Promise<T> {
  let since = performance.now();
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
    if (performance.now() - since < slice) continue;
    await report(step.value);
    await new Promise<void>(nextTurn);
    stopIfCancelled(token);
    since = performance.now();
  }
}

/** The same for work that asks itself whether others want their turn: called as often as it likes. */
export function paceOf(token: CancellationToken, report: (done: number) => Promise<void>) {
  let since = performance.now();
  return {
    turn: (done: number): Promise<void> | undefined => {
      if (performance.now() - since < slice) return undefined;
      return (async () => {
        await report(done);
        await new Promise<void>(nextTurn);
        stopIfCancelled(token);
        since = performance.now();
      })();
    },
  };
}
