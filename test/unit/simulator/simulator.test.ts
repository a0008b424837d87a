import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gravity, type SimulatedCraft } from '../../simulator/craft';
import { Chain } from '../../simulator/filters';
import { fly } from '../../simulator/flight';
import { hoverSpeeds } from '../../simulator/motors';
import { PackInFlight } from '../../simulator/pack';
import type { Act } from '../../simulator/pilot';
import { Random } from '../../simulator/random';
import { canFly, randomCraft } from '../../simulator/random-craft';
import type { Recorder } from '../../simulator/recorder';
import { simulated } from '../../simulator/simulated-flight';

const turn = 2 * Math.PI;

/** A craft that a seed gives, the first of them that can hover well. */
function craftOf(seed: number): SimulatedCraft {
  for (let next = seed; ; next += 1) {
    const { craft } = randomCraft(new Random(next));
    if (canFly(craft)) return craft;
  }
}

const exact: Recorder = {
  rate: 500,
  wantedLate: 0,
  outputsLate: 0,
  speedsLate: 0,
  packEvery: 0,
  jitter: 0,
  gaps: [],
  voltageNoise: 0,
  currentNoise: 0,
  currentOffset: 0,
};

const hovering: readonly Act[] = [
  { kind: 'idle', seconds: 0.5 },
  { kind: 'take-off', seconds: 3 },
  { kind: 'hover', seconds: 8 },
];

function mean(values: Float64Array, from: number): number {
  return values.subarray(from).reduce((sum, value) => sum + value, 0) / (values.length - from);
}

/** Power of what rings at a frequency (Hz), by its sine and cosine. */
function powerAt(values: Float64Array, from: number, rate: number, frequency: number): number {
  let [re, im] = [0, 0];
  for (let index = from; index < values.length; index += 1) {
    const window = Math.sin((Math.PI * (index - from)) / (values.length - from)) ** 2;
    re += values[index]! * window * Math.cos((turn * frequency * index) / rate);
    im += values[index]! * window * Math.sin((turn * frequency * index) / rate);
  }
  return re * re + im * im;
}

function loudestNear(values: Float64Array, from: number, rate: number, near: number, reach: number): number {
  let [best, most] = [0, 0];
  for (let frequency = near - reach; frequency <= near + reach; frequency += 0.05) {
    const power = powerAt(values, from, rate, frequency);
    if (power > most) [best, most] = [frequency, power];
  }
  return best;
}

