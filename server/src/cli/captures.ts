import { readFile } from 'node:fs/promises';
import { isBinary, withoutMark } from '../workspace/file-host';
import { UsageError } from './outcome';
import type { Terminal } from './terminal';

/** No board's listing is longer; more is hardly one. */
const longestCapture = 20_000_000;

/** A text captured from a board: a file, or standard input. */
export async function readCapture(path: string, terminal: Terminal): Promise<string> {
  let text: string;
  try {
    text = path === '-' ? await terminal.readStandardInput() : await readFile(path, 'utf8');
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? error.code : undefined;
    throw new UsageError(`${path}: ${code === 'ENOENT' ? 'there is no such file' : 'it cannot be read'}`);
  }
  if (text.length > longestCapture)
    throw new UsageError(`${path}: it is far too long for a board's settings`);
  if (isBinary(text)) throw new UsageError(`${path}: it is not a text`);
  return withoutMark(text);
}
