import type { Writable } from 'node:stream';
import { Message, WorkspaceDiagnosticRequest } from '../library';
import { FrameWriter } from './frame-writer';

/** Requests that came in and were not answered yet. */
export class Unanswered {
  private readonly ids = new Set<unknown>();
  private run: (() => void) | null = null;

  cameIn(message: Message): void {
    // What is answered once there is news is waited for by nobody.
    if (Message.isRequest(message) && message.method !== WorkspaceDiagnosticRequest.method)
      this.ids.add(message.id);
  }

  wentOut(message: Message): void {
    if (!Message.isResponse(message)) return;
    this.ids.delete(message.id);
    if (this.ids.size === 0) this.run?.();
  }

  /** Runs something as soon as nothing is left to answer. */
  afterLast(run: () => void): void {
    if (this.ids.size === 0) run();
    else this.run = run;
  }
}

/** Notes an answer once the stream has taken it. */
export class AnswerWriter extends FrameWriter {
  constructor(
    output: Writable,
    private readonly unanswered: Unanswered,
  ) {
    super(output);
  }

  override async write(message: Message): Promise<void> {
    await super.write(message);
    this.unanswered.wentOut(message);
  }
}
