import type { Finding, Fix, FixEdit } from '../checks/report/finding';
import type { Script } from '../craft/script';
import { rangeOf, type TextEdit } from './range';
import type { Snapshot } from './snapshot';
import type { FileEdits } from './text-edits';

/** The edits of a fix by script, in order. */
export function editsOf({ edits }: Fix): readonly FileEdits[] {
  const files = new Map<string, TextEdit[]>();
  for (const edit of edits) {
    const { uri } = edit.place.script;
    const inFile = files.get(uri);
    if (inFile === undefined) files.set(uri, [textEdit(edit)]);
    else inFile.push(textEdit(edit));
  }
  return [...files].map(([uri, inFile]) => ({ uri, edits: inFile.sort(byStart) }));
}

/** What is taken out at the end of a line takes the blanks before it along, and all of a line the line itself. */
function textEdit({ place, newText, stops = [] }: FixEdit): TextEdit {
  const { text } = place.line;
  const isEnd = newText === '' && place.end > place.start && text.slice(place.end).trim() === '';
  if (!isEnd) return { range: rangeOf(place), newText, ...(stops.length === 0 ? {} : { stops }) };
  const start = text.slice(0, place.start).trimEnd().length;
  const range = rangeOf({ ...place, start, end: text.length });
  const isFollowed = place.script.document.lineAt(range.start.line + 1) !== undefined;
  if (start > 0 || !isFollowed) return { range, newText };
  return { range: { ...range, end: { line: range.start.line + 1, character: 0 } }, newText };
}

function byStart({ range: one }: TextEdit, { range: other }: TextEdit): number {
  return one.start.line - other.start.line || one.start.character - other.start.character;
}

/**
 * Whether two edits of one script get in each other's way. Insertions do so with all that they touch: two
 * settings added at one place may be the same one.
 */
function collide({ range: one }: TextEdit, { range: other }: TextEdit): boolean {
  const before = order(one.end, other.start);
  const after = order(other.end, one.start);
  const isInsertion = order(one.start, one.end) === 0 || order(other.start, other.end) === 0;
  return isInsertion ? before >= 0 && after >= 0 : before > 0 && after > 0;
}

function order(one: TextEdit['range']['start'], other: TextEdit['range']['start']): number {
  return one.line - other.line || one.character - other.character;
}

/** The fixes that can be made at once, with their edits in order, none over another. */
export interface FixesAtOnce {
  readonly fixes: readonly Fix[];
  readonly edits: readonly TextEdit[];
}

/**
 * The fix of every finding that has exactly one, as far as they change this script alone: one that gets in the way
 * of an earlier one waits for the next time, and one that asks the pilot to look is never made so. `takesFirst`: of a finding with several fixes the first one as well.
 */
export function fixesAtOnce(
  script: Script,
  findings: readonly Finding[],
  { takesFirst = false }: { readonly takesFirst?: boolean } = {},
): FixesAtOnce {
  const fixes: Fix[] = [];
  const chosen: TextEdit[] = [];
  const busy = new Map<number, TextEdit[]>();
  for (const finding of findings) {
    const [fix, ...rest] = finding.fixes;
    if (fix === undefined || fix.isHelp === true || (rest.length > 0 && !takesFirst)) continue;
    const [file, ...others] = editsOf(fix);
    if (file === undefined || others.length > 0 || file.uri !== script.uri) continue;
    if (file.edits.some((edit) => (busy.get(edit.range.start.line) ?? []).some((one) => collide(one, edit))))
      continue;
    fixes.push(fix);
    for (const edit of file.edits) {
      chosen.push(edit);
      busy.set(edit.range.start.line, [...(busy.get(edit.range.start.line) ?? []), edit]);
    }
  }
  return { fixes, edits: chosen.sort(byStart) };
}

/** The edits with which all that has one fix is mended at once. */
export function fixAll({ script, findings }: Snapshot): readonly TextEdit[] {
  return fixesAtOnce(script, findings()).edits;
}
