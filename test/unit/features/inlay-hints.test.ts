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

describe('inlay hints of effects', () => {
  const filters = [
    '[gyro]',
    'rate = 8 kHz',
    '[control]',
    'rate = 4 kHz',
    '[gyro.lowpass]',
    'shape = butterworth',
  ];

  it('tell what a low-pass costs: √2 / (2 π 100 Hz) = 2.25 ms, a little more at 30 Hz', () => {
    const [hint] = inlayHints(snapshotOf([...filters, 'cutoff = 0.1 kHz'].join('\n')).snapshot, everything);
    assert.match(hint?.label ?? '', /^adds 2\.[34]\d ms$/);
    assert.match(hint?.tooltip ?? '', /^Delay of the first low-pass: .*: group delay of 1 filter at 30 Hz/);
  });

  it('tell nothing of a filter that is off', () => {
    const off = filters.map((line) => line.replace('butterworth', 'off'));
    assert.deepEqual(labels([...off, 'cutoff = 100 Hz'].join('\n')), []);
  });

  it('tell what fixed notches cost together at each of them', () => {
    const notches = ['[gyro.notch.1]', 'centre = 200 Hz', 'width = 40 Hz'];
    const more = ['[gyro.notch.2]', 'centre = 300 Hz', 'width = 40 Hz'];
    const told = labels([...filters.slice(0, 4), ...notches, ...more].join('\n'));
    const adding = told.filter((label) => label.startsWith('fixed notches add '));
    assert.equal(adding.length, 2);
    assert.equal(adding[0], adding[1]);
  });
});
