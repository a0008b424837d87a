import assert from 'node:assert/strict';
import { type Complex, sizeOf } from '../../simulator/complex';
import { unshaped } from '../../simulator/controller';
import { axes, type SimulatedCraft } from '../../simulator/craft';
import { dampingShare, fly, leverage } from '../../simulator/flight';
import { axisIndex, type Hovering, linearLoop, waitsOf } from '../../simulator/linear';
import { truthOf } from '../../simulator/loop-truth';
import type { Act } from '../../simulator/pilot';
import { Random } from '../../simulator/random';
import { canFly, randomCraft } from '../../simulator/random-craft';

/** The first craft from a seed on that can hover well, without noise, wind and unequal lags: what is linear of it. */
function quietCraft(seed: number, change: (craft: SimulatedCraft) => Partial<SimulatedCraft['board']>) {
  for (let next = seed; ; next += 1) {
    const { craft } = randomCraft(new Random(next));
    if (!canFly(craft)) continue;
    return {
      ...craft,
      lag: { up: craft.lag.up, down: craft.lag.up },
      motors: craft.motors.map((motor) => ({ ...motor, shaftTone: 0, bladeTone: 0 })),
      wind: { torque: 0, lift: 0, seconds: 1 },
      shaking: { frame: [], sensor: 0, air: 0 },
      link: { interval: 1 / craft.board.gyroRate, lost: 0, gap: 0 },
      board: { ...craft.board, ...change(craft) },
    };
  }
}

interface Swept {
  readonly wanted: Float64Array;
  readonly seen: Float64Array;
  /** Of what is asked of the mixer. */
  readonly asked: Float64Array;
  readonly hover: Hovering;
}

function swept(craft: SimulatedCraft, axis: 0 | 1 | 2): Swept {
  const acts: readonly Act[] = [
    { kind: 'idle', seconds: 0.5 },
    { kind: 'take-off', seconds: 2.5 },
    { kind: 'hover', seconds: 1 },
    { kind: 'sweep', axis, rate: 0.6, slow: 0.8, quick: 45, seconds: 24 },
  ];
  const [wanted, seen, asked]: number[][] = [[], [], []];
  const speeds = craft.motors.map(() => 0);
  let [volts, throttle, count] = [0, 0, 0];
  fly(craft, acts, 1, (moment) => {
    if (moment.time < 4) return;
    wanted!.push(moment.wanted[axis]!);
    seen!.push(moment.filtered[axis]!);
    asked!.push(
      craft.motors.reduce(
        (sum, { mix }, motor) =>
          sum + (mix[axes[axis]!] * unshaped(craft.board.shape, moment.outputs[motor]!)) / 4,
        0,
      ),
    );
    for (const [motor, speed] of moment.speeds.entries()) speeds[motor]! += speed;
    volts += moment.voltage;
    throttle += moment.throttle;
    count += 1;
  });
  return {
    wanted: Float64Array.from(wanted!),
    seen: Float64Array.from(seen!),
    asked: Float64Array.from(asked!),
    hover: { volts: volts / count, throttle: throttle / count, speeds: speeds.map((sum) => sum / count) },
  };
}

/** From one signal to another at a frequency: sums of sines over four seconds at a time, all with one window. */
function measured(from: Float64Array, to: Float64Array, rate: number, frequency: number): Complex {
  const size = 4 * rate;
  let [power, re, im] = [0, 0, 0];
  for (let start = 0; start + size <= from.length; start += size / 2) {
    const [one, other] = [from, to].map((values) => {
      let [cosine, sine] = [0, 0];
      for (let at = 0; at < size; at += 1) {
        const value = Math.sin((Math.PI * at) / size) ** 2 * values[start + at]!;
        cosine += value * Math.cos((2 * Math.PI * frequency * at) / rate);
        sine -= value * Math.sin((2 * Math.PI * frequency * at) / rate);
      }
      return { re: cosine, im: sine };
    });
    power += one!.re ** 2 + one!.im ** 2;
    re += one!.re * other!.re + one!.im * other!.im;
    im += one!.re * other!.im - one!.im * other!.re;
  }
  return { re: re / power, im: im / power };
}

function near(found: Complex, expected: Complex, what: string): void {
  const off = Math.hypot(found.re - expected.re, found.im - expected.im) / sizeOf(expected);
  assert.ok(off < 0.05, `${what}: off by ${off}`);
}

