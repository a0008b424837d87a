import { strict as assert } from 'node:assert';
import fc from 'fast-check';
import { relativeInclude, resolveInclude } from '../../../../server/src/craft/include-path';
import { followRenames, placeAfter } from '../../../../server/src/features/navigation/file-renames';
import { applied } from '../../../support/applied';
import { snapshotOf } from '../../../support/snapshot';

const part = fc.constantFrom('a', 'b c', 'é', 'a:b', '..x', '%41', '#', 'ü"ü');
const place = fc
  .array(part, { minLength: 1, maxLength: 4 })
  .map((parts) => `test:///${parts.map(encodeURIComponent).join('/')}`);

describe('the path of an include', () => {
  it('leads from any file to any other', () => {
    fc.assert(
      fc.property(place, place, (from, to) => {
        const path = relativeInclude(from, to);
        assert.ok(path !== null);
        assert.equal(resolveInclude(from, path), to);
      }),
    );
  });

  it('is none where a name can’t stand in one, or the other lies elsewhere altogether', () => {
    assert.equal(relativeInclude('test:///a', 'test:///b%5Cc'), null);
    assert.equal(relativeInclude('test:///a', 'other:///a'), null);
    assert.equal(relativeInclude('test://x/a', 'test://y/a'), null);
  });
});

describe('files that are to be called otherwise', () => {
  it('lie where the nearest rename takes them', () => {
    const renames = [
      { from: 'test:///a', to: 'test:///z' },
      { from: 'test:///a/b', to: 'test:///y' },
    ];
    assert.equal(placeAfter(renames, 'test:///a/c'), 'test:///z/c');
    assert.equal(placeAfter(renames, 'test:///a/b/c'), 'test:///y/c');
    assert.equal(placeAfter(renames, 'test:///ab'), 'test:///ab');
  });

  it('are followed whatever is renamed: each include leads to the same file as before', () => {
    const text =
      'include "habits.craft"\ninclude "./parts/tones.craft" # ours\nx = 1\ninclude "gone.craft"\n';
    const { script } = snapshotOf(text).snapshot;
    const home = script.uri.slice(0, script.uri.lastIndexOf('/'));
    const from = fc.constantFrom('habits.craft', 'parts', 'parts/tones.craft', 'gone.craft', 'main.craft');
    const to = fc.constantFrom('x.craft', 'deep/er/y', 'main.d', 'parts2');
    const rename = fc
      .record({ from, to })
      .map((one) => ({ from: `${home}/${one.from}`, to: `${home}/${one.to}` }));
    fc.assert(
      fc.property(fc.uniqueArray(rename, { selector: (one) => one.from, maxLength: 3 }), (renames) => {
        const { files, left } = followRenames([script], renames, new Map());
        assert.deepEqual(left, []);
        const after = applied(files, { 'main.craft': text })['main.craft'] ?? text;
        const targets = (where: string, lines: string) =>
          [...lines.matchAll(/^include "(.*)"/gm)].map(([, path = '']) => resolveInclude(where, path));
        assert.deepEqual(
          targets(placeAfter(renames, script.uri), after),
          targets(script.uri, text).map((uri) => placeAfter(renames, uri ?? '')),
        );
        assert.equal(after.replace(/".*"/g, ''), text.replace(/".*"/g, ''));
      }),
    );
  });

  it('may be boards, which are named by their files alone', () => {
    const text = '[board]\nprofile = rook # rook\n[craft]\nname = "rook"\nboard.profile = rook @ a\n';
    const { script } = snapshotOf(text).snapshot;
    const { files } = followRenames([script], [], new Map([['rook', 'crow']]));
    assert.equal(
      applied(files, { 'main.craft': text })['main.craft'],
      text.replace('= rook # rook', '= crow # rook'),
    );
  });
});
