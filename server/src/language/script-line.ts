import type { Statement } from './ast';
import { isOwnGroup, joinedPath } from './path-text';
import type { LineEnd } from './split-lines';
import type { LineContent } from './statement-cache';

/** The section that is open at a line. */
export interface Section {
  /** null: a broken header was to open one, so nobody can say which. */
  readonly path: string | null;
  readonly pack: string | null;
  /** Whether it holds settings that only the board knows, which are kept as they are written. */
  readonly isOwn: boolean;
}

/** Before any section. */
export const noSection: Section = { path: '', pack: null, isOwn: false };

export function sameSection(one: Section, other: Section): boolean {
  return one.path === other.path && one.pack === other.pack && one.isOwn === other.isOwn;
}

/** The section that a line opens; null where it opens none. */
export function sectionOpened(statement: Statement): Section | null {
  if (statement.kind === 'section') {
    const { path, pack } = statement;
    return { path: path.text, pack: pack?.text ?? null, isOwn: isOwnGroup(path.names[0]?.text) };
  }
  if (statement.kind !== 'broken' || statement.opensSection === null) return null;
  return { path: null, pack: null, isOwn: statement.opensSection === 'own' };
}

/**
 * One line of one document: its text, what it says, and the section it stands in. Its identity is its
 * place: as long as neither the line nor its section changes, the object stays the same through all edits.
 */
export class ScriptLine {
  /** Where the line stands now; kept up by the document, read only by it. */
  chunk: Chunk | null = null;

  constructor(
    readonly content: LineContent,
    readonly end: LineEnd,
    /** For a section header: the section that it opens. */
    readonly section: Section,
  ) {}

  get text(): string {
    return this.content.text;
  }

  get statement(): Statement {
    return this.content.statement;
  }

  /** The whole path of a setting with its section's in front; null where it can't be known. */
  get settingPath(): string | null {
    if (this.statement.kind !== 'setting' || this.section.path === null) return null;
    return joinedPath(this.section.path, this.statement.path.text);
  }
}

/** Lines kept together so that an edit copies a few hundred references, however long the document is. */
export interface Chunk {
  readonly lines: readonly ScriptLine[];
  /** Its place among the chunks of the newest document that it is in. */
  index: number;
}
