import { type AdditionProblem, unreadableProblem } from '../additions/problem';
import type { ReadChoices } from '../additions/read-choices';
import type { Catalog } from '../catalog/catalog';
import type { ChosenLevel, WorkspaceChoices } from '../catalog/model/workspace-choices';
import { noChoices } from '../catalog/no-choices';
import { type FileSystem, whyUnreadable, withoutMark } from './file-system';

/** The file in which a workspace chooses what is checked, and how it is ranked. */
export const choicesFileName = 'propsoff.json';

interface HeldChoices {
  readonly text: string;
  /** What it last was without a problem. */
  good: WorkspaceChoices;
  read: { readonly of: Catalog; readonly as: ReadChoices } | null;
}

/** The files of choices of a workspace's folders. A file with problems is not used: what it last was stays in use. */
export class ChoiceFiles {
  private readonly files = new Map<string, HeldChoices>();
  private readonly unreadable = new Map<string, AdditionProblem>();

  constructor(
    private readonly fileSystem: FileSystem,
    /** Texts of files that an editor shows: they count more than the disk. */
    private readonly open: ReadonlyMap<string, string>,
  ) {}

  textOf(file: string): string | undefined {
    return this.files.get(file)?.text;
  }

  /** The files may stand at these places, and nowhere else. True when one says something else than before. */
  async list(places: readonly string[]): Promise<boolean> {
    const gone = [...this.files.keys(), ...this.unreadable.keys()].filter((file) => !places.includes(file));
    for (const file of gone) this.forget(file);
    const changed = await Promise.all(places.map((file) => this.read(file)));
    return gone.length > 0 || changed.includes(true);
  }

  /** Reads a file anew. True when it says something else than before. */
  async read(file: string): Promise<boolean> {
    const wasUnreadable = this.unreadable.delete(file);
    try {
      const text = this.open.get(file) ?? (await this.fileSystem.readText(file));
      if (text === null) return this.forget(file) || wasUnreadable;
      const before = this.files.get(file);
      if (before?.text === withoutMark(text)) return wasUnreadable;
      this.files.set(file, { text: withoutMark(text), good: before?.good ?? noChoices, read: null });
    } catch (error) {
      this.unreadable.set(file, unreadableProblem(whyUnreadable(error)));
    }
    return true;
  }

  /** What all of them choose; what the first says of one thing counts. */
  async choicesOn(catalog: Catalog): Promise<WorkspaceChoices> {
    if (this.files.size === 0) return noChoices;
    const { readChoices } = await import('../additions/read-choices');
    let all = noChoices;
    for (const file of this.files.values()) {
      if (file.read?.of !== catalog) file.read = { of: catalog, as: readChoices(file.text, catalog) };
      if (file.read.as.kind === 'read') file.good = file.read.as.choices;
      all = joined(all, file.good);
    }
    return all;
  }

  texts(): ReadonlyMap<string, string> {
    return new Map([...this.files].map(([file, { text }]) => [file, text]));
  }

  /** By folder, the patterns of files that are left out there. */
  leftOut(): ReadonlyMap<string, readonly string[]> {
    const folder = (file: string) => file.slice(0, -`/${choicesFileName}`.length);
    return new Map([...this.files].map(([file, { good }]) => [folder(file), good.leaveOut]));
  }

  /** By file, as it was last read; the empty list for one that is fine. */
  problems(): ReadonlyMap<string, readonly AdditionProblem[]> {
    const problems = new Map<string, readonly AdditionProblem[]>();
    for (const [file, { read }] of this.files)
      problems.set(file, read?.as.kind === 'broken' ? read.as.problems : []);
    for (const [file, problem] of this.unreadable) problems.set(file, [problem]);
    return problems;
  }

  private forget(file: string): boolean {
    const wasUnreadable = this.unreadable.delete(file);
    return this.files.delete(file) || wasUnreadable;
  }
}

function joined(one: WorkspaceChoices, other: WorkspaceChoices): WorkspaceChoices {
  const failOn = one.failOn ?? other.failOn;
  return {
    check: [...one.check, ...other.check],
    leaveOut: [...one.leaveOut, ...other.leaveOut],
    levels: { ...other.levels, ...one.levels },
    ...(failOn === undefined ? {} : { failOn }),
  };
}

/** Levels as a catalogue takes them. */
export function levelsOf({ levels }: WorkspaceChoices): ReadonlyMap<string, ChosenLevel> {
  return new Map(Object.entries(levels));
}
