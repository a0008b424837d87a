import { fixFor, lastSettingUnder } from '../../checks/report/rule-fix';
import { lineComment } from '../../checks/report/written-line';
import type { RuleLine } from '../../checks/rule';
import type { Craft } from '../../craft/craft';
import { inputKeys } from '../../craft/keys';
import { CraftView } from '../../craft/view';
import { pathText, stepsOf } from '../../language/path-text';
import type { ScriptLine } from '../../language/script-line';
import type { RecordingProposal } from '../../recording/report';
import { editsOf } from '../fix-edits';
import type { TextEdit } from '../range';
import type { Snapshot } from '../snapshot';

/**
 * The edits that write what a recording says, each with its source in a comment: into the lines that say it now, below
 * their sections, or into sections of their own. Null where a line can't hold it, or there is nothing to write.
 */
export function measuredEdits(
  { craft }: Pick<Snapshot, 'craft'>,
  sets: RecordingProposal['sets'],
): readonly TextEdit[] | null {
  if (sets.length === 0 || sets.some(({ path }) => craft.catalog.parameter(path) === undefined)) return null;
  const view = new CraftView(craft, null);
  const lines = sets.map(({ path, value, comment }) => ({ set: path, to: value, source: sourceOf(comment) }));
  const beside = newMembers(craft, lines);
  const inNew = new Set(beside.flatMap((member) => member.lines));
  const [first, ...also] = lines.filter((line) => !inNew.has(line));
  const edits = beside.map((member) => memberEdit(craft, member));
  if (first === undefined) return edits;
  // What is measured holds for the craft as it was flown: no pack's section is written to.
  const fix = fixFor(view, { ...first, title: first.set, also });
  const files = fix === null ? [] : editsOf(fix);
  const [own] = files;
  if (own === undefined || files.some(({ uri }) => uri !== craft.root.uri)) return null;
  return [...own.edits, ...edits].sort((one, other) => one.range.start.line - other.range.start.line);
}

/** A member of a collection that the script has no section for yet, beside others of it: filter 3 after filter 2. */
interface NewMember {
  readonly section: string;
  readonly lines: readonly RuleLine[];
  /** The last header of another member. */
  readonly after: ScriptLine;
}

function newMembers({ root }: Craft, lines: readonly RuleLine[]): readonly NewMember[] {
  const bySection = new Map<string, RuleLine[]>();
  for (const line of lines) {
    const section = pathText(stepsOf(line.set).slice(0, -1));
    bySection.set(section, [...(bySection.get(section) ?? []), line]);
  }
  return [...bySection].flatMap(([section, own]) => {
    if (root.lines(inputKeys.section(section)).length > 0) return [];
    const collection = pathText(stepsOf(section).slice(0, -1));
    const headers = [...root.document.lines()].filter(
      ({ statement, section: { path, pack } }) =>
        statement.kind === 'section' &&
        pack === null &&
        collection !== '' &&
        pathText(stepsOf(path ?? '').slice(0, -1)) === collection,
    );
    const after = headers.at(-1);
    return after === undefined ? [] : [{ section, lines: own, after }];
  });
}

function memberEdit({ root }: Craft, { section, lines, after }: NewMember): TextEdit {
  const end = root.document.lineEnd;
  const width = Math.max(...lines.map(({ set }) => nameOf(set).length));
  const rows = lines.map((line) => `${nameOf(line.set).padEnd(width)} = ${line.to}${lineComment(line)}`);
  const last = lastSettingUnder(root, after);
  const place = { line: root.document.lineNumberOf(last), character: last.text.length };
  const newText = ['', '', `[${section}]`, ...rows].join(end);
  return { range: { start: place, end: place }, newText };
}

function nameOf(path: string): string {
  return pathText(stepsOf(path).slice(-1));
}

/** A comment ends with its line; what says nothing is none. */
function sourceOf(comment: string): string | undefined {
  const text = comment.replace(/\s+/g, ' ').trim();
  return text === '' ? undefined : text;
}