describe('the simulated flight', () => {
  it('has nothing of what reads recordings', () => {
    const folder = join(__dirname, '../../simulator');
    for (const file of readdirSync(folder))
      assert.doesNotMatch(readFileSync(join(folder, file), 'utf8'), /server\/src\/recording/, file);
  });

  it('is the same flight with the same seed, and another one with another', () => {
    const craft = craftOf(3);
    const voltage = (seed: number) => simulated(craft, hovering, exact, seed).rows.columns.get('voltage')!;
    assert.deepEqual(voltage(5), voltage(5));
    assert.notDeepEqual(voltage(5), voltage(6));
  });

  it('hovers level where it is told to, with thrust that carries its weight', () => {
    const craft = craftOf(11);
    const [thrusts, heights]: number[][] = [[], []];
    const { propeller, density } = craft;
    fly({ ...craft, wind: { torque: 0.01, lift: 0, seconds: 0.3 } }, hovering, 1, (moment) => {
      if (moment.time < 5) return;
      heights!.push(moment.height);
      const each = craft.motors.map(
        ({ thrustShare }, index) =>
          thrustShare *
          propeller.thrustCoefficient *
          density *
          (moment.speeds[index]! / turn) ** 2 *
          propeller.diameter ** 4,
      );
      thrusts!.push(each.reduce((sum, one) => sum + one, 0));
    });
    const thrust = thrusts!.reduce((sum, one) => sum + one, 0) / thrusts!.length;
    assert.ok(Math.abs(thrust / (craft.mass * gravity) - 1) < 0.01, `${thrust / (craft.mass * gravity)}`);
    assert.ok(heights!.every((height) => height > 0.3 && height < 3));
  });

  it('has a pack whose terminals show open voltage less resistance times current, more after ten seconds', () => {
    const { pack } = craftOf(4);
    const load = 7;
    const flown = new PackInFlight({ ...pack, capacity: 1e9 }, 1e-3);
    const shown = [0, 1, 10].map((until) => {
      while (flown.drawn < load * until) flown.step(load);
      return (flown.open() - flown.voltage(load)) / load;
    });
    const risenAfter = (seconds: number) =>
      pack.atOnce +
      pack.quick.resistance * (1 - Math.exp(-seconds / pack.quick.seconds)) +
      pack.slow.resistance * (1 - Math.exp(-seconds / pack.slow.seconds));
    for (const [index, seconds] of [0, 1, 10].entries())
      assert.ok(Math.abs(shown[index]! / risenAfter(seconds) - 1) < 2e-3, `${seconds} s: ${shown[index]}`);
    assert.ok(risenAfter(10) / risenAfter(1) > 1.1);
  });

  it('has motors that come up with one lag and slow down with a longer one', () => {
    const craft = craftOf(8);
    const acts: readonly Act[] = [
      { kind: 'idle', seconds: 1.5 },
      { kind: 'off', seconds: 1 },
    ];
    const times: number[] = [];
    const speeds: number[] = [];
    fly(craft, acts, 1, (moment) => {
      times.push(moment.time);
      speeds.push(moment.speeds[0]!);
    });
    const idle = speeds[Math.floor(1.4 * craft.board.gyroRate)]!;
    const up = times[speeds.findIndex((speed) => speed >= (1 - Math.exp(-1)) * idle)]!;
    const stopped = times.findIndex((_, index) => times[index]! > 1.4 && speeds[index]! < 0.999 * idle);
    const down = times[speeds.findIndex((speed, index) => index > stopped && speed <= idle * Math.exp(-1))]!;
    const step = 2 / craft.board.gyroRate;
    assert.ok(Math.abs(up - craft.lag.up) < 0.02 * craft.lag.up + step, `${up} for ${craft.lag.up}`);
    const lag = down - times[stopped]!;
    assert.ok(Math.abs(lag - craft.lag.down) < 0.02 * craft.lag.down + step, `${lag} for ${craft.lag.down}`);
    assert.ok(craft.lag.down > craft.lag.up);
  });

  it('rings where its frame does, and where rows so seldom fold it to', () => {
    const strength = { roll: 0.3, pitch: 0, yaw: 0 };
    for (const [frequency, folded] of [
      [93.4, 93.4],
      [330, 170],
    ] as const) {
      const craft = craftOf(21);
      const shaking = { ...craft.shaking, frame: [{ frequency, damping: 3e-4, strength }] };
      const board = { ...craft.board, gyroRate: 2000, controlRate: 2000 };
      const { rows } = simulated({ ...craft, board, shaking }, hovering, exact, 2);
      const found = loudestNear(rows.columns.get('unfiltered.roll')!, 2500, 500, folded, 6);
      assert.ok(Math.abs(found - folded) < 0.4, `${found} for ${frequency}`);
    }
  });

  it('has a tone of each motor at its own turns, and at its blades', () => {
    const made = craftOf(31);
    const loud = made.motors.map((motor, index) => ({
      ...motor,
      shaftTone: index === 2 ? 0.4 : 0,
      bladeTone: index === 2 ? 0.4 : 0,
    }));
    const craft = {
      ...made,
      motors: loud,
      board: { ...made.board, gyroRate: 4000, controlRate: 2000 },
      wind: { torque: 0, lift: 0, seconds: 1 },
      shaking: { ...made.shaking, frame: [] },
    };
    const { rows } = simulated(craft, hovering, { ...exact, rate: 4000 }, 2);
    const turns = mean(rows.columns.get('speed.3')!, 24_000) / turn;
    const roll = rows.columns.get('unfiltered.roll')!;
    for (const order of [1, craft.propeller.blades]) {
      const found = loudestNear(roll, 24_000, 4000, order * turns, 0.03 * order * turns);
      assert.ok(Math.abs(found / turns / order - 1) < 0.01, `${found / turns} for ${order}`);
    }
    assert.ok(hoverSpeeds(craft).every((speed) => speed > 0));
  });

  it('says the truth about what its rows add up to', () => {
    const craft = { ...craftOf(41), wind: { torque: 0.01, lift: 0, seconds: 0.3 } };
    const { rows, truth } = simulated(craft, hovering, exact, 3);
    const [current, throttle] = [rows.columns.get('current')!, rows.columns.get('throttle')!];
    const charge = current.reduce((sum, one) => sum + one, 0) / 500;
    assert.ok(Math.abs(charge / truth.usedCharge - 1) < 0.005, `${charge} for ${truth.usedCharge}`);
    assert.ok(Math.abs(mean(throttle, 2500) / truth.hoverThrottle - 1) < 0.03);
    const outputs = craft.motors.map((_, index) => mean(rows.columns.get(`motor.${index + 1}`)!, 2500));
    const all = outputs.reduce((sum, one) => sum + one, 0) / outputs.length;
    for (const [index, output] of outputs.entries())
      assert.ok(Math.abs(output / all - 1 - truth.harder[index]!) < 0.01, `motor ${index + 1}`);
  });

  it('filters as its filters are called', () => {
    const rate = 2000;
    const left = (chain: Chain, frequency: number) => {
      let squares = 0;
      for (let step = 0; step < 4 * rate; step += 1) {
        const out = chain.run(0, Math.sin((turn * frequency * step) / rate));
        if (step >= 2 * rate) squares += (out * out) / rate;
      }
      return Math.sqrt(squares);
    };
    const low = () => new Chain([{ kind: 'butterworth', cutoff: 100 }], rate, 4);
    assert.ok(Math.abs(left(low(), 100) - Math.SQRT1_2) < 0.005);
    assert.ok(left(low(), 10) > 0.995 && left(low(), 400) < 0.06);
    const first = new Chain([{ kind: 'first-order', cutoff: 100 }], rate, 4);
    assert.ok(Math.abs(left(first, 100) - Math.SQRT1_2) < 0.005);
    const notch = () => new Chain([{ kind: 'notch', centre: 150, width: 20 }], rate, 4);
    assert.ok(left(notch(), 150) < 1e-3 && left(notch(), 60) > 0.98);
    const following = new Chain([{ kind: 'follow-motors', tones: 1, from: 60, width: 10 }], rate, 1);
    following.follow(Float64Array.of(turn * 200));
    assert.ok(left(following, 200) < 1e-3 && left(following, 60) > 0.98);
  });
});
