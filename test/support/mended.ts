import { codeActions } from '../../server/src/features/code-actions';
import type { Snapshot } from '../../server/src/features/snapshot';
import { applied } from './applied';
import { snapshotOf } from './snapshot';

const everything = { start: { line: 0, character: 0 }, end: { line: 9999, character: 0 } };

/** What each fix of one check makes of a whole text, in the order in which they are offered. */
export function mended(
  text: string,
  id: string,
  files: Readonly<Record<string, string>> = {},
  isIncluded?: () => boolean,
): readonly string[] {
  return mendedIn(snapshotOf(text, files, isIncluded).snapshot, id, files);
}

/** The same of a script that was checked already. */
export function mendedIn(
  snapshot: Snapshot,
  id: string,
  files: Readonly<Record<string, string>> = {},
): readonly string[] {
  const text = snapshot.script.document.text();
  return codeActions(snapshot, everything)
    .filter(({ kind, findings }) => kind !== 'accept' && findings[0]?.check.id === id)
    .map(({ edits }) => applied(edits, { ...files, 'main.craft': text })['main.craft'] ?? '');
}
