import { byStart, collide, editsOf } from './fix-edits';
import type { TextEdit } from './range';
import type { Snapshot } from './snapshot';

/**
 * The edits of every finding of the script that has exactly one fix, in order, none over another: a fix
 * that gets in the way of an earlier one waits for the next time.
 */
export function fixAll(snapshot: Snapshot): readonly TextEdit[] {
  const chosen: TextEdit[] = [];
  const busy = new Map<number, TextEdit[]>();
  for (const { fixes } of snapshot.findings()) {
    const [fix] = fixes;
    if (fix === undefined || fixes.length > 1) continue;
    const [file, ...others] = editsOf(fix);
    if (file === undefined || others.length > 0 || file.uri !== snapshot.script.uri) continue;
    if (file.edits.some((edit) => (busy.get(edit.range.start.line) ?? []).some((one) => collide(one, edit))))
      continue;
    for (const edit of file.edits) {
      chosen.push(edit);
      busy.set(edit.range.start.line, [...(busy.get(edit.range.start.line) ?? []), edit]);
    }
  }
  return chosen.sort(byStart);
}
