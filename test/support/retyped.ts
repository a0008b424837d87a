import assert from 'node:assert/strict';
import type { Craft } from '../../server/src/craft/craft';

/**
 * Gives a craft's script another text as an editor does, by an edit of the lines that differ: what these do not concern
 * is not checked anew. That this comes to the same as a fresh craft is held by `test/sweeps/craft/incremental.test.ts`.
 */
export function retype(craft: Craft, text: string): void {
  const [before, after] = [craft.root.document.text().split('\n'), text.split('\n')];
  // The line before the first that differs, and all to the last: so lines may come and go.
  const shorter = Math.min(before.length, after.length);
  let from = 0;
  while (from < shorter - 1 && before[from + 1] === after[from + 1] && before[from] === after[from])
    from += 1;
  let same = 0;
  while (same < shorter - from - 1 && before.at(-1 - same) === after.at(-1 - same)) same += 1;
  const last = before.length - same - 1;
  craft.changed(
    craft.root.edit([
      {
        start: { line: from, character: 0 },
        end: { line: last, character: before[last]?.length ?? 0 },
        text: after.slice(from, after.length - same).join('\n'),
      },
    ]),
  );
  assert.equal(craft.root.document.text(), text);
}
