import assert from 'node:assert/strict';
import fc from 'fast-check';
import { code, escaped, plainText } from '../../../server/src/features/markdown';

describe('text in a hover (G06)', () => {
  const hostile = [
    '[run](command:workbench.action.quit)',
    '<img src=x onerror=1>',
    'a_b_c',
    '```',
    'one | two',
    'https://example.org/x',
    '![picture](https://example.org/x.png)',
    '&lt;b&gt;',
    '# heading',
    '1. list',
    '$(zap) ~~gone~~ **loud**',
  ];
  for (const text of hostile) {
    it(`is shown as typed: ${text}`, () => {
      assert.equal(plainText(escaped(text)), text);
      assert.equal(plainText(code(text)), text);
    });
  }

  it('holds no link, no tag and no picture, whatever is in it', () => {
    const live = /(?<!\\)\]\(|<[a-z!/]|!\[|(?<!\\):\/\//i;
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.constantFrom(...hostile)), (text) => !live.test(escaped(text))),
    );
  });

  it('comes back as it was, but for its line ends', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        assert.equal(plainText(escaped(text)), text.replace(/\s*[\r\n]+\s*/g, ' '));
      }),
    );
  });

  it('as code is fenced by more backticks than it holds', () => {
    assert.equal(code('a'), '`a`');
    assert.equal(code('a`b'), '``a`b``');
    assert.equal(code('`'), '`` ` ``');
  });
});
