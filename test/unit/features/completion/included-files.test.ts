import assert from 'node:assert/strict';
import type { Script } from '../../../../server/src/craft/script';
import { completion } from '../../../../server/src/features/completion/completion';
import { snapshotOf } from '../../../support/snapshot';

/** The line at the `|` after each of the files that are offered there has been taken. */
function written(
  marked: string,
  around: readonly string[],
  trigger: string | null = null,
): readonly string[] {
  const { snapshot, position } = snapshotOf(marked);
  const folder = snapshot.script.uri.replace(/[^/]*$/, '');
  const others = () => around.map((path) => ({ uri: new URL(path, folder).href }) as Script);
  const { items } = completion({ ...snapshot, others }, position, { snippets: true, trigger });
  const line = snapshot.script.document.lineAt(position.line)?.text ?? '';
  return items.map(
    ({ range: { start, end }, insertText }) =>
      line.slice(0, start.character) + insertText + line.slice(end.character),
  );
}

const around = ['parts/motors.craft', 'club.craft', '../shared%20habits.craft'];
const all = ['include "club.craft"', 'include "../shared habits.craft"', 'include "parts/motors.craft"'];

describe('what is offered behind include', () => {
  it('are the scripts around, the nearest first, wherever the path is being typed', () => {
    for (const marked of ['include |', 'include "|', 'include "|"', 'include "clu|', 'include "clu|b.craft"'])
      assert.deepEqual(written(marked, around), all, marked);
  });

  it('keeps a comment behind the path', () =>
    assert.deepEqual(written('include "|old.craft"  # habits', ['club.craft']), [
      'include "club.craft"  # habits',
    ]));

  it('comes with the quote that opens the path, and with no other quote', () => {
    assert.deepEqual(written('include "|', around, '"'), all);
    assert.deepEqual(written('craft.name = "|', around, '"'), []);
  });

  it('is nothing behind the path, and no file that a path can’t name', () => {
    assert.deepEqual(written('include "club.craft" |', around), []);
    assert.deepEqual(written('include "|"', ['a%22b.craft']), []);
  });
});
