import assert from 'node:assert/strict';
import {
  needsForThrust,
  stateAtThrottle,
  stateForThrust,
  stateTurning,
  voltageToSpare,
} from '../../server/src/physics/drive';
import {
  coastingDamping,
  idleCurrentAt,
  motorEfficiency,
  motorTorque,
  settled,
  speedDamping,
  speedPerVolt,
  turning,
  withIdle,
} from '../../server/src/physics/motor';
import { propellerThrust, torqueFactor } from '../../server/src/physics/propeller';
import { near } from '../support/near';

const perMinute = (2 * Math.PI) / 60;
const qprop = { speedConstant: 2760 * perMinute, resistance: 0.31, idleCurrent: 0.77 };

describe('a motor with a propeller (M. Drela, QPROP 1.22, printout cam6x3, hovering)', () => {
  const speed = 14_020 * perMinute;
  const factor = 0.030_01 / speed ** 2;

  it('14 020 rpm at 0.03001 Nm take 8.007 V, 9.4439 A, 75.62 W at 0.5827', () => {
    const state = turning(qprop, speed, factor);
    near(state.current, 9.4439, 1e-3);
    near(state.voltage, 8.007, 1e-3);
    near(state.voltage * state.current, 75.62, 1e-3);
    near(motorEfficiency(qprop, state), 0.5827, 1e-3);
    near(motorTorque(qprop, state.current, speed) * speed, 44.06, 1e-3);
  });

  it('and settle there when 8.007 V are given', () => {
    near(settled(qprop, 8.007, factor).speed, speed, 1e-3);
  });

  it('at 5 m/s, 0.0288 Nm: 7.899 V, 9.0945 A, 0.5886', () => {
    const state = turning(qprop, speed, 0.0288 / speed ** 2);
    near(state.voltage, 7.899, 1e-3);
    near(state.current, 9.0945, 1e-3);
    near(motorEfficiency(qprop, state), 0.5886, 1e-3);
  });

  it('without a load at 6 V: 15 901 rpm; held still: 19.35 A (the model by hand)', () => {
    near(settled(qprop, 6, 0).speed / perMinute, 15_901.2, 1e-4);
    near(settled(qprop, 6, 1e9).current, 19.3548, 1e-3);
  });

  it('stands still where the voltage does not bear the current without a load', () => {
    assert.equal(settled(qprop, 0.1, factor).speed, 0);
  });
});

describe('a motor without a load', () => {
  it('follows in J R / K²: 6.5013 ms for a small coreless motor (its data sheet lists 6.5 ms)', () => {
    const motor = { speedConstant: 1 / Math.sqrt(4.1157e-3 * 4.12e-3), resistance: 21.2, idleCurrent: 0 };
    near(5.2e-9 / speedDamping(motor, 0, 0), 6.5013e-3, 1e-3);
  });
});

describe('the current without a load', () => {
  const idle = { current: 0.8, voltage: 10, growing: 0.5 };
  const motor = withIdle({ speedConstant: 2000 * perMinute, resistance: 0.1 }, idle);

  it('is what was measured at the voltage of the measurement: 2000 × (10 − 0.08) = 19 840 rpm, 0.8 A', () => {
    const state = settled(motor, 10, 0);
    near(state.current, 0.8, 1e-9);
    near(state.speed / perMinute, 19_840, 1e-9);
  });

  it('is less at a lower speed, down to the half that does not grow (second-order model, the half from memory)', () => {
    near(idleCurrentAt(motor, 9920 * perMinute), 0.6, 1e-9);
    near(idleCurrentAt(motor, 0), 0.4, 1e-9);
  });

  it('holds a change of speed back as well: one volt more adds what two steady states lie apart', () => {
    const [one, other] = [11.99, 12.01].map((volts) => settled(motor, volts, 1.5e-8).speed);
    const at = settled(motor, 12, 1.5e-8).speed;
    near(speedPerVolt(motor, at, 1.5e-8), ((other ?? 0) - (one ?? 0)) / 0.02, 1e-5);
  });

  it('balances the torque of a load with what is left of the current', () => {
    const state = settled(motor, 12, 1.5e-8);
    near(motorTorque(motor, state.current, state.speed), 1.5e-8 * state.speed ** 2, 1e-9);
    near(turning(motor, state.speed, 1.5e-8).voltage, 12, 1e-9);
  });
});

describe('a motor of a five-inch craft with its propeller', () => {
  it('follows in 30.32 ms at 2000 rad/s and in 34.07 ms at 1200 (J / (Kt²/R + 2 kQ Ω) by hand; measured ones: 20 to 40 ms, UZH and TU Delft parameter files)', () => {
    const motor = { speedConstant: 2400 * perMinute, resistance: 0.1, idleCurrent: 0 };
    for (const [speed, milliseconds] of [
      [2000, 30.32],
      [1200, 34.07],
    ] as const)
      near((1e3 * 6.62e-6) / speedDamping(motor, speed, 1.5e-8), milliseconds, 1e-3);
  });
});