describe('the linear model of the simulated loop', () => {
  const cases: readonly (readonly [string, 'roll' | 'pitch' | 'yaw', SimulatedCraft])[] = [
    [
      'a controller that has faded, a gyro twice as quick, waiting on both ways',
      'roll',
      quietCraft(100, ({ board }) => ({
        gyroRate: 2 * board.controlRate,
        fade: { from: 0.1, proportional: 0.7, integral: 1, derivative: 0.8 },
        late: { gyro: 0.001, output: 0.002 },
        derivativeOf: 'turning',
        shape: 0,
      })),
    ],
    [
      'feedforward, derivative of the error, thrust made even',
      'pitch',
      quietCraft(300, ({ board }) => ({
        derivativeOf: 'error',
        feedforwardFilters: [{ kind: 'first-order', cutoff: 40 }],
        gains: {
          ...board.gains,
          pitch: { ...board.gains.pitch, feedforward: 0.5 * board.gains.pitch.derivative },
        },
        shape: 0.6,
      })),
    ],
    ['yaw, whose rotors turn the craft as they speed up', 'yaw', quietCraft(200, () => ({}))],
  ];
  for (const [what, axis, craft] of cases)
    it(`says what a long sweep shows: ${what}`, () => {
      const { wanted, seen, asked, hover } = swept(craft, axisIndex[axis]);
      const loop = linearLoop(craft, axisIndex[axis], hover);
      for (const frequency of [3, 8, 20]) {
        const rate = craft.board.gyroRate;
        near(measured(wanted, seen, rate, frequency), loop.closed(frequency), `answer at ${frequency} Hz`);
        const body = loop.body(frequency);
        const filtered = loop.seen(frequency);
        const both = {
          re: body.re * filtered.re - body.im * filtered.im,
          im: body.re * filtered.im + body.im * filtered.re,
        };
        near(measured(asked, seen, rate, frequency), both, `body at ${frequency} Hz`);
      }
    });

  it('waits as long as its phase says, beside lag and turning', () => {
    const craft = quietCraft(300, () => ({ late: { gyro: 0.001, output: 0.002 }, gyroFilters: [] }));
    const { volts, speeds, throttle } = swept(craft, 0).hover;
    const loop = linearLoop(craft, 0, { volts, speeds, throttle });
    const frequency = 10;
    const { re, im } = loop.body(frequency);
    const seen = loop.seen(frequency);
    const turned = Math.atan2(re * seen.im + im * seen.re, re * seen.re - im * seen.im);
    const lag = Math.atan(2 * Math.PI * frequency * craft.lag.up);
    // What brakes the craft has it turn a little less late.
    const braked = (dampingShare * leverage(craft)[0]!) / craft.inertia.roll;
    const turning = Math.atan((2 * Math.PI * frequency) / braked);
    const wait = (-turned - turning - lag) / (2 * Math.PI * frequency);
    const { plain, filters } = waitsOf(craft, frequency);
    assert.ok(Math.abs(filters) < 1e-12);
    assert.ok(Math.abs(wait - plain) < 5e-5, `${wait} for ${plain}`);
  });

  it('has the margins of a loop whose margins are known', () => {
    // ωc/s with a wait: margins of 54° and 2.5 (reference of control: 2π·20 and 5 ms), by arithmetic.
    const pulse = (frequency: number) => 2 * Math.PI * frequency;
    const open = (frequency: number): Complex => {
      const turned = -Math.PI / 2 - pulse(frequency) * 0.005;
      const size = 20 / frequency;
      return { re: size * Math.cos(turned), im: size * Math.sin(turned) };
    };
    const closed = (frequency: number): Complex => {
      const { re, im } = open(frequency);
      const square = (1 + re) ** 2 + im ** 2;
      return { re: (re * (1 + re) + im * im) / square, im: im / square };
    };
    const loop = { open, closed, body: open, seen: open, held: open, steered: open };
    const truth = truthOf(loop, 200);
    const expected = {
      bandwidth: 48.23,
      peak: 1.12197,
      halfTurn: 50,
      phaseDelay: 0.002814,
      crossover: 20,
      phaseMargin: (54 * Math.PI) / 180,
      gainMargin: 2.5,
      sensitivityPeak: 1.83206,
    };
    for (const [name, value] of Object.entries(expected)) {
      const found = truth[name as keyof typeof expected] ?? Number.NaN;
      assert.ok(Math.abs(found / value - 1) < 2e-3, `${name}: ${found} for ${value}`);
    }
  });
});
