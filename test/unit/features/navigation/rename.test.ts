import { strict as assert } from 'node:assert';
import { prepareRename, rename } from '../../../../server/src/features/navigation/rename';
import type { Snapshot } from '../../../../server/src/features/snapshot';
import { applied } from '../../../support/applied';
import { snapshotOf, withoutCursor } from '../../../support/snapshot';

type Files = Readonly<Record<string, string>>;

/** The texts that change, or why they don't. */
function renamed(marked: string, newName: string, files: Files = {}): Files | string {
  const { snapshot, position } = snapshotOf(marked, files);
  const result = rename(snapshot, position, newName);
  if ('refused' in result) return result.refused;
  return applied(result.files, { ...files, 'main.craft': withoutCursor(marked).text });
}

const club = {
  'club.craft': 'include "low.craft"\n[power @ sprint]\nwarn-cell = 3.5 V # sprint\n',
  'low.craft': '[flight.first]\npack = sprint\nnote = "sprint"\n[gyro.filter.2]\nfrom = quiet\n',
};

describe('rename', () => {
  it('changes a constant everywhere in the craft and nothing else', () => {
    const text =
      'include "club.craft"\nlet quiet = 90 Hz # quiet\n[gyro.filter.1]\ncutoff = 2 * |quiet + quiet-er\n';
    assert.deepEqual(renamed(text, 'calm', club), {
      'main.craft':
        'include "club.craft"\nlet calm = 90 Hz # quiet\n[gyro.filter.1]\ncutoff = 2 * calm + quiet-er\n',
      'low.craft': club['low.craft'].replace('quiet', 'calm'),
    });
  });

  it('changes a pack in headers, overlays, paths and the words that name it, over three scripts (H01)', () => {
    const text =
      'include "club.craft"\n[pack.|sprint]\ncells = 6\n[gyro @ sprint]\nrate = pack.sprint.cells * 1 kHz\n[pack.sprinter]\n';
    assert.deepEqual(renamed(text, 'dash', club), {
      'main.craft':
        'include "club.craft"\n[pack.dash]\ncells = 6\n[gyro @ dash]\nrate = pack.dash.cells * 1 kHz\n[pack.sprinter]\n',
      'club.craft': 'include "low.craft"\n[power @ dash]\nwarn-cell = 3.5 V # sprint\n',
      'low.craft': '[flight.first]\npack = dash\nnote = "sprint"\n[gyro.filter.2]\nfrom = quiet\n',
    });
  });

  it('changes a pack in settings with their whole path', () => {
    assert.deepEqual(renamed('pack.spri|nt.cells = 6\npack.sprint.mass = 1 g', 'dash'), {
      'main.craft': 'pack.dash.cells = 6\npack.dash.mass = 1 g',
    });
  });

  it('gives the text before when renamed back (H01)', () => {
    const text = 'let quiet = 90 Hz\nlet loud = quiet';
    const once = renamed(`|${text}`.replace('|let ', 'let |'), 'calm');
    assert.ok(typeof once !== 'string');
    const again = renamed((once['main.craft'] ?? '').replace('let ', 'let |'), 'quiet');
    assert.deepEqual(again, { 'main.craft': text });
  });

  it('works on the text as it stands, edits included (H01)', () => {
    const { snapshot } = snapshotOf('let quiet = 1 Hz\n');
    const end = { line: 1, character: 0 };
    snapshot.script.edit([{ start: end, end, text: 'let loud = quiet\n' }]);
    const result = rename(snapshot, { line: 0, character: 5 }, 'calm');
    assert.ok('files' in result);
    assert.equal(result.files[0]?.edits.length, 2);
  });

  it('refuses names that are taken, and says where (H01)', () => {
    const text = 'include "club.craft"\nlet |calm = 1 Hz\nlet loud = 2 Hz';
    assert.equal(renamed(text, 'loud', club), 'The name loud is taken by a constant in line 3.');
    assert.match(String(renamed(text, 'quiet', club)), /taken by a constant in line 5 of low\.craft/);
    assert.match(String(renamed('[pack.a|]\n[pack.b]', 'b')), /^The name b is taken by a pack in line 2/);
  });

  it('lets a pack and a constant have one name', () => {
    assert.deepEqual(renamed('let quiet = 1 Hz\n[pack.a|]', 'quiet'), {
      'main.craft': 'let quiet = 1 Hz\n[pack.quiet]',
    });
  });

  it('refuses names that a script cannot hold (H01)', () => {
    for (const name of ['', '6s', 'two words', 'a.b', 'a_b', '-a', 'a-', 'a--b', 'é', 'a"b']) {
      assert.match(String(renamed('let |quiet = 1 Hz', name)), /can't be called/, name);
    }
    assert.match(String(renamed('let |quiet = 1 Hz', 'min')), /meaning of its own/);
    assert.match(String(renamed('let |quiet = 1 Hz', 'auto')), /meaning of its own/);
  });

  it('changes nothing where the name stays', () => {
    assert.deepEqual(renamed('let |quiet = 1 Hz', 'quiet'), {});
  });

  it('refuses what has no name of the pilot’s own', () => {
    for (const text of [
      'gyro.ra|te = 6 kHz',
      '[gy|ro]',
      'gyro.filter.1.kind = o|ff',
      'x = 1 # qui|et',
      'include "a|"',
    ]) {
      assert.equal(renamed(text, 'other'), 'Only constants and packs can be renamed.');
    }
  });

  it('reaches the scripts that include this one when they are open, and what they include', () => {
    const part = 'let loud = 2 * quiet\n';
    const text = 'let quiet = 9 Hz\ninclude "part.craft"\ninclude "more.craft"';
    const files = { 'part.craft': part, 'more.craft': 'let more = quiet' };
    const { snapshot: whole } = snapshotOf(text, files);
    const script = whole.craft.layers().layers[1]?.script;
    assert.ok(script !== undefined);
    const unrelated = snapshotOf('let quiet = 1 V').snapshot;
    const snapshot: Snapshot = { ...snapshotOf('').snapshot, script };
    const result = rename(snapshot, { line: 0, character: 16 }, 'calm', [unrelated.craft, whole.craft]);
    assert.ok('files' in result);
    assert.deepEqual(applied(result.files, { ...files, 'main.craft': text }), {
      'main.craft': text.replace('quiet', 'calm'),
      'part.craft': part.replace('quiet', 'calm'),
      'more.craft': 'let more = calm',
    });
  });
});

describe('prepare rename', () => {
  it('gives the name with its exact bounds (G09)', () => {
    const { snapshot, position } = snapshotOf('[power @ low-spri|nt]');
    assert.deepEqual(prepareRename(snapshot, position), {
      range: { start: { line: 0, character: 9 }, end: { line: 0, character: 19 } },
      placeholder: 'low-sprint',
    });
  });

  it('refuses with a sentence', () => {
    const { snapshot, position } = snapshotOf('gyro.ra|te = 1 kHz');
    assert.deepEqual(prepareRename(snapshot, position), {
      refused: 'Only constants and packs can be renamed.',
    });
  });
});
