import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { URI } from 'vscode-uri';
import { resolveInclude } from '../../../server/src/craft/include-path';
import { canonicalUri } from '../../../server/src/workspace/canonical-uri';

describe('the one spelling of a URI', () => {
  const cases: readonly [string, string][] = [
    ['file:///work/a.craft', 'file:///work/a.craft'],
    ['file:///C%3A/cfg/a.craft', 'file:///c:/cfg/a.craft'],
    ['file:///c:/cfg/a.craft', 'file:///c:/cfg/a.craft'],
    ['file:///C:/cfg/a.craft', 'file:///c:/cfg/a.craft'],
    ['file:///c%3a/Cfg/A.craft', 'file:///c:/Cfg/A.craft'],
    ['file:///work/a%28b%29.craft', 'file:///work/a(b).craft'],
    ['file:///work/a(b).craft', 'file:///work/a(b).craft'],
    ['file:///work/a b.craft', 'file:///work/a%20b.craft'],
    ['file:///work/a%20b.craft', 'file:///work/a%20b.craft'],
    ['file:///work/a+b@c.craft', 'file:///work/a%2Bb%40c.craft'],
    ['file:///work/%c3%bc.craft', 'file:///work/%C3%BC.craft'],
    ['file:///work/\u00fc.craft', 'file:///work/%C3%BC.craft'],
    ['file:///work/100%.craft', 'file:///work/100%.craft'],
    ['file://server/share/a.craft', 'file://server/share/a.craft'],
    ['vscode-remote://ssh+host/work/a.craft', 'vscode-remote://ssh+host/work/a.craft'],
    ['shelf:/work/a(b) c.craft', 'shelf:/work/a(b)%20c.craft'],
    ['git:/work/a.craft?%7B%22ref%22%3A%22%22%7D', 'git:/work/a.craft?%7B%22ref%22%3A%22%22%7D'],
    ['untitled:Untitled-1', 'untitled:Untitled-1'],
    ['', ''],
  ];
  for (const [uri, canonical] of cases) {
    it(`of ${uri || 'nothing'} is ${canonical || 'nothing'}`, () => {
      assert.equal(canonicalUri(uri), canonical);
      assert.equal(canonicalUri(canonical), canonical);
    });
  }

  it('is the same for an include as for the editor that has the file open', () => {
    const name = fc.string({
      unit: fc.constantFrom(..."aZ9 -_.!~*'()&$+,;=@[]{}%#\u00fc\u{1f6e0}"),
      minLength: 1,
      maxLength: 12,
    });
    fc.assert(
      fc.property(name, (file) => {
        fc.pre(file !== '.' && file !== '..');
        const root = canonicalUri(URI.file('/work/my craft/main.craft').toString());
        const editor = canonicalUri(URI.file(`/work/my craft/${file}`).toString());
        assert.equal(resolveInclude(root, file), editor);
      }),
    );
  });

  it('is found for any text, and found once', () => {
    fc.assert(
      fc.property(fc.oneof(fc.webUrl(), fc.string({ unit: 'binary' })), (uri) => {
        const once = canonicalUri(uri);
        assert.equal(canonicalUri(once), once);
      }),
    );
  });
});
