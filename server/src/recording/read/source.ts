/** Where the bytes of a recording come from: a file, the editor's file system, a test. It can be read more than once. */
export interface RecordingSource {
  /** What people call it: a file's name. */
  readonly name: string;
  /** In bytes; null where nobody knows before the end. */
  readonly size: number | null;
  /** All bytes in order, in pieces of any length. */
  bytes(): AsyncIterable<Uint8Array>;
}

/** How others get their turn while a file is read, since nothing here looks at a clock. */
export interface ReadingPace {
  /**
   * Called every few milliseconds with how many bytes have been read. What it promises is awaited; it rejects to end
   * the reading, which then rejects with the same reason.
   */
  turn(bytesRead: number): Promise<void> | undefined;
}

/** For callers that nobody waits for. */
export const unhurried: ReadingPace = { turn: () => undefined };

/** Why nothing can be told of a file: its message is a finished sentence that says how to mend it. */
export class UnreadableRecording extends Error {}
