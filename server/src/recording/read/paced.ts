/** Work that pauses every few milliseconds, so that others get their turn, and then gives what it found. */
export type Paced<T> = Generator<void, T, void>;

const piece = 1 << 16;

/** Whether it is time for a pause, by the rows that were gone through. */
export function endsPiece(row: number): boolean {
  return (row & (piece - 1)) === piece - 1;
}

/** Runs a work to its end; between its pieces others get their turn, if they want one. */
export async function runPaced<T>(work: Paced<T>, turn: () => Promise<void> | undefined): Promise<T> {
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
    const pause = turn();
    if (pause !== undefined) await pause;
  }
}
