import assert from 'node:assert/strict';
import { measuredNumber } from '../../../server/src/units/number-text';

describe('the digits of a measured number', () => {
  for (const [value, low, high, text] of [
    [186.347, 185.1, 187.6, '186.3'],
    [5.4712, 3.97, 6.97, '5.5'],
    [1, 0.986, 1.02, '1.000'],
    [0.0185, -0.583, 0.62, '0.0'],
    [-0.003, -0.607, 0.595, '0.0'],
    [-1.2864, -1.2864, -1.2864, '-1.29'],
  ] as const)
    it(`of ${value}, from ${low} to ${high}, are those of ${text}`, () => {
      assert.equal(measuredNumber(value, { low, high }), text);
    });
});
