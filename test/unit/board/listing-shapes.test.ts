import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { escapeCode } from '../../support/listing-shapes/dirt';
import { withAnotherValue, withOneMore, withoutSetting } from '../../support/listing-shapes/edits';
import { boardOf, type DrawnBoard, plans } from '../../support/listing-shapes/generate';
import type { PrintedListing, Stretch } from '../../support/listing-shapes/listing';
import { printed } from '../../support/listing-shapes/print';
import { shapeNames } from '../../support/listing-shapes/shapes';

const boards = plans().map(boardOf);
const anyBoard = { numRuns: 300, seed: 20_310_507 };

const part = (text: string, { start, end }: Stretch) => text.slice(start, end);
const said = ({ settings }: PrintedListing) =>
  settings.map(({ groups, name, value }) => JSON.stringify([groups, name, value.text]));

/** A board with the place of one of its settings. */
const oneOf = fc.tuple(boards, fc.nat(199), fc.nat(9999)).map(([board, place, seed]) => ({
  board,
  index: place % board.items.length,
  seed,
}));

/** What goes on in a further line, without its colours and the marks and blanks around the line end. */
function inOneLine(value: string): string {
  const plain = value.replaceAll(new RegExp(`${escapeCode}\\[[0-9;]*m`, 'g'), '');
  const [first = '', ...others] = plain.split(/[\r\n]+/);
  return others.length === 0
    ? plain
    : [first.replace(/\\?\s*$/, '').trimEnd(), ...others.map((one) => one.trimStart())].join(' ');
}

function holdsWhatItSays(board: DrawnBoard): void {
  const { text, settings } = printed(board);
  for (const { name, value, at } of settings) {
    assert.equal(part(text, at.name), name);
    if (at.value === null) assert.equal(value.look, 'presence');
    else assert.equal(inOneLine(part(text, at.value)), value.text);
  }
}

describe('the generator of listings', () => {
  it('has at least 16 shapes, of 3 to 200 settings', () => {
    assert.ok(shapeNames.length >= 16);
    const sizes = fc.sample(boards, anyBoard).map(({ items }) => items.length);
    assert.equal(Math.min(...sizes), 3);
    assert.ok(Math.max(...sizes) > 150 && Math.max(...sizes) <= 200);
  });

  it('prints each name and each value where it says that it stands', () => {
    fc.assert(fc.property(boards, holdsWhatItSays), anyBoard);
  });

  it('says where comments and headings stand', () => {
    const [plan] = fc.sample(plans(['brackets']), { numRuns: 1, seed: 3 });
    assert.ok(plan !== undefined);
    const { text, headings, comments, settings } = printed(boardOf({ ...plan, dirt: [] }));
    const told = new Set([
      ...[...headings, ...comments].map((line) => part(text, line)),
      ...settings.map(({ line }) => text.split('\n')[line] ?? ''),
    ]);
    for (const line of text.split('\n')) assert.equal(told.has(line), line !== '', line);
    assert.equal(headings.length, new Set(settings.flatMap(({ groups }) => groups)).size);
  });

  it('gives no two settings the same place in a board', () => {
    fc.assert(
      fc.property(boards, (board) => {
        const { settings } = printed(board);
        const keys = settings.map(({ groups, name, occurrence }) =>
          JSON.stringify([groups, name, occurrence]),
        );
        assert.equal(new Set(keys).size, keys.length);
      }),
      anyBoard,
    );
  });

  it('prints a board anew with one value changed, one setting less, one more', () => {
    fc.assert(
      fc.property(oneOf, ({ board, index, seed }) => {
        const before = said(printed(board));
        const changed = withAnotherValue(board, index, seed);
        if (changed !== null) {
          holdsWhatItSays(changed);
          const after = said(printed(changed));
          assert.deepEqual(after.toSpliced(index, 1), before.toSpliced(index, 1));
          assert.notEqual(after[index], before[index]);
        }
        assert.deepEqual(said(printed(withoutSetting(board, index))), before.toSpliced(index, 1));
        const more = withOneMore(board, index, seed);
        holdsWhatItSays(more);
        assert.deepEqual(said(printed(more)).toSpliced(index + 1, 1), before);
      }),
      anyBoard,
    );
  });
});
