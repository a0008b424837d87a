/** The files around the scripts: the disk, an editor's file system, or a test's. The only way to any of them. */
export interface FileSystem {
  /** The text of a file; null when there is none. Rejects when it can't be read, with a reason for a person. */
  readText(uri: string): Promise<string | null>;
  /** The bytes of a file that may be too long to be held whole; null when there is none. Rejects as `readText` does. */
  readPieces(uri: string): Promise<FilePieces | null>;
  /** The files right in a folder; none when there is no such folder. Rejects as `readText` does. */
  list(folder: string): Promise<readonly string[]>;
  /** The folders of the workspace. */
  folders(): readonly string[];
  /** Those that hold a script: what it includes, and what includes it, lies below them. None for an unsaved one. */
  foldersOf(uri: string): readonly string[];
  /** The craft scripts below a folder. */
  scriptsBelow(folder: string): Promise<FoundScripts>;
  /** Why a script may not include this file, as the end of a sentence; null when it may. */
  refusal(uri: string, fromUri: string): string | null;
}

/** A file that is read piece by piece. */
export interface FilePieces {
  /** In bytes, as it was when it was looked at. */
  readonly size: number;
  /** When it was changed last, ms since 1970, as it was when it was looked at; left out where nobody says. */
  readonly changedAt?: number | undefined;
  /**
   * From the start, each time: the file is opened with the first piece and closed with the last, also where the rest is
   * left. It rejects as `readText` does.
   */
  bytes(): AsyncIterable<Uint8Array>;
}

/** The craft scripts below a folder. Hidden folders, `node_modules` and what links lead to are left out. */
export interface FoundScripts {
  readonly scripts: readonly string[];
  /** Folders that could not be looked into. */
  readonly unread: readonly Unread[];
  /** Whether there are more than anybody has, of which the rest was not looked for. */
  readonly isCut: boolean;
}

/** A file or folder that is there and could not be read. */
export interface Unread {
  readonly uri: string;
  /** The end of a sentence. */
  readonly why: string;
}

/** Why a file was not read that is there: its message ends a sentence. */
export class TooLongFile extends Error {}

/** In bytes. A longer file is no settings script, no board's listing, nothing that adds to the catalogue. */
export const longestFile = 10_000_000;

/** In bytes. Twenty minutes of two thousand rows a second in sixteen columns are shorter. */
export const longestRecording = 300_000_000;

/** In bytes, of a piece that a long file is read in: its reading takes a few milliseconds. */
export const pieceLength = 262_144;

/** What is more than may be read, wherever it comes from; ends a sentence. */
export const tooLong = `it is longer than ${longestFile / 1_000_000} MB`;

/**
 * In characters: some twenty thousand lines, which no craft has. A longer text is read by the command line alone:
 * in an editor everything else would wait for seconds until it is checked.
 */
export const longestScript = 1_000_000;

/** No workspace has more scripts than this; of one that has, some are enough. */
export const mostScripts = 2000;

/** Whether a text is one: a NUL in it means some other kind of file. */
export function isBinary(text: string): boolean {
  return text.includes('\u0000');
}

/** A text as read from a disk, without the byte order mark that only disks have. */
export function withoutMark(text: string): string {
  return text.startsWith('\ufeff') ? text.slice(1) : text;
}

/** Why a file could not be read, for a person. */
export function whyUnreadable(error: unknown): string {
  return error instanceof Error ? error.message : 'it could not be read';
}
