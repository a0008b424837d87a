import { fileText } from '../../host/file-text';
import { readBytes } from '../../host/read-file';
import { reasonOf } from '../../host/reasons';
import { withoutMark } from '../../workspace/file-host';
import { UsageError } from '../outcome';
import type { Terminal } from '../terminal';

/** A text captured from a board: a file, or standard input. */
export async function readCapture(path: string, terminal: Terminal): Promise<string> {
  try {
    const bytes = await (path === '-' ? terminal.readStandardInput() : readBytes(path));
    return withoutMark(fileText(bytes));
  } catch (error) {
    throw new UsageError(`${path === '-' ? 'standard input' : path}: ${reasonOf(error)}`);
  }
}
