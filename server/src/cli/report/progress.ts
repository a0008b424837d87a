import type { Terminal } from '../terminal';

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
  constructor(
    private readonly terminal: Pick<Terminal, 'show' | 'canShowProgress'>,
    private readonly now: () => number = Date.now,
  ) {}

  /** Does something for each script, one after the other. */
  async over<T, R>(scripts: readonly T[], each: (script: T) => Promise<R>): Promise<readonly R[]> {
    const done: R[] = [];
    let due = this.now() + patience;
    let isShown = false;
    try {
      for (const script of scripts) {
        if (this.terminal.canShowProgress && this.now() >= due) {
          this.terminal.show(`${eraseLine}${done.length} of ${scripts.length} scripts checked`);
          isShown = true;
          due = this.now() + pause;
        }
        done.push(await each(script));
      }
      return done;
    } finally {
      if (isShown) this.terminal.show(eraseLine);
    }
  }
}
