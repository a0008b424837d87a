import { strict as assert } from 'node:assert';
import { highlights } from '../../../../server/src/features/navigation/highlights';
import { references } from '../../../../server/src/features/navigation/references';
import { snapshotOf } from '../../../support/snapshot';

const club = { 'club.craft': '[gyro.filter.2]\nfrom = quiet\n[power @ sprint]\nwarn-cell = 3.5 V\n' };

/** As `file:line start-end`, lines counted from 1. */
function found(
  marked: string,
  files: Readonly<Record<string, string>> = {},
  withDefinitions = true,
): readonly string[] {
  const { snapshot, position } = snapshotOf(marked, files);
  return references(snapshot, position, { withDefinitions }).map(({ uri, range: { start, end } }) => {
    const name = uri.slice('test:///work/'.length);
    return `${name}:${start.line + 1} ${start.character}-${end.character}`;
  });
}

describe('references', () => {
  it('finds a constant in all scripts of the craft, and nothing that only looks like it', () => {
    const text =
      'include "club.craft"\nlet qui|et = 90 Hz # quiet\nlet b = 2 * quiet\ngyro.filter.1.kind = quiet\nnote = "quiet"';
    assert.deepEqual(found(text, club), ['main.craft:2 4-9', 'main.craft:3 12-17', 'club.craft:2 7-12']);
    assert.deepEqual(found('let a = 1\nlet b| = a\nlet ab = b', {}, false), ['main.craft:3 9-10']);
  });

  it('finds a pack in headers, overlays, paths and words', () => {
    const text =
      'include "club.craft"\n[pack.spr|int]\ncells = 6\n[flight.first]\npack = sprint\nnote = "sprint"\n[gyro @ sprint]\nrate = pack.sprint.cells * 1 Hz';
    assert.deepEqual(found(text, club), [
      'main.craft:2 6-12',
      'main.craft:5 7-13',
      'main.craft:7 8-14',
      'main.craft:8 12-18',
      'club.craft:3 9-15',
    ]);
  });

  it('finds a pack named in a setting below its collection', () => {
    assert.deepEqual(found('[pack]\nspri|nt.cells = 6\npack.sprint = 1'), ['main.craft:2 0-6']);
  });

  it('finds a parameter set for all and for one pack, and where it is calculated with', () => {
    const text = 'gyro.ra|te = 6 kHz\n[gyro @ sprint]\nrate = 3 kHz\n[control]\nrate = gyro.rate / 2';
    assert.deepEqual(found(text), ['main.craft:1 0-9', 'main.craft:3 0-4', 'main.craft:5 7-16']);
  });

  it('finds all includes of one script', () => {
    const files = { 'a.craft': 'include "b.craft"', 'b.craft': '' };
    assert.deepEqual(found('include "a.craft"\ninclude "./b.c|raft"', files), [
      'main.craft:2 8-19',
      'a.craft:1 8-17',
    ]);
  });
});

describe('highlights', () => {
  it('tell where a name is set from where it is read, in this script only', () => {
    const { snapshot, position } = snapshotOf('include "club.craft"\nlet quiet = 1 Hz\nlet b = |quiet', club);
    assert.deepEqual(
      highlights(snapshot, position).map(({ range, kind }) => `${range.start.line} ${kind}`),
      ['1 write', '2 read'],
    );
  });

  it('take a key as one word, with the bounds that renaming has (G09)', () => {
    const { snapshot, position } = snapshotOf('gyro.low|pass.cutoff = 1 Hz');
    assert.deepEqual(
      highlights(snapshot, position).map(({ range }) => [range.start.character, range.end.character]),
      [[0, 19]],
    );
  });

  it('are none on words, units and comments', () => {
    for (const text of ['gyro.filter.1.kind = butter|worth', 'x = 1 H|z', 'x = 1 # no|te']) {
      const { snapshot, position } = snapshotOf(text);
      assert.deepEqual(highlights(snapshot, position), []);
    }
  });
});
