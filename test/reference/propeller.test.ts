import {
  discLoading,
  idealPower,
  pitchSpeed,
  propellerPower,
  propellerThrust,
  speedForThrust,
  tipSpeed,
  torqueFactor,
} from '../../server/src/physics/propeller';
import { near } from '../support/near';

const perMinute = (2 * Math.PI) / 60;

describe('propellers (University of Illinois Propeller Data Site, volume 2, static tests)', () => {
  const inch = 0.0254;
  const rows = [
    ['da4002 5x3.75', 5, 7440, 0.129_02, 0.092_551, 0.6322, 7.1417],
    ['da4022 5x3.75, three blades', 5, 6946.667, 0.212_221, 0.133_203, 0.906_55, 8.3665],
    ['da4052 5x3.75, three blades', 5, 7946.667, 0.149_294, 0.094_482, 0.834_57, 8.8839],
    ['nr640 5x4.29', 5, 9420, 0.098_228, 0.073_365, 0.771_59, 11.4906],
    ['apcff 4.2x4', 4.2, 9880, 0.129_241, 0.106_961, 0.556_01, 8.0834],
    ['gwsdd 3x2', 3, 18_936.667, 0.137_922, 0.068_744, 0.567_41, 6.8015],
    ['pl 57x20', 2.244_09, 23_863.333, 0.138_83, 0.081_144, 0.283_97, 3.7628],
  ] as const;
  for (const [name, diameter, rpm, thrustCoefficient, powerCoefficient, thrust, power] of rows) {
    it(`${name}: thrust and power from its coefficients`, () => {
      const propeller = { diameter: diameter * inch, thrustCoefficient, powerCoefficient };
      const speed = rpm * perMinute;
      near(propellerThrust(propeller, speed, 1.225), thrust, 1e-3);
      near(propellerPower(propeller, speed, 1.225), power, 1e-3);
      near(torqueFactor(propeller, 1.225) * speed ** 3, power, 1e-3);
      near(speedForThrust(propeller, thrust, 1.225), speed, 1e-3);
    });
  }
});

describe('momentum theory', () => {
  it('a helicopter of 6500 lbf: 433.8 hp (spinningwing.com, momentum theory calculator; its inputs inferred)', () => {
    const [pound, foot, slug, horsepower] = [4.448_222, 0.3048, 14.593_903, 745.6999];
    const area = Math.PI * (18 * foot) ** 2;
    const power = idealPower(6500 * pound, area, (0.002_37 * slug) / foot ** 3);
    near(power / horsepower, 433.8, 5e-4);
  });

  it('a quarter kilogram on 5 inches: 21.80 W; a kilogram on four of them: 193.54 N/m² (by hand)', () => {
    near(idealPower(2.4525, Math.PI * 0.0635 ** 2, 1.225), 21.8013, 1e-4);
    near(discLoading(9.806_65, 0.127, 4), 193.54, 1e-4);
  });
});

describe('speeds of a propeller', () => {
  it('5 inches at 25 000 rpm: tips at 166.243 m/s, 0.4885 of the sound at 15 °C (by hand)', () => {
    const tip = tipSpeed(0.127, 25_000 * perMinute);
    near(tip, 166.243, 1e-4);
    near(tip / 340.294, 0.4885, 2e-4);
  });

  it('a pitch of 3.75 inches at 7440 rpm: 11.811 m/s (definition)', () => {
    near(pitchSpeed(3.75 * 0.0254, 7440 * perMinute), 11.811, 1e-4);
  });
});
