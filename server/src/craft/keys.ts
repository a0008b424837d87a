import type { ScriptLine } from '../language/script-line';
import { Input } from '../query/input';

/** What lines of a script can be about: each line is found by it. */
export type LineSubject =
  | readonly ['setting', pack: string | null, path: string]
  | readonly ['constant', name: string]
  | readonly ['section', pack: string | null, path: string]
  | readonly ['include']
  | readonly ['acceptance']
  | readonly ['overlay'];

/** What a craft is computed from, and hears of when it changes. */
export type CraftKey =
  | LineSubject
  | readonly ['file', uri: string]
  | readonly ['headers', collection: string]
  | readonly ['members', collection: string]
  | readonly ['group', name: string]
  | readonly ['unsaid']
  | readonly ['constants']
  | readonly ['uses']
  | readonly ['line', ScriptLine]
  | readonly ['first line']
  | readonly ['emptiness']
  | readonly ['included'];

/** What the lines of a craft's scripts say, by what it is about. */
export const craftInputs = new Input<CraftKey>();

/** The keys of a craft's inputs: `inputKeys.setting('motor.idle')`. */
export const inputKeys = {
  /** A setting for every pack, or for one pack only. What holds for every pack changes with what one pack has. */
  setting: (path: string, pack: string | null = null) => ['setting', pack, path] as const,
  constant: (name: string) => ['constant', name] as const,
  section: (path: string, pack: string | null = null) => ['section', pack, path] as const,
  include: ['include'],
  /** A line that accepts a finding. */
  acceptance: ['acceptance'],
  /** A section for one pack only. */
  overlay: ['overlay'],
  /** A file that is included, or was looked for. */
  file: (uri: string) => ['file', uri] as const,
  /** The headers of all members of a collection together. */
  headers: (collection: string) => ['headers', collection] as const,
  members: (collection: string) => ['members', collection] as const,
  /** Anything at all under a group, such as `craft`. */
  group: (name: string) => ['group', name] as const,
  /** How many settings of a board's text nobody has said the meaning of. */
  unsaid: ['unsaid'],
  /** All constants together. */
  constants: ['constants'],
  /** Which names lines are calculated from. */
  uses: ['uses'],
  firstLine: ['first line'],
  /** Whether a script says nothing at all. */
  emptiness: ['emptiness'],
  /** Whether another script includes this one. */
  included: ['included'],
  /** A line itself, which changes only by going. */
  line: (line: ScriptLine) => ['line', line] as const,
} as const;

/** What one line says. */
export function subjectsOf(line: ScriptLine): readonly LineSubject[] {
  const subjects = statementSubjects(line);
  return line.statement.acceptance === null ? subjects : [...subjects, inputKeys.acceptance];
}

function statementSubjects({ statement, settingPath, section }: ScriptLine): readonly LineSubject[] {
  switch (statement.kind) {
    case 'setting':
      return settingPath === null ? [] : [inputKeys.setting(settingPath, section.pack)];
    case 'constant':
      return [inputKeys.constant(statement.name.text)];
    case 'include':
      return [inputKeys.include];
    case 'section': {
      const header = inputKeys.section(statement.path.text, section.pack);
      return statement.pack === null ? [header] : [header, inputKeys.overlay];
    }
    default:
      return [];
  }
}

/** The path that a line is about: a setting's, or a section header's. */
export function pathOfLine(line: ScriptLine): string | null {
  return line.statement.kind === 'section' ? line.statement.path.text : line.settingPath;
}
