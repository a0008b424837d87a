import { strict as assert } from 'node:assert';
import { inlayHints } from '../../../server/src/features/inlay-hints';
import { snapshotOf } from '../../support/snapshot';

const everything = { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } };

function labels(text: string, files: Readonly<Record<string, string>> = {}): readonly string[] {
  return inlayHints(snapshotOf(text, files).snapshot, everything).map(({ label }) => label);
}

describe('inlay hints', () => {
  const include = 'include "club.craft"\n';

  it('tell what an included script would have had', () => {
    const files = { 'club.craft': '[receiver]\norder = TAER\n' };
    assert.deepEqual(labels(`${include}[receiver]\norder = AETR`, files), ['in place of TAER']);
  });

  it('tell nothing where nothing changes', () => {
    const files = { 'club.craft': '[receiver]\norder = AETR\n[gyro.lowpass]\ncutoff = 0.12 kHz\n' };
    assert.deepEqual(labels(`${include}[receiver]\norder = AETR`, files), []);
    assert.deepEqual(labels(`${include}[gyro.lowpass]\ncutoff = 120 Hz`, files), []);
    assert.deepEqual(labels(`${include}[gyro.lowpass]\ncutoff = 121 Hz`, files), ['in place of 0.12 kHz']);
  });

  it('tell what a calculation comes to without the tail of a conversion', () => {
    assert.deepEqual(labels('let a = 3 Hz\n[gyro.lowpass]\ncutoff = a * 100 / 7'), ['= 42.8571 Hz']);
  });
});
