import {
  IPCMessageReader,
  IPCMessageWriter,
  type MessageReader,
  type MessageWriter,
} from 'vscode-languageserver/node';
import { FrameReader } from './frame-reader';
import { refusal } from './life-cycle';
import { AnswerWriter, Unanswered } from './unanswered';

/** How messages come in and go out. */
export interface Transport {
  readonly reader: MessageReader;
  readonly writer: MessageWriter;
  /** Runs something once the client is gone. */
  onGone(run: () => void): void;
}

/** The two ways to start the server; null for any other. Our own client talks over its channel to a child process. */
export function nodeTransport(args: readonly string[]): Transport | null {
  if (args.includes('--node-ipc')) return channel();
  return args.includes('--stdio') ? standardStreams() : null;
}

function channel(): Transport {
  return {
    reader: new IPCMessageReader(process),
    writer: new IPCMessageWriter(process),
    onGone: (run) => void process.once('disconnect', run),
  };
}

/** ms that answers may take after the input has ended: what waits for the client itself waits for ever. */
const patience = 30_000;

function standardStreams(): Transport {
  const unanswered = new Unanswered();
  const writer = new AnswerWriter(process.stdout, unanswered);
  const reader = new FrameReader(process.stdin, {
    onBroken: (why) => {
      logLine(`the connection is broken and ends: ${why}`);
      process.exit(1);
    },
    onNoMessage: (code, why) => {
      logLine(`left aside: ${why}`);
      void writer.write(refusal(null, code, `${why}.`));
    },
    onMessage: (message) => unanswered.cameIn(message),
    onEnd: (close) => {
      unanswered.afterLast(close);
      setTimeout(close, patience).unref();
    },
  });
  return {
    reader,
    writer,
    onGone: (run) => {
      reader.onClose(run);
      // Nobody reads what is written any more.
      writer.onError(run);
    },
  };
}

/** One line on standard error: standard output carries the protocol. */
export function logLine(text: string): void {
  process.stderr.write(`propsoff: ${text}\n`);
}
