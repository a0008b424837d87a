import { packEnergy, ratedCurrent, seriesVoltage } from '../../server/src/physics/cells';
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
});
