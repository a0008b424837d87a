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
    const files = { 'club.craft': '[receiver]\norder = AETR\n[gyro.filter.1]\ncutoff = 0.12 kHz\n' };
    assert.deepEqual(labels(`${include}[receiver]\norder = AETR`, files), []);
    assert.deepEqual(labels(`${include}[gyro.filter.1]\ncutoff = 120 Hz`, files), []);
    assert.deepEqual(labels(`${include}[gyro.filter.1]\ncutoff = 121 Hz`, files), ['in place of 0.12 kHz']);
  });

  it('tell a value in another unit than it is written in', () => {
    assert.deepEqual(labels('[prop]\ndiameter = 3.5 in\npitch = 31 mm'), ['= 88.9 mm', '≈ 1.22 in']);
    assert.deepEqual(labels('[video]\npower = 14 dBm'), ['≈ 25.1 mW']);
  });

  it('tell what a calculation comes to without the tail of a conversion', () => {
    assert.deepEqual(labels('let a = 3 Hz\n[gyro.filter.1]\ncutoff = a * 100 / 7'), ['= 42.8571 Hz']);
  });
});

describe('inlay hints of effects', () => {
  const filters = [
    '[gyro]',
    'rate = 8 kHz',
    '[control]',
    'rate = 4 kHz',
    '[gyro.filter.1]',
    'kind   = butterworth',
  ];

  it('tell what a low-pass costs: √2 / (2 π 100 Hz) = 2.25 ms, a little more at 30 Hz', () => {
    const [hint] = inlayHints(snapshotOf([...filters, 'cutoff = 0.1 kHz'].join('\n')).snapshot, everything);
    assert.match(hint?.label ?? '', /^adds 2\.[34]\d ms$/);
    assert.match(
      hint?.tooltip ?? '',
      /^Delay of gyro filter 1: .*: group delay at 30 Hz: second-order low-pass at \d+ Hz/,
    );
  });

  it('tell nothing of a filter that is off', () => {
    const off = filters.map((line) => line.replace('butterworth', 'none'));
    assert.deepEqual(labels([...off, 'cutoff = 100 Hz'].join('\n')), []);
  });

  it('tell what each notch of a chain costs at its width', () => {
    const notches = ['[gyro.filter.1]', 'kind = notch', 'centre = 200 Hz', 'width = 40 Hz'];
    const more = ['[gyro.filter.2]', 'kind = notch', 'centre = 300 Hz', 'width = 40 Hz'];
    const told = labels([...filters.slice(0, 4), ...notches, ...more].join('\n'));
    const adding = told.filter((label) => label.startsWith('adds '));
    assert.equal(adding.length, 2);
    // 40 Hz / (2 π f²), the delay of a notch far below it: 0.159 ms at 200 Hz, less than half of it at 300 Hz.
    const [low = 0, high = 0] = adding.map((label) => Number(/[\d.]+/.exec(label)?.[0]));
    assert.ok(low > 0.159 && low < 0.18 && high < low / 2, adding.join(', '));
  });
});
