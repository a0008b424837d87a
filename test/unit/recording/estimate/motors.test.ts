import assert from 'node:assert/strict';
import { madeRecording, noise, reported } from '../../../support/made-recording';
import { near } from '../../../support/near';

interface MadeMotor {
  readonly up: number;
  readonly down: number;
  readonly rate?: number;
  readonly late?: number;
  readonly still?: boolean;
  readonly strange?: boolean;
}

/** A motor that follows what it is told with a lag, seen in rows; the throttle jumps about. */
function made({ up, down, rate = 500, late = 0, still = false, strange = false }: MadeMotor) {
  const random = noise(11);
  const fine = 8;
  let [told, speed, held] = [0.3, 400, 0];
  const past: number[] = [];
  const step = () => {
    if (held <= 0) {
      told = still ? 0.3 : Math.max(0.05, Math.min(0.9, 0.35 + 0.12 * random()));
      held = 0.02 + 0.05 * Math.abs(random());
    }
    held -= 1 / (fine * rate);
    const goal = 2000 * told ** 0.8;
    speed += (goal - speed) * (1 - Math.exp(-1 / (fine * rate) / (goal > speed ? up : down)));
    past.push(strange ? 500 + 100 * random() : speed);
  };
  return madeRecording(
    { seconds: 25, rate },
    {
      'motor.1': () => {
        for (let count = 0; count < fine; count += 1) step();
        return told;
      },
      'speed.1': () => past[past.length - 1 - Math.round(late * fine * rate)] ?? speed,
    },
  );
}

function lagOf(motor: MadeMotor) {
  const work = reported(made(motor)).motors;
  assert.ok(work.told !== null);
  return work.told[0]?.lag ?? assert.fail('no motor');
}

describe('what motors did in a recording', () => {
  it('the time constant is found, also where the speed comes some milliseconds late', () => {
    for (const [up, down, late] of [
      [0.03, 0.03, 0],
      [0.02, 0.02, 0.002],
      [0.05, 0.05, 0],
    ] as const) {
      const { told } = lagOf({ up, down, late });
      near(told?.likely ?? 0, 2000 / (1 / up + 1 / down), 0.1);
    }
  });

  it('a motor that slows down later than it quickens is told by how quickly it answers either way', () => {
    const { told } = lagOf({ up: 0.03, down: 0.045 });
    const truth = 2000 / (1 / 0.03 + 1 / 0.045);
    near(told?.likely ?? 0, truth, 0.1);
    assert.ok((told?.low ?? 99) < truth && truth < (told?.high ?? 0));
  });

  it('is withheld where nothing moved, where rows are too few, and where the speed is another’s', () => {
    const still = lagOf({ up: 0.03, down: 0.03, still: true });
    assert.ok(still.told === null && /nearly the same/.test(still.reason));
    const slow = lagOf({ up: 0.03, down: 0.03, rate: 80 });
    assert.ok(slow.told === null && /too seldom/.test(slow.reason));
    const strange = lagOf({ up: 0.03, down: 0.03, strange: true });
    assert.ok(strange.told === null && /follows from what the motor is told/.test(strange.reason));
  });

  it('one that works harder, one at its limit and the shares of the time are told', () => {
    const random = noise(4);
    const wobble = () => 0.01 * random();
    const work = reported(
      madeRecording(
        { seconds: 30, rate: 400 },
        {
          throttle: () => 0.4,
          'gyro.roll': () => 0.01 * random(),
          'motor.1': () => 0.46 + wobble(),
          'motor.2': () => 0.38 + wobble(),
          'motor.3': () => 0.38 + wobble(),
          'motor.4': (time) => (time % 10 < 1 ? 1 : 0.38 + wobble()),
        },
      ),
    ).motors;
    const [first, second, , fourth] = work.told ?? [];
    near(fourth?.atFull ?? 0, 0.1, 0.02);
    assert.equal(first?.atFull, 0);
    assert.ok((first?.harder.low ?? 0) > 6 && (second?.harder.high ?? 0) < 0);
    assert.ok(
      first !== undefined && first.lag.told === null && /how fast this motor turns/.test(first.lag.reason),
    );
  });

  it('says so where no output was logged', () => {
    const { motors } = reported(madeRecording({ seconds: 30, rate: 400 }, { throttle: () => 0.4 }));
    assert.ok(motors.told === null && /what the motors are told/.test(motors.reason));
  });
});
