/**
 * Asks again until the answer is neither undefined nor false, and gives it back.
 * @throws naming what was waited for, once the deadline (milliseconds) is past.
 */
export async function until<T>(
  what: string | (() => string),
  ask: () => T | PromiseLike<T>,
  deadline = 30_000,
): Promise<Exclude<T, undefined | false>> {
  const end = Date.now() + deadline;
  for (;;) {
    const answer = await ask();
    if (answer !== undefined && answer !== false) return answer as Exclude<T, undefined | false>;
    if (Date.now() > end) throw new Error(`waited in vain for ${typeof what === 'string' ? what : what()}`);
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
}
