import assert from 'node:assert/strict';
import { notchEdges, notchQuality } from '../../server/src/physics/notch';
import { near } from '../support/near';

describe('notches', () => {
  it('quality 30 at 60 Hz is 2 Hz wide (SciPy, docstring of iirnotch: w0 60 Hz, Q 30, bandwidth w0 / Q)', () => {
    assert.equal(notchQuality(60, 2), 30);
    near(200 / notchQuality(200, 57.14), 57.14, 1e-9);
  });

  it('the edges are at half power of (s² + 1) / (s² + s/Q + 1) (R. Bristow-Johnson, Audio EQ Cookbook)', () => {
    for (const [centre, width] of [
      [200, 57.14],
      [90, 90],
      [60, 2],
    ] as const) {
      const { low, high } = notchEdges(centre, width);
      near(high - low, width, 1e-12);
      for (const edge of [low, high]) {
        const x = edge / centre;
        const gain = Math.abs(1 - x * x) / Math.hypot(1 - x * x, x / notchQuality(centre, width));
        near(gain, Math.SQRT1_2, 1e-9);
      }
    }
  });

  it('a notch at 1500 Hz of quality 30 has its edges near 1475 and 1525 Hz (SciPy, test_fs_param)', () => {
    const { low, high } = notchEdges(1500, 1500 / 30);
    near(low, 1475, 1e-3);
    near(high, 1525, 1e-3);
  });
});