describe('a motor that coasts down', () => {
  it('is held back in the mean of both ways: driven J/(1/(K² R) + 2 c Ω), coasting J/(2 c Ω) (the model by hand)', () => {
    const motor = { speedConstant: 2000 * perMinute, resistance: 0.1, idleCurrent: 0.8 };
    const [speed, factor, inertia] = [1200, 1.5e-8, 6.62e-6];
    const [driven, coasting] = [1 / (motor.speedConstant ** 2 * 0.1) + 3.6e-5, 3.6e-5];
    near(inertia / coastingDamping(motor, speed, factor), (inertia / driven + inertia / coasting) / 2, 1e-9);
    // Slowing down is slower than speeding up where both were identified (RotorS: 12.5 ms up, 25 ms down).
    assert.ok(inertia / coasting > 2 * (inertia / driven));
  });
});

describe('a motor on a real controller', () => {
  // Throttle, V, A, rpm, N m: a motor of 28 by 14 mm and 1200 rpm/V with a propeller that is not named.
  const rows = [
    [40, 15.1, 11.63, 8205, 0.141],
    [50, 15.03, 15.84, 9162, 0.177],
    [60, 14.95, 20.4, 9844, 0.213],
    [70, 14.85, 26, 10_630, 0.258],
    [80, 14.71, 34.78, 11_611, 0.32],
    [90, 14.54, 45.13, 12_479, 0.379],
    [100, 14.46, 49.57, 12_788, 0.402],
  ] as const;
  const motor = {
    speedConstant: 1200 * perMinute,
    resistance: 0.038,
    idleCurrent: 5.24,
    underLoad: { speedConstant: 1200 * perMinute, resistance: 0.0767 },
  };

  it('takes the watts of a bench table with one resistance, and its volts at full throttle with twice that (Seoul National University, table of a 2814 motor, fits of power and of volts)', () => {
    for (const [throttle, volts, amperes, turns, torque] of rows) {
      const speed = turns * perMinute;
      const state = turning(motor, speed, torque / speed ** 2);
      near(state.power, volts * amperes, 0.02);
      // Through the controller's hands go the pack's amperes at full throttle alone.
      if (throttle === 100) near(speed / motor.speedConstant + 0.0767 * amperes, volts, 2e-3);
    }
  });

  it('turns less into heat than the volts seem to lose, and the pack gives what it takes and no more', () => {
    const state = settled(motor, 14.46, 0.402 / (12_788 * perMinute) ** 2);
    assert.ok(state.power < state.voltage * state.current);
    near(
      motorEfficiency(motor, state) * state.power,
      motorTorque(motor, state.current, state.speed) * state.speed,
      1e-9,
    );
    near(turning(motor, state.speed, 0.402 / (12_788 * perMinute) ** 2).voltage, 14.46, 1e-9);
  });

  it('has its volts told to 0.15 V from half to full throttle by the 779 rpm/V and 0.180 ohm of four propellers (Czech Technical University, 3110 motor, fit of volts)', () => {
    // Throttle, V, A of the pack, rpm, of one of the propellers.
    const measured = [
      [0.5, 16.61, 4.19, 5313],
      [0.6, 16.53, 6.79, 6156],
      [0.7, 16.42, 10.11, 6971],
      [0.8, 16.29, 13.93, 7913],
      [0.9, 16.13, 18.83, 8348],
      [1, 15.95, 24.17, 8951],
    ] as const;
    const loaded = { ...motor, underLoad: { speedConstant: 779 * perMinute, resistance: 0.18 } };
    const missed = measured.map(([throttle, volts, amperes, turns]) => {
      const { speedConstant, resistance } = loaded.underLoad;
      return throttle * volts - (turns * perMinute) / speedConstant - (resistance * amperes) / throttle;
    });
    const rms = Math.sqrt(missed.reduce((sum, one) => sum + one ** 2, 0) / missed.length);
    assert.ok(rms < 0.15, `${rms}`);
  });
});

