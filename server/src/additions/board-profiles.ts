import type { Catalog } from '../catalog/catalog';
import type { BoardProfile } from '../catalog/model/board-profile';
import type { AdditionProblem } from './problem';
import { profileProblems, type ReadBoard, readBoard } from './read-board';

/** What a file comes to in a catalogue. */
export interface JudgedBoard {
  /** What it is, or last was, without a problem; null: it never was. */
  readonly board: BoardProfile | null;
  readonly problems: readonly AdditionProblem[];
}

interface HeldProfile {
  readonly text: string;
  readonly read: ReadBoard;
  /** What it last was without a problem. */
  good: BoardProfile | null;
  /** In the catalogue that it was last looked at in. */
  judged: (JudgedBoard & { readonly catalog: Catalog }) | null;
}

/** The board profiles of a workspace that somebody has asked for, or that are open in an editor. */
export class BoardProfiles {
  private readonly files = new Map<string, HeldProfile>();

  /** The files that have been read. */
  all(): readonly string[] {
    return [...this.files.keys()];
  }

  textOf(file: string): string | undefined {
    return this.files.get(file)?.text;
  }

  /** Takes in a file as it now is, with the name of its board; null for one that is gone. False when nothing has changed. */
  update(file: string, name: string, text: string | null): boolean {
    if (text === null) return this.files.delete(file);
    const before = this.files.get(file);
    if (before?.text === text) return false;
    this.files.set(file, { text, read: readBoard(text, name), good: before?.good ?? null, judged: null });
    return true;
  }

  /** Undefined for a file that has not been read. Each is looked at anew only when it or the catalogue is another. */
  judged(path: string, catalog: Catalog): JudgedBoard | undefined {
    const file = this.files.get(path);
    if (file === undefined) return undefined;
    const { read } = file;
    if (file.judged?.catalog === catalog) return file.judged;
    const problems = read.kind === 'broken' ? read.problems : profileProblems(read, catalog);
    if (read.kind === 'read' && problems.length === 0) file.good = read.board;
    file.judged = { catalog, problems, board: file.good };
    return file.judged;
  }
}
