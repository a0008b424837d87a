import { fileName } from '../../craft/include-path';
import { type RecordingSource, UnreadableRecording } from '../../recording/read/source';
import { type FileSystem, longestRecording, whyUnreadable } from '../../workspace/file-system';

/** A file that is read from its start each time that it is gone through. */
export async function sourceOf(
  files: FileSystem,
  uri: string,
): Promise<{
  readonly source: RecordingSource;
  readonly size: number;
  /** Ms since 1970; null where nobody says. */
  readonly changedAt: number | null;
}> {
  const name = fileName(uri);
  const unreadable = (error: unknown) =>
    new UnreadableRecording(`${name} could not be read: ${whyUnreadable(error)}.`);
  const pieces = await files.readPieces(uri).catch((error: unknown) => {
    throw unreadable(error);
  });
  if (pieces === null) throw new UnreadableRecording(`There is no file ${name} there any more.`);
  const { size } = pieces;
  if (size > longestRecording)
    throw new UnreadableRecording(
      `${name} has ${Math.ceil(size / 1e6)} MB, and up to ${longestRecording / 1e6} MB are read: cut the flight out and open that.`,
    );
  async function* bytes(from: AsyncIterable<Uint8Array>) {
    const all = from[Symbol.asyncIterator]();
    try {
      for (;;) {
        const next = await all.next().catch((error: unknown) => {
          throw unreadable(error);
        });
        if (next.done === true) return;
        yield next.value;
      }
    } finally {
      await all.return?.();
    }
  }
  return {
    source: { name, size, bytes: () => bytes(pieces.bytes()) },
    size,
    changedAt: pieces.changedAt ?? null,
  };
}
