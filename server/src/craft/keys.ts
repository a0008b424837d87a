import type { ScriptLine } from '../language/script-line';
import type { Membership } from './memberships';

/** Keys under which a craft's inputs are known; the cells depend on them. */
export const inputKeys = {
  /** A setting for every pack, or for one pack only. */
  setting: (path: string, pack: string | null = null) =>
    flat(pack === null ? ['set ', path] : ['set ', path, ' @ ', pack]),
  constant: (name: string) => `let ${name}`,
  /** The name in a key of a setting or a constant for every pack. */
  nameIn: (key: string) => key.slice(4),
  /** The path in a key of a setting, for every pack or for one. */
  pathIn: (key: string) => key.slice(4).split(' @ ')[0] ?? '',
  /** Whether it is the key of a setting for one pack only. */
  isForOnePack: (key: string) => key.startsWith('set ') && key.includes(' @ '),
  /** Whether it is the key of a setting, for every pack or for one. */
  isSetting: (key: string) => key.startsWith('set '),
  section: (path: string, pack: string | null = null) =>
    flat(pack === null ? ['section ', path] : ['section ', path, ' @ ', pack]),
  isSection: (key: string) => key.startsWith('section '),
  /** The path in a key of a section. */
  sectionIn: (key: string) => key.slice('section '.length).split(' @ ')[0] ?? '',
  /** The headers of all members of a collection together. */
  headers: (collection: string) => `headers ${collection}`,
  include: 'include',
  acceptance: 'accept',
  members: (collection: string) => `members ${collection}`,
  /**
   * One setting of several members of a collection together: of those whose names differ only in how they end, as
   * `day-31` and `day-32` do, which mostly stand beside each other.
   */
  ofMany: (path: string, { collection, member }: Membership) => {
    const end = collection.length + 1 + member.length;
    return flat(['many ', path.slice(0, end - 1), '*', path.slice(end)]);
  },
  /** Anything at all under a group, such as `craft`. */
  group: (name: string) => `group ${name}`,
  repeated: 'repeated',
  /** A line that has problems by itself, by its number. */
  wrongLine: (number: number) => `wrong ${number}`,
  /** A few such lines together. */
  wrongStretch: (number: number) => `wrong-stretch ${number}`,
  /** A few such stretches together. */
  wrongGroup: (number: number) => `wrong-group ${number}`,
  /** Which keys have lines that can only be checked with the rest of the craft. */
  dynamic: 'dynamic',
  /** Sections or settings for one pack only. */
  overlay: 'overlay',
} as const;

/** One stretch of memory. Strings put together with `+` keep their parts, and very many keys are kept. */
function flat(parts: readonly string[]): string {
  return parts.join('');
}

/** What one line says, as keys of the index. */
export function keysOf(line: ScriptLine): readonly string[] {
  const keys = statementKeys(line);
  if (line.statement.acceptance !== null) keys.push(inputKeys.acceptance);
  return keys;
}

function statementKeys(line: ScriptLine): string[] {
  const { statement, settingPath } = line;
  switch (statement.kind) {
    case 'setting':
      return settingPath === null ? [] : [inputKeys.setting(settingPath, line.section.pack)];
    case 'constant':
      return [inputKeys.constant(statement.name.text)];
    case 'include':
      return [inputKeys.include];
    case 'section': {
      const keys = [inputKeys.section(statement.path.text, line.section.pack)];
      if (statement.pack !== null) keys.push(inputKeys.overlay);
      return keys;
    }
    default:
      return [];
  }
}

/** The path that a line is about: a setting's, or a section header's. */
export function subjectOf(line: ScriptLine): string | null {
  return line.statement.kind === 'section' ? line.statement.path.text : line.settingPath;
}
