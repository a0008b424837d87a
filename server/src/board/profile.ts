import type { BoardSetting, BoardText } from '../catalog/model/board-text';
import type { Board } from '../catalog/model/hardware';
import { compileTemplate, type Template } from './template';

/** One of the board's own names, with what it holds. */
export interface BoardName {
  /** As the board writes it. */
  readonly group: string;
  readonly name: string;
  readonly row: BoardSetting;
  /** Which of the row's names this is. */
  readonly part: number;
}

/** A name with the member of a collection that stood in it. */
export interface NameFound extends BoardName {
  /** The catalogue's name of the member; null where the parameter has none. */
  readonly member: string | null;
}

/** A board that can be written for: its text half, ready for use. */
export interface Profile {
  readonly board: Board;
  readonly text: BoardText;
  readonly line: Template;
  readonly heading: Template | null;
  readonly opening: readonly Template[];
  readonly closing: readonly Template[];
  readonly groups: Board['names'];
  /** What a written name holds; undefined for one that the profile does not list. */
  find(group: string, name: string): NameFound | undefined;
}

const profiles = new WeakMap<Board, Profile | null>();

/** The profile of a board; null for one that has no text half, or one with faults: those are told where it is read. */
export function profileOf(board: Board): Profile | null {
  const known = profiles.get(board);
  if (known !== undefined) return known;
  const made = makeProfile(board);
  profiles.set(board, made);
  return made;
}

function makeProfile(board: Board): Profile | null {
  const { text } = board;
  if (text === undefined) return null;
  const line = template(text.line, ['name', 'value']);
  const heading = text.heading === undefined ? null : template(text.heading, ['group']);
  if (line === null || (text.heading !== undefined && heading === null)) return null;
  const names = new NameTable(board.names);
  return {
    board,
    text,
    line,
    heading,
    opening: text.opening.flatMap((one) => template(one, [], ['board']) ?? []),
    closing: text.closing.flatMap((one) => template(one, [], ['board', 'count']) ?? []),
    groups: board.names,
    find: (group, name) => names.find(group, name),
  };
}

function template(
  source: string,
  needed: Parameters<typeof compileTemplate>[1],
  allowed?: Parameters<typeof compileTemplate>[2],
): Template | null {
  const made = compileTemplate(source, needed, allowed ?? [...needed, 'group', 'index']);
  return made.kind === 'template' ? made.template : null;
}

/** `board.names`, to be looked up as the board writes them. */
class NameTable {
  private readonly exact = new Map<string, NameFound>();
  /** Names with an open member, in two halves around it, by what comes before. */
  private readonly open: { readonly before: string; readonly after: string; readonly found: BoardName }[] =
    [];

  constructor(groups: Board['names']) {
    for (const { group, settings } of groups)
      for (const row of settings)
        for (const [part, name] of row.names.entries()) this.add({ group, name, row, part });
  }

  find(group: string, name: string): NameFound | undefined {
    const exact = this.exact.get(keyOf(group, name));
    if (exact !== undefined) return exact;
    const key = keyOf(group, name);
    for (const { before, after, found } of this.open) {
      const middle = key.slice(before.length, key.length - after.length);
      if (middle !== '' && key.startsWith(before) && key.endsWith(after) && memberText.test(middle))
        return { ...found, member: middle };
    }
    return undefined;
  }

  private add(one: BoardName): void {
    const { group, name, row } = one;
    const key = keyOf(group, name);
    if (!key.includes(openMember)) {
      this.exact.set(key, { ...one, member: null });
      return;
    }
    if (row.members === undefined) {
      const [before = '', after = ''] = key.split(openMember);
      this.open.push({ before, after, found: one });
      return;
    }
    for (const [member, spelled] of Object.entries(row.members))
      this.exact.set(
        key.replace(openMember, () => spelled),
        { ...one, member },
      );
  }
}

export const openMember = '{member}';
/** Members go into paths of a script: nothing else may come in through a capture. */
const memberText = /^[a-z0-9][a-z0-9-]*$/;

export function keyOf(group: string, name: string): string {
  return `${group}\n${name}`;
}

/** The names of a row for one member of its collection; null for a member that the board does not know. */
export function namesOf(
  row: BoardSetting,
  group: string,
  member: string | null,
): readonly BoardNameText[] | null {
  const spelled = member === null ? null : row.members === undefined ? member : row.members[member];
  if (spelled === undefined) return null;
  const fillIn = (text: string) => (spelled === null ? text : text.replace(openMember, () => spelled));
  return row.names.map((name) => ({ group: fillIn(group), name: fillIn(name) }));
}

export interface BoardNameText {
  readonly group: string;
  readonly name: string;
}
