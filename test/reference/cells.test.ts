import assert from 'node:assert/strict';
import { packEnergy, plausibleCells, ratedCurrent, sag, seriesVoltage } from '../../server/src/physics/cells';
import { near } from '../support/near';

const ampereHour = 3600;

describe('cells and packs', () => {
  it('full packs of 1 to 5 cells (TI BQ25730 data sheet SLUSE65A, charge voltage defaults)', () => {
    for (const [cells, volts] of [
      [1, 4.2],
      [2, 8.4],
      [3, 12.6],
      [4, 16.8],
      [5, 21.0],
    ] as const) {
      near(seriesVoltage(cells, 4.2), volts, 1e-12);
    }
  });

  it('1 C of 1000 mAh is 1 A, 0.1 C is 100 mA (definition of the C-rate, akkus-battery.com)', () => {
    near(ratedCurrent(1 / 3600, 1 * ampereHour), 1, 1e-12);
    near(ratedCurrent(0.1 / 3600, 1 * ampereHour), 0.1, 1e-12);
    near(ratedCurrent(75 / 3600, 1.5 * ampereHour), 112.5, 1e-12);
  });

  it('four cells of 1.5 Ah hold 22.2 Wh (volts × ampere hours)', () => {
    near(packEnergy(14.8, 1.5 * ampereHour) / 3600, 22.2, 1e-12);
  });

  it('four cells of 3 milliohm sag by 0.72 V at 60 A (ohm’s law)', () => {
    near(sag(60, 4 * 3e-3), 0.72, 1e-12);
  });

  it('which counts a voltage can belong to, at 3.0 to 4.25 V a cell (common practice)', () => {
    assert.deepEqual(plausibleCells(16.8, 3, 4.25), [4, 5]);
    assert.deepEqual(plausibleCells(12.6, 3, 4.25), [3, 4]);
    assert.deepEqual(plausibleCells(25.2, 3, 4.25), [6, 7, 8]);
    assert.deepEqual(plausibleCells(2.5, 3, 4.25), []);
  });
});
