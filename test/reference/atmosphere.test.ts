import {
  airDensity,
  soundSpeed,
  standardPressure,
  standardTemperature,
} from '../../server/src/physics/atmosphere';
import { near } from '../support/near';

describe('the standard atmosphere (ISA table of the Engineering ToolBox, as published)', () => {
  const rows = [
    [-500, 291.4, 1.0748, 1.0489, 342.2],
    [500, 284.9, 0.9546, 0.9529, 338.4],
    [1000, 281.7, 0.8988, 0.9075, 336.4],
    [1500, 278.4, 0.8456, 0.8638, 334.5],
    [2000, 275.2, 0.795, 0.8217, 332.5],
    [3000, 268.7, 0.7012, 0.7423, 328.6],
    [4000, 262.2, 0.6166, 0.6689, 324.6],
  ] as const;
  for (const [height, temperature, bar, densityRatio, sound] of rows) {
    it(`at ${height} m`, () => {
      near(standardTemperature(height), temperature, 1e-3);
      near(standardPressure(height) / 1e5, bar, 1e-3);
      const density = airDensity(standardPressure(height), standardTemperature(height));
      near(density / 1.225, densityRatio, 1.2e-3);
      near(soundSpeed(standardTemperature(height)), sound, 1e-3);
    });
  }

  it('dry air at 101 325 Pa: 1.29227 kg/m³ at 0 °C, 1.22500 at 15 °C, 1.16439 at 30 °C (ideal gas law)', () => {
    near(airDensity(101_325, 273.15), 1.292_27, 1e-5);
    near(airDensity(101_325, 288.15), 1.225, 1e-5);
    near(airDensity(101_325, 303.15), 1.164_39, 1e-5);
  });
});
