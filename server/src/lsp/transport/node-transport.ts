import {
  IPCMessageReader,
  IPCMessageWriter,
  type MessageReader,
  type MessageWriter,
  StreamMessageWriter,
} from 'vscode-languageserver/node';
import { FrameReader } from './frame-reader';
import { refusal } from './life-cycle';

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

function standardStreams(): Transport {
  const writer = new StreamMessageWriter(process.stdout);
  const reader = new FrameReader(process.stdin, {
    onBroken: (why) => {
      logLine(`the connection is broken and ends: ${why}`);
      process.exit(1);
    },
    onNoMessage: (code, why) => {
      logLine(`left aside: ${why}`);
      void writer.write(refusal(null, code, `${why}.`));
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
