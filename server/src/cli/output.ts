import { fstatSync, writeSync } from 'node:fs';
import { codeOf, reasonOf } from '../file-system/reasons';

/** Writes a text whole, or rejects with a reason for a person. */
export type Write = (text: string) => Promise<void>;

type Output = NodeJS.WriteStream & { readonly fd: number };

/**
 * How to write to an output of this process. What leads to a file is written by the system's own calls: Node's
 * stream takes a part that still fitted onto a full disk for the whole.
 */
export function writerTo(stream: Output): Write {
  const isPlain = !stream.isTTY && leadsToFile(stream.fd);
  let isWatched = false;
  return async (text) => {
    if (!isWatched && !isPlain) stream.on('error', () => {}); // it is told to the writer of each text
    isWatched = true;
    try {
      if (isPlain) writeAll(stream.fd, Buffer.from(text));
      else await written(stream, text);
    } catch (error) {
      throw new Error(`the output was cut off: ${whyCut(error)}`);
    }
  };
}

function leadsToFile(output: number): boolean {
  const stats = fstatSync(output);
  return !stats.isFIFO() && !stats.isSocket();
}

function writeAll(output: number, bytes: Uint8Array): void {
  for (let at = 0; at < bytes.length; ) at += writeSync(output, bytes, at);
}

function written(stream: Output, text: string): Promise<void> {
  return new Promise((resolve, reject) => {
    stream.write(text, (error) => (error == null ? resolve() : reject(error)));
  });
}

function whyCut(error: unknown): string {
  return codeOf(error) === 'EPIPE' ? 'its reader is gone' : reasonOf(error);
}
