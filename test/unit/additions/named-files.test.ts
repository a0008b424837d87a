import { strict as assert } from 'node:assert';
import { boardNameEdits, chosenPathEdits } from '../../../server/src/additions/named-files';

describe('what JSON files call others', () => {
  it('is the board beside its text, and nothing else of that name', () => {
    const text = '{ "version": 1, "board": "rook", "accepted": [{ "reason": "rook" }] }';
    const [edit, ...more] = boardNameEdits(text, new Map([['rook', 'crow']]));
    assert.deepEqual(more, []);
    assert.equal(text.slice(edit?.at.start, edit?.at.end), '"rook"');
    assert.equal(edit?.newText, '"crow"');
    assert.deepEqual(boardNameEdits(text, new Map([['wren', 'crow']])), []);
    assert.deepEqual(boardNameEdits('{ "board": 3 }', new Map([['3', 'crow']])), []);
  });

  it('is a path that is chosen; a pattern may mean others as well', () => {
    const text =
      '{ "check": ["a.craft", "*.craft"], "leaveOut": ["a.craft"], "levels": { "a.craft": "off" } }';
    const edits = chosenPathEdits(text, (path) => (path.endsWith('.craft') ? 'b.craft' : undefined));
    assert.deepEqual(
      edits.map(({ at }) => text.slice(at.start, at.end)),
      ['"a.craft"', '"a.craft"'],
    );
  });

  it('is left alone in what is no JSON', () => {
    assert.deepEqual(
      chosenPathEdits('{ "check": ["a"', () => 'b'),
      [],
    );
    assert.deepEqual(boardNameEdits('board', new Map([['board', 'b']])), []);
  });
});
