import { copperResistivity, heatingRate, leadDrop, leadHeat } from '../../server/src/physics/lead';
import { near } from '../support/near';

/** Milliohm a metre: T. L. Floyd, Electric Circuit Fundamentals, 2nd ed., wire table as shown at HyperPhysics. */
const floyd = new Map([
  [12, 5.21],
  [14, 8.2841],
  [20, 33.3005],
]);
const perMetre = (gauge: number) => (floyd.get(gauge) ?? Number.NaN) / 1000;

describe('leads', () => {
  it('volts lost in 15 cm and back (ohm’s law on the resistances of Floyd’s wire table)', () => {
    near(leadDrop(0.15, perMetre(14), 60), 0.14911, 1e-3);
    near(leadDrop(0.15, perMetre(12), 60), 0.09378, 1e-3);
    near(leadDrop(0.15, perMetre(20), 20), 0.1998, 1e-3);
  });

  it('heat a metre (Joule’s law)', () => {
    near(leadHeat(perMetre(20), 20), 13.3202, 1e-6);
  });

  it('copper: the area from the resistance is that of ASTM B258, 2.0809 mm² for 14 AWG (from memory)', () => {
    near((copperResistivity / perMetre(14)) * 1e6, 2.0809, 5e-4);
  });

  it('warming at first agrees with Onderdonk’s equation for 14 AWG at 60 A (equation from memory)', () => {
    // 33 (I/A)² t = log10(1 + rise / (234 + ambient)), A in circular mils, ambient in degC.
    const circularMils = 64.08 ** 2;
    const seconds = 0.01;
    const rise = (10 ** (33 * (60 / circularMils) ** 2 * seconds) - 1) * (234 + 20);
    near(heatingRate(perMetre(14), 60), rise / seconds, 0.03);
  });
});
