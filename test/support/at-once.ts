/** The end of work that pauses in between. */
export function atOnce<T>(work: Generator<unknown, T>): T {
  for (;;) {
    const step = work.next();
    if (step.done === true) return step.value;
  }
}
