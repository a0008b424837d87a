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

  private due: number | null = null;
  private isShown = false;

  /** Does something for each script, one after the other. */
  async over<T, R>(scripts: readonly T[], each: (script: T) => Promise<R>): Promise<readonly R[]> {
    const done: R[] = [];
    this.due = this.now() + patience;
    try {
      for (const script of scripts) {
        this.show(`${done.length} of ${scripts.length} scripts checked`);
        done.push(await each(script));
      }
      return done;
    } finally {
      this.end();
    }
  }

  /** Runs work to its end that says as it goes which share of it is done, from 0 to 1, and what it is at. */
  through<T>(work: Generator<{ readonly share: number; readonly doing: string }, T>): T {
    try {
      for (;;) {
        const step = work.next();
        if (step.done === true) return step.value;
        const { share, doing } = step.value;
        this.show(`${Math.round(100 * share)} %: ${doing}`);
      }
    } finally {
      this.end();
    }
  }

  /** Shows how far it is, once that has taken a while and not too often. */
  show(text: string): void {
    this.due ??= this.now() + patience;
    if (!this.terminal.canShowProgress || this.now() < this.due) return;
    this.terminal.show(`${eraseLine}${text}`);
    this.isShown = true;
    this.due = this.now() + pause;
  }

  end(): void {
    if (this.isShown) this.terminal.show(eraseLine);
    this.isShown = false;
  }
}
