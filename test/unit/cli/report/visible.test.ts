import assert from 'node:assert/strict';
import { jsonText, visible } from '../../../../server/src/cli/report/visible';

const tricks = [
  '\u001b[2J',
  '\n',
  '\r',
  '\u0000',
  '\u007f',
  '\u009b31m',
  '\u0085',
  '\u2028',
  '\u2029',
  '\u202e',
  '\u2066',
  '\u200e',
  '\u200f',
  '\u061c',
];

describe('text that others wrote', () => {
  for (const trick of tricks) {
    it(`has no ${JSON.stringify(trick)} in it where a person sees it`, () => {
      const seen = visible(`a${trick}b.craft`);
      assert.ok(seen.startsWith('a\ufffd') && seen.endsWith('b.craft'), JSON.stringify(seen));
    });
  }

  it('is otherwise as it was', () => assert.equal(visible('Größe\t大きさ 🛩'), 'Größe\t大きさ 🛩'));

  it('is the same text in JSON, with nothing that a terminal would obey', () => {
    const data = { path: tricks.join('x'), list: [1] };
    const text = jsonText(data);
    assert.deepEqual(JSON.parse(text), data);
    assert.equal(visible(text.replaceAll('\n', '')), text.replaceAll('\n', ''));
  });
});
