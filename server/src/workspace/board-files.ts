import type { BoardProfiles, JudgedBoard } from '../additions/board-profiles';
import { type AdditionProblem, unreadableProblem } from '../additions/problem';
import type { Catalog } from '../catalog/catalog';
import type { BoardProfile } from '../catalog/model/board-profile';
import { type FileSystem, whyUnreadable, withoutMark } from './file-system';
import { boardOf, type ListedBoards, listedBoards } from './listed-boards';

/**
 * The files of a workspace's `boards/` folders. They are listed; one is read when something asks the catalogue for
 * its board, or when an editor shows it: a folder with a thousand of them costs no more than their names.
 */
export class BoardFiles {
  /** Called when a board is asked for that has not been read: `readAsked` reads it. */
  onAsked: () => void = () => {};
  private listed: ListedBoards = { files: new Map(), problems: new Map() };
  private profiles: BoardProfiles | null = null;
  private readonly asked = new Set<string>();
  private readonly unreadable = new Map<string, AdditionProblem>();

  constructor(
    private readonly builtIn: ReadonlySet<string>,
    private readonly fileSystem: FileSystem,
    /** Texts of files that an editor shows: they count more than the disk. */
    private readonly open: ReadonlyMap<string, string>,
  ) {}

  textOf(file: string): string | undefined {
    return this.profiles?.textOf(file);
  }

  /**
   * The folders hold these files now, and others lie beside files that stand alone; those that have been read are read
   * again. True when anything has changed.
   */
  async list(own: readonly string[], beside: readonly string[]): Promise<boolean> {
    const before = this.listed;
    this.listed = listedBoards(own, beside, this.builtIn);
    const files = [...own, ...beside];
    const there = new Set(files);
    const read = new Set([...(this.profiles?.all() ?? []), ...this.unreadable.keys()]);
    for (const file of files) if (this.open.has(file)) read.add(file);
    const changed = await Promise.all([...read].map((file) => this.read(file, there.has(file))));
    return changed.includes(true) || !isSameList(before, this.listed);
  }

  /** An editor shows a file with another text than before. */
  shown(file: string): Promise<boolean> {
    return this.read(file, true);
  }

  /** Reads the boards that were asked for. True when there was one to read. */
  async readAsked(): Promise<boolean> {
    const names = [...this.asked];
    const files = names.flatMap((name) => this.listed.files.get(name) ?? []);
    const changed = await Promise.all(files.map((file) => this.read(file, true)));
    for (const name of names) this.asked.delete(name);
    return changed.includes(true);
  }

  /** The boards of these files that will be called otherwise where the files go, with their new names. */
  after(placeAfter: (file: string) => string): ReadonlyMap<string, string> {
    const moves = [...this.listed.files].map(([name, file]) => ({ name, file, to: placeAfter(file) }));
    const then = listedBoards(
      moves.map(({ to }) => to).filter((to) => /\/boards\/[^/]+\.jsonc?$/.test(to)),
      [],
      this.builtIn,
    );
    const renamed = moves.filter(
      ({ name, to }) => boardOf(to) !== name && then.files.get(boardOf(to)) === to,
    );
    return new Map(renamed.map(({ name, to }) => [name, boardOf(to)]));
  }

  /** A catalogue with the boards of the workspace. */
  catalogOn(catalog: Catalog): Catalog {
    if (this.listed.files.size === 0) return catalog;
    const read = new Map<string, BoardProfile>();
    const [unread, faulty] = [new Set<string>(), new Set<string>()];
    for (const [name, file] of this.listed.files) {
      const judged = this.judged(file, catalog);
      if (judged?.board != null) read.set(name, judged.board);
      else if (judged !== undefined || this.unreadable.has(file)) faulty.add(name);
      else unread.add(name);
    }
    return catalog.withBoards({ read, unread, faulty, ask: (name) => this.ask(name) });
  }

  /** By file; the empty list for one that has been read and is fine. */
  problemsOn(catalog: Catalog): ReadonlyMap<string, readonly AdditionProblem[]> {
    const problems = new Map<string, readonly AdditionProblem[]>();
    for (const file of this.profiles?.all() ?? [])
      problems.set(file, this.judged(file, catalog)?.problems ?? []);
    for (const [file, problem] of [...this.unreadable, ...this.listed.problems])
      problems.set(file, [problem, ...(problems.get(file) ?? [])]);
    return problems;
  }

  private judged(file: string, catalog: Catalog): JudgedBoard | undefined {
    return this.profiles?.judged(file, catalog);
  }

  private ask(name: string): void {
    if (this.asked.has(name)) return;
    this.asked.add(name);
    this.onAsked();
  }

  /** True when it says something else than before. */
  private async read(file: string, isThere: boolean): Promise<boolean> {
    // What reads profiles is loaded with the first of them: most workspaces have none.
    const { BoardProfiles } = await import('../additions/board-profiles');
    this.profiles ??= new BoardProfiles();
    const wasUnreadable = this.unreadable.delete(file);
    try {
      const text = isThere ? await this.textNow(file) : null;
      return this.profiles.update(file, boardOf(file), text) || wasUnreadable;
    } catch (error) {
      this.unreadable.set(file, unreadableProblem(whyUnreadable(error)));
      this.profiles.update(file, boardOf(file), null);
      return true;
    }
  }

  /** @throws when it can't be read, or is gone since the folder was looked into. */
  private async textNow(file: string): Promise<string> {
    const shown = this.open.get(file);
    if (shown !== undefined) return shown;
    const text = await this.fileSystem.readText(file);
    if (text === null) throw new Error('it is there no more');
    return withoutMark(text);
  }
}

function isSameList(one: ListedBoards, other: ListedBoards): boolean {
  const told = ({ files, problems }: ListedBoards) =>
    JSON.stringify([[...files], [...problems].map(([file, { message }]) => [file, message])]);
  return told(one) === told(other);
}
