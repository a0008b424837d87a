import { fixFor } from '../../checks/report/rule-fix';
import { CraftView } from '../../craft/view';
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
  const [first, ...also] = sets
    .filter(({ path }) => craft.catalog.parameter(path) !== undefined)
    .map(({ path, value, comment }) => ({ set: path, to: value, source: sourceOf(comment) }));
  if (first === undefined || also.length < sets.length - 1) return null;
  // What is measured holds for the craft as it was flown: no pack's section is written to.
  const fix = fixFor(new CraftView(craft, null), { ...first, title: first.set, also });
  const files = fix === null ? [] : editsOf(fix);
  return files.every(({ uri }) => uri === craft.root.uri) ? (files[0]?.edits ?? null) : null;
}

/** A comment ends with its line; what says nothing is none. */
function sourceOf(comment: string): string | undefined {
  const text = comment.replace(/\s+/g, ' ').trim();
  return text === '' ? undefined : text;
}
