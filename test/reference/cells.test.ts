import { chargeAtRest, packEnergy, ratedCurrent, seriesVoltage } from '../../server/src/physics/cells';
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

  it('at 3.82 V at rest 52 % are left in a 4.2 V cell (Linux kernel, ab8500_bmdata.c), 56 % in a pouch (W. Ai et al., J. Electrochem. Soc. 167, 2020)', () => {
    const phoneCell = [3.094, 3.676, 3.73, 3.768, 3.787, 3.812, 3.866, 3.926, 3.99, 4.068, 4.186];
    const pouch = [3.0, 3.6391, 3.6953, 3.7331, 3.7622, 3.7925, 3.8365, 3.9089, 3.9944, 4.0879, 4.2];
    const table = (volts: readonly number[]) =>
      volts.map((voltage, index) => ({ charge: index / 10, voltage }));
    near(chargeAtRest(table(phoneCell), 3.82), 0.52, 0.01);
    near(chargeAtRest(table(pouch), 3.82), 0.56, 0.01);
    near(chargeAtRest(table(pouch), 3.7), 0.212, 0.01);
  });

  it('outside its open-circuit table a cell is empty or full (definition)', () => {
    const table = [
      { charge: 0, voltage: 3 },
      { charge: 1, voltage: 4 },
    ];
    near(chargeAtRest(table, 2.5), 0, 1e-12);
    near(chargeAtRest(table, 3.25), 0.25, 1e-12);
    near(chargeAtRest(table, 4.5), 1, 1e-12);
  });
});