describe('motors on a pack', () => {
  const propeller = { diameter: 0.127, thrustCoefficient: 0.149_294, powerCoefficient: 0.094_482 };
  const motor = { speedConstant: 1950 * perMinute, resistance: 0.065, idleCurrent: 1 };
  const drive = {
    motor,
    propeller,
    count: 4,
    airDensity: 1.225,
    openVoltage: 14.8,
    sourceResistance: 1e-9,
    otherPower: 0,
    controllerLoss: 0,
  };

  it('at full throttle on 14.8 V that do not sag: 25 817 rpm, 8.808 N, 24.01 A each (the two models by hand)', () => {
    const state = stateAtThrottle(drive, 1);
    near(state.motor.speed / perMinute, 25_816.9, 1e-4);
    near(state.thrust, 8.808_44, 1e-4);
    near(state.packCurrent, 4 * 24.0087, 1e-4);
    near(state.packVoltage, 14.8, 1e-4);
  });

  it('sag by what the pack’s resistance takes from the current that it gives (ohm’s law)', () => {
    const sagging = { ...drive, sourceResistance: 0.02, otherPower: 6 };
    const state = stateAtThrottle(sagging, 0.8);
    near(state.packVoltage, 14.8 - 0.02 * state.packCurrent, 1e-6);
    near(state.packVoltage * state.packCurrent, 6 + 4 * state.motor.voltage * state.motor.current, 1e-6);
  });

  it('give at the throttle of a hover the thrust that it was looked for', () => {
    const sagging = { ...drive, sourceResistance: 0.03, otherPower: 5 };
    const hover = stateForThrust(sagging, 0.65 * 9.806_65);
    assert.ok(hover);
    const again = stateAtThrottle(sagging, hover.throttle);
    near(4 * again.thrust, 0.65 * 9.806_65, 1e-6);
    near(again.packCurrent, hover.packCurrent, 1e-6);
    near(propellerThrust(propeller, hover.motor.speed, 1.225), hover.thrust, 1e-9);
    const { load, voltage } = needsForThrust(sagging, 0.65 * 9.806_65);
    near(load.power, hover.packVoltage * hover.packCurrent, 1e-9);
    assert.equal(load.current, 0);
    near(voltage, hover.throttle * hover.packVoltage, 1e-9);
    assert.ok(torqueFactor(propeller, 1.225) > 0);
  });

  it('lose in their controllers a share of the pack’s voltage times their current (by hand), in the hover as at that throttle', () => {
    const losing = { ...drive, sourceResistance: 0.03, otherPower: 5, controllerLoss: 0.04 };
    const hover = stateForThrust(losing, 0.65 * 9.806_65);
    assert.ok(hover);
    const { motor: each, packVoltage, packCurrent } = hover;
    near(packVoltage * packCurrent, 5 + 4 * each.current * (each.voltage + 0.04 * packVoltage), 1e-9);
    near(packVoltage, 14.8 - 0.03 * packCurrent, 1e-9);
    const { load } = needsForThrust(losing, 0.65 * 9.806_65);
    near(load.power + packVoltage * load.current, packVoltage * packCurrent, 1e-9);
    near(stateAtThrottle(losing, hover.throttle).packCurrent, packCurrent, 1e-6);
  });

  it('that can not turn, and packs that break down under the electronics, still have a state (ohm’s law)', () => {
    const stuck = { ...drive, motor: { ...motor, idleCurrent: 400 }, sourceResistance: 0.02 };
    const still = stateAtThrottle(stuck, 0.5);
    assert.equal(still.motor.speed, 0);
    near(still.packVoltage, 14.8 - 0.02 * still.packCurrent, 1e-6);
    near(still.packCurrent, (4 * 0.5 * 0.5 * still.packVoltage) / 0.065, 1e-6);
    const broken = stateAtThrottle({ ...drive, sourceResistance: 10, otherPower: 20 }, 0.5);
    assert.ok(broken.packVoltage >= 0 && broken.packVoltage < 7.4, `${broken.packVoltage}`);
  });

  it('leave the pack 0.157143 V to spare with 300 W at 7 V and half throttle, of 14.8 V behind 30 mΩ (14.8 − 0.03 × 300 / 14 − 14, by hand)', () => {
    const one = { ...drive, count: 1, sourceResistance: 0.03, otherPower: 0, controllerLoss: 0 };
    const state = { speed: 2000, current: 40, voltage: 7, power: 300 };
    near(voltageToSpare(one, state, 0.5), 0.157_143, 1e-5);
    // More than 14.8² / (4 × 0.03) W it never gives, however little its voltage may be: 7.4 − 0.03 × 1900 / 7.4.
    near(voltageToSpare(one, { ...state, power: 1900 }, 1), -0.302_703, 1e-5);
  });

  it('have something to spare exactly where they have a state (a second way), whatever they turn at', () => {
    const losing = { ...drive, sourceResistance: 0.06, otherPower: 5, controllerLoss: 0.04 };
    const factor = torqueFactor(propeller, 1.225);
    let fed = 0;
    for (let speed = 50; speed < 4000; speed += 50)
      for (const throttle of [0.3, 0.6, 0.8, 1]) {
        const state = turning(motor, speed, factor);
        const found = stateTurning(losing, 1, state);
        const isFed = found !== null && found.throttle <= throttle;
        if (isFed) fed += 1;
        assert.equal(voltageToSpare(losing, state, throttle) >= 0, isFed, `${speed} at ${throttle}`);
      }
    assert.ok(fed > 50 && fed < 300, `${fed}`);
  });

  it('are told not to lift what the pack can’t feed', () => {
    assert.equal(stateForThrust({ ...drive, sourceResistance: 1 }, 30), null);
    assert.equal(stateForThrust(drive, 4 * 9), null);
  });
});
