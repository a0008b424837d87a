import { recordText } from '../../board/writing/record-text';
import { type HandOver, readHandOver } from '../../catalog/model/hand-over';
import { fileText } from '../../file-system/file-text';
import { readBytesIfThere } from '../../file-system/read-file';
import { reasonOf } from '../../file-system/reasons';
import { replaceFile } from '../../file-system/replace-file';
import { UsageError } from '../outcome';

/** The file beside a script that remembers its last hand-over. */
export class HandOverRecord {
  private constructor(
    readonly path: string,
    /** Null where there is no such file. */
    private readonly text: string | null,
    /** Null where there is none. */
    readonly last: HandOver | null,
  ) {}

  static async beside(script: string): Promise<HandOverRecord> {
    const path = `${script}.handed.json`;
    try {
      const bytes = await readBytesIfThere(path);
      const text = bytes === null ? null : fileText(bytes);
      return new HandOverRecord(path, text, text === null ? null : readHandOver(text));
    } catch (error) {
      throw new UsageError(`${path}: ${reasonOf(error)}`);
    }
  }

  get isThere(): boolean {
    return this.text !== null;
  }

  /** Whether its name is taken by something that nobody asked to be overwritten. */
  get isSomethingElse(): boolean {
    return this.isThere && this.last === null;
  }

  /** Remembers a hand-over in place of the last one. */
  async remember(given: HandOver): Promise<void> {
    try {
      await replaceFile(this.path, this.text, recordText(given));
    } catch (error) {
      throw new Error(`${this.path} does not remember this text: ${reasonOf(error, 'written')}`);
    }
  }
}
