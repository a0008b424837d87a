import { strict as assert } from 'node:assert';
import { type Definition, definition } from '../../../../server/src/features/navigation/definition';
import type { Snapshot } from '../../../../server/src/features/snapshot';
import { snapshotOf } from '../../../support/snapshot';

/** Where it leads, as `file:line name`, lines counted from 1. */
function targetsOf(found: Definition | null): readonly string[] {
  return (found?.targets ?? []).map(({ uri, selection }) => {
    const { start, end } = selection;
    return `${uri.slice('test:///work/'.length)}:${start.line + 1} ${start.character}-${end.character}`;
  });
}

function defined(marked: string, files: Readonly<Record<string, string>> = {}): readonly string[] {
  const { snapshot, position } = snapshotOf(marked, files);
  return targetsOf(definition(snapshot, position));
}

describe('definition', () => {
  it('leads from a constant in a value to where it is set', () => {
    assert.deepEqual(defined('let quiet = 90 Hz\n[gyro.filter.1]\ncutoff = 2 * qui|et'), [
      'main.craft:1 4-9',
    ]);
  });

  it('leads to an included script, the line that counts first', () => {
    const files = { 'club.craft': 'let quiet = 80 Hz\n' };
    assert.deepEqual(defined('include "club.craft"\nlet loud = |quiet', files), ['club.craft:1 4-9']);
    assert.deepEqual(defined('include "club.craft"\nlet quiet = 9 Hz\nlet loud = quiet|', files), [
      'main.craft:2 4-9',
      'club.craft:1 4-9',
    ]);
  });

  it('leads from a parameter in a value to its line, that for the pack in view first', () => {
    const text =
      '[pack.sprint]\ncells = 6\n[gyro]\nrate = 6 kHz\n[gyro @ sprint]\nrate = 3 kHz\n[gyro.filter.2]\nfrom = gyro.ra|te';
    assert.deepEqual(defined(text), ['main.craft:6 0-4', 'main.craft:4 0-4']);
  });

  it('leads from the word for a pack and from an overlay to the section of the pack', () => {
    const text = '[flight.first]\npack = spr|int\n[pack.sprint]\ncells = 6\n';
    assert.deepEqual(defined(text), ['main.craft:3 6-12']);
    assert.deepEqual(defined('[power @ |cruise]\nx = 1\n[pack.cruise]'), ['main.craft:3 6-12']);
    assert.deepEqual(defined('pack.sprint.cells = 6\nlet a = pack.spri|nt.cells'), ['main.craft:1 5-11']);
  });

  it('leads from an include to the start of the script, if it is there', () => {
    const files = { 'parts/club.craft': 'let a = 1' };
    assert.deepEqual(defined('include "parts/cl|ub.craft"', files), ['parts/club.craft:1 0-0']);
    assert.deepEqual(defined('include "none|.craft"'), []);
  });

  it('leads nowhere from words, texts, comments, blanks and outside the script', () => {
    for (const text of ['gyro.filter.1.kind = o|ff', 'name = "a| b"', 'x = 1 # no|te', '|', 'x = unk|nown']) {
      assert.deepEqual(defined(text), []);
    }
    const { snapshot } = snapshotOf('x = 1');
    assert.equal(definition(snapshot, { line: 9, character: 9 }), null);
  });

  it('finds what the script that includes this one sets, when that is open', () => {
    const files = { 'part.craft': 'let loud = 2 * quiet\n' };
    const { snapshot: whole } = snapshotOf('let quiet = 9 Hz\ninclude "part.craft"', files);
    const part = whole.craft.layers().layers[1]?.script;
    assert.ok(part !== undefined);
    const snapshot: Snapshot = { ...snapshotOf('').snapshot, script: part };
    assert.equal(definition(snapshot, { line: 0, character: 16 }), null);
    const found = definition(snapshot, { line: 0, character: 16 }, [whole.craft]);
    assert.deepEqual(targetsOf(found), ['main.craft:1 4-9']);
  });
});
