import assert from 'node:assert/strict';
import { turning } from '../../server/src/physics/motor';
import {
  adiabaticTime,
  copperLoss,
  copperRatio,
  copperSpecificHeat,
  ironLoss,
} from '../../server/src/physics/motor-heat';
import { near } from '../support/near';
import { plainHeatAfter } from '../support/plain-heat';

const kelvin = (celsius: number) => celsius + 273.15;

describe('copper that warms', () => {
  const motor = { speedConstant: 1 / 0.0289, resistance: 0.044, idleCurrent: 0.7 };
  const speed = (5000 * 2 * Math.PI) / 60;
  const { current } = turning(motor, speed, 0.3 / speed ** 2);

  it('has 1.3144 times its resistance at 100 °C and 1.5306 times at 155 °C (IEC 60028: 0.393 % a kelvin, from 20 °C)', () => {
    near(copperRatio(kelvin(100)), 1.3144, 1e-4);
    near(copperRatio(kelvin(155)), 1.5306, 1e-4);
    // By the temperature at which it would have none, as standards for cables have it: (234.5 + T) / 254.5.
    near(copperRatio(kelvin(155)), (234.5 + 155) / 254.5, 2e-4);
    near(copperRatio(kelvin(20)), 1, 1e-12);
  });

  it('turns 5.4023 W into heat with 11.081 A in 44 mohm (loss model of F. Saemi and M. Benedict, Texas A&M: 0.3 Nm at 5000 rpm)', () => {
    near(copperLoss(0.044, current, kelvin(20)), 5.4023, 1e-4);
    near(copperLoss(0.044, current, kelvin(155)), 5.4023 * 1.5306, 1e-3);
  });

  it('and iron and bearings take 10.5924 W beside it (the same)', () => {
    near(ironLoss(motor, speed), 10.5924, 1e-4);
    near(current, 0.3 / 0.0289 + 0.7, 1e-9);
  });
});

describe('copper that keeps all of its heat', () => {
  /** A wire of 1 m and 1 mm²: ohm at 20 °C of 1.7241e-8 ohm m, and 8960 kg/m³. */
  const wire = (density: number, specificHeat = 385) => ({
    capacity: specificHeat * 8960 * 1e-6,
    loss: 1.7241e-8 * 1e6 * density ** 2,
  });

  it('warms at 50 A/mm² from 20 °C to 130, 155 and 180 °C in 7.34, 8.69 and 9.97 s, from 80 °C in 4.37 s (IEC 60949, K 226; 1 %)', () => {
    near(adiabaticTime(wire(50), kelvin(20), kelvin(130)), 7.34, 0.01);
    near(adiabaticTime(wire(50), kelvin(20), kelvin(155)), 8.69, 0.01);
    near(adiabaticTime(wire(50), kelvin(20), kelvin(180)), 9.97, 0.01);
    near(adiabaticTime(wire(50), kelvin(80), kelvin(155)), 4.37, 0.01);
    // Our specific heat, of another table, is a hundredth above.
    near(adiabaticTime(wire(50, copperSpecificHeat), kelvin(20), kelvin(155)), 8.69, 0.015);
  });

  it('and at 30 and 100 A/mm² to 155 °C in 24.15 and 2.174 s (the same)', () => {
    near(adiabaticTime(wire(30), kelvin(20), kelvin(155)), 24.15, 0.01);
    near(adiabaticTime(wire(100), kelvin(20), kelvin(155)), 2.174, 0.01);
  });

  it('has no time left where it is as warm already (definition)', () => {
    assert.equal(adiabaticTime(wire(50), kelvin(155), kelvin(130)), 0);
  });

  it('takes as long as small steps forward in time do (second reckoning, Runge and Kutta)', () => {
    const { capacity, loss } = wire(50);
    const alone = { winding: capacity, housing: 1, within: 1e9, toAir: 1, housingLoss: 0, air: kelvin(20) };
    const grown = (winding: number) => loss * (1 + 3.93e-3 * (winding - kelvin(20)));
    const seconds = adiabaticTime({ capacity, loss }, kelvin(20), kelvin(155));
    const [winding] = plainHeatAfter({ ...alone, loss: grown }, [kelvin(20), kelvin(20)], seconds, 1000);
    near(winding, kelvin(155), 1e-6);
  });
});
