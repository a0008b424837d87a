/** How far the work is, from 0 to 1, and what is being done. */
export interface FindProgress {
  readonly share: number;
  readonly doing: string;
}

/** Does a part of the work, and says of it each time that it pauses: how far all is, and what is being done. */
export function* during<T>(
  work: Generator<void, T>,
  share: number,
  doing: string,
): Generator<FindProgress, T> {
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
    yield { share, doing };
  }
}
