import { currentLimitOfSensor, dividerLimit, dividerOutput } from '../../server/src/physics/divider';
import { near } from '../support/near';

describe('dividers and current sensors', () => {
  it('10 kohm over 1 kohm brings 16.8 V down to 1.527 V and reaches 36.3 V at 3.3 V (voltage divider rule)', () => {
    near(dividerOutput(16.8, 10e3, 1e3), 1.527273, 1e-6);
    near(dividerOutput(25.2, 10e3, 1e3), 2.290909, 1e-6);
    near(dividerLimit(3.3, 10e3, 1e3), 36.3, 1e-12);
  });

  it('a shunt of 2 milliohm at 10 A shows 20 mV, of the 320 mV that can be told at most: 160 A (TI INA219 data sheet SBOS448)', () => {
    near(currentLimitOfSensor(0.32, 2e-3), 160, 1e-12);
  });

  it('0.5 milliohm with a gain of 20 reaches 330 A at 3.3 V; an offset takes its share (ohm’s law)', () => {
    near(currentLimitOfSensor(3.3, 0.5e-3 * 20), 330, 1e-12);
    near(currentLimitOfSensor(3.3, 0.5e-3 * 20, 0.3), 300, 1e-12);
  });
});
