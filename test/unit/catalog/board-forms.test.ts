import { strict as assert } from 'node:assert';
import { boardForms } from '../../../server/src/catalog/model/board-forms';

describe('the forms of a board’s listing', () => {
  it('are as good as empty where nothing but the container is known', () => {
    const { lines, comments, indent, decimal } = boardForms.parse({ container: 'lines' });
    assert.deepEqual(
      { lines, comments, indent, decimal },
      { lines: [], comments: [], indent: 'none', decimal: '.' },
    );
  });

  it('hold nothing that would break a line or turn text around', () => {
    for (const comment of ['', '#\n', '\u001b[2J', '\u202e#'])
      assert.equal(boardForms.safeParse({ container: 'lines', comments: [comment] }).success, false);
  });
});
