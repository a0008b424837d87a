import type { Terminal } from './terminal';

/** Who waits no longer than this needs no telling, in ms. */
const patience = 500;
/** Between two lines, in ms. */
const pause = 100;

const eraseLine = '\r\u001b[K';

/**
 * One line on standard error that says how far a long run has come, written over again and again and gone at the
 * end. Only for a person at a terminal: a log would fill with it.
 */
export class Progress {
  private due: number;
  private isShown = false;

  constructor(
    private readonly terminal: Pick<Terminal, 'err' | 'canShowProgress'>,
    private readonly now: () => number = Date.now,
  ) {
    this.due = now() + patience;
  }

  /** Does something for each script, in as many lanes as there are: whichever is free takes the next one. */
  async over<T, R>(
    scripts: readonly T[],
    lanes: readonly ((script: T) => Promise<R>)[],
  ): Promise<readonly R[]> {
    const results = new Array<R>(scripts.length);
    let done = 0;
    const waiting = scripts.entries();
    const run = async (each: (script: T) => Promise<R>) => {
      // All lanes take from the same iterator: none is done twice.
      for (const [index, script] of waiting) {
        this.tell(done, scripts.length);
        results[index] = await each(script);
        done += 1;
      }
    };
    try {
      await Promise.all(lanes.map(run));
      return results;
    } finally {
      if (this.isShown) this.terminal.err(eraseLine);
    }
  }

  private tell(done: number, all: number): void {
    if (!this.terminal.canShowProgress || this.now() < this.due) return;
    this.terminal.err(`${eraseLine}${done} of ${all} scripts checked`);
    this.isShown = true;
    this.due = this.now() + pause;
  }
}
