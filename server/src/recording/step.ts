/** How far long work on a recording is. What takes more than a few milliseconds is a generator of these. */
export interface RecordingStep {
  /** From 0 to 1. */
  readonly share: number;
  /** What is done, in words: `reading`, `noise about roll`. */
  readonly doing: string;
}
