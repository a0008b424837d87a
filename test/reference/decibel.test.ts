import assert from 'node:assert/strict';
import {
  decibelsOverMilliwatt,
  powerOfField,
  radiatedPower,
  wattsFrom,
} from '../../server/src/physics/decibel';
import { near } from '../support/near';

describe('power in decibels', () => {
  it('25 mW is 13.98 dBm (ETSI EN 300 440 writes the limit both ways) and 1 W is 30 dBm', () => {
    const table = [
      [1, 0],
      [10, 10],
      [25, 13.9794],
      [100, 20],
      [200, 23.0103],
      [600, 27.7815],
      [1000, 30],
    ] as const;
    for (const [milliwatts, decibels] of table) {
      assert.ok(Math.abs(decibelsOverMilliwatt(milliwatts * 1e-3) - decibels) < 1e-3);
      near(wattsFrom(decibels), milliwatts * 1e-3, 1e-4);
    }
  });

  it('1 W into an antenna of 6 dBi radiates 36 dBm (47 CFR 15.247(b))', () => {
    near(decibelsOverMilliwatt(radiatedPower(1, 6)), 36, 1e-9);
  });

  it('50 mV/m at 3 m is 0.75 mW, -1.25 dBm (47 CFR 15.249(a) with the plane wave formula)', () => {
    near(powerOfField(0.05, 3), 0.75e-3, 1e-12);
    assert.ok(Math.abs(decibelsOverMilliwatt(powerOfField(0.05, 3)) - -1.249) < 1e-3);
  });

  it('a half-wave dipole of 2.15 dBi adds 64 per cent (gain 1.64: any antenna textbook)', () => {
    near(radiatedPower(25e-3, 2.15), 25e-3 * 1.64, 1e-3);
  });
});
