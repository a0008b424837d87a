import type { SimulatedCraft } from './craft';
import type { Moment } from './flight';
import { Random } from './random';

/** How a board writes down what it does. */
export interface Recorder {
  /** Rows a second; every so many steps one is taken as it is, with no filter before: what is faster folds down. */
  readonly rate: number;
  /** Columns come from different moments, s: these are so much older than the gyro. */
  readonly wantedLate: number;
  readonly outputsLate: number;
  readonly speedsLate: number;
  /** Voltage and current are measured so often, s, and stay as they are meanwhile. */
  readonly packEvery: number;
  /** Deviation of the stamps, s. */
  readonly jitter: number;
  /** Rows that are missing, each from so many seconds after the start. */
  readonly gaps: readonly { readonly from: number; readonly seconds: number }[];
  /** Deviations of what the sensors of the pack say, V and A, and the current's offset. */
  readonly voltageNoise: number;
  readonly currentNoise: number;
  readonly currentOffset: number;
}

/** What has been written down; a value for each row. SI, motors from 1. */
export interface Rows {
  readonly count: number;
  readonly columns: ReadonlyMap<string, Float64Array>;
}

const axes = ['roll', 'pitch', 'yaw'] as const;

/** Takes rows out of a flight as it is flown. */
export class RowTaker {
  readonly #names: readonly string[];
  readonly #columns: Float64Array[];
  #count = 0;
  #at = 0;
  readonly #random: Random;
  readonly #every: number;
  readonly #past: Record<'wanted' | 'outputs' | 'speeds', Float64Array>[] = [];
  readonly #wantedBack: number;
  readonly #outputsBack: number;
  readonly #speedsBack: number;
  #voltage = 0;
  #current = 0;
  #measured = Number.NEGATIVE_INFINITY;
  #meanVoltage = 0;
  #meanCurrent = 0;
  #seen = 0;

  constructor(
    craft: SimulatedCraft,
    readonly recorder: Recorder,
    seed: number,
  ) {
    const { gyroRate } = craft.board;
    this.#names = [
      'time',
      ...axes.flatMap((axis) => [`gyro.${axis}`, `unfiltered.${axis}`, `wanted.${axis}`]),
      ...craft.motors.flatMap((_, index) => [`motor.${index + 1}`, `speed.${index + 1}`]),
      ...['throttle', 'voltage', 'current', 'frames', 'armed', 'upright', 'warmth'],
    ];
    this.#columns = this.#names.map(() => new Float64Array(4096));
    this.#random = new Random(seed ^ 0x5eed);
    this.#every = Math.max(1, Math.round(gyroRate / recorder.rate));
    this.#wantedBack = Math.round(recorder.wantedLate * gyroRate);
    this.#outputsBack = Math.round(recorder.outputsLate * gyroRate);
    this.#speedsBack = Math.round(recorder.speedsLate * gyroRate);
    const furthest = Math.max(this.#wantedBack, this.#outputsBack, this.#speedsBack);
    for (let back = 0; back <= furthest; back += 1)
      this.#past.push({
        wanted: new Float64Array(3),
        outputs: new Float64Array(craft.motors.length),
        speeds: new Float64Array(craft.motors.length),
      });
  }

  readonly take = (moment: Moment, step: number): void => {
    const size = this.#past.length;
    const now = this.#past[step % size]!;
    now.wanted.set(moment.wanted);
    now.outputs.set(moment.outputs);
    now.speeds.set(moment.speeds);
    this.#measure(moment);
    if (step % this.#every !== 0) return;
    const { gaps, jitter } = this.recorder;
    if (gaps.some(({ from, seconds }) => moment.time >= from && moment.time < from + seconds)) return;
    const { wanted } = this.#past[(step + size - this.#wantedBack) % size]!;
    const { outputs } = this.#past[(step + size - this.#outputsBack) % size]!;
    const { speeds } = this.#past[(step + size - this.#speedsBack) % size]!;
    this.#at = 0;
    this.#add(moment.time + jitter * Math.max(-1, Math.min(1, this.#random.normal())));
    for (let axis = 0; axis < 3; axis += 1) {
      this.#add(moment.filtered[axis]!);
      this.#add(moment.unfiltered[axis]!);
      this.#add(wanted[axis]!);
    }
    for (let motor = 0; motor < outputs.length; motor += 1) {
      this.#add(outputs[motor]!);
      this.#add(speeds[motor]!);
    }
    this.#add(moment.throttle);
    this.#add(this.#voltage);
    this.#add(this.#current);
    this.#add(moment.sinceFrame);
    this.#add(moment.isArmed ? 1 : 0);
    this.#add(moment.felt + 0.3 * this.#random.normal());
    this.#add(31 + 0.02 * moment.time);
    this.#count += 1;
  };

  /** The mean since the last time, as a sensor with a slow filter says it. */
  #measure(moment: Moment): void {
    this.#meanVoltage += moment.voltage;
    this.#meanCurrent += moment.current;
    this.#seen += 1;
    if (moment.time < this.#measured + this.recorder.packEvery) return;
    const { voltageNoise, currentNoise, currentOffset } = this.recorder;
    this.#voltage = this.#meanVoltage / this.#seen + voltageNoise * this.#random.normal();
    this.#current = this.#meanCurrent / this.#seen + currentOffset + currentNoise * this.#random.normal();
    this.#measured = moment.time;
    [this.#meanVoltage, this.#meanCurrent, this.#seen] = [0, 0, 0];
  }

  #add(value: number): void {
    let column = this.#columns[this.#at]!;
    if (this.#count >= column.length) {
      const more = new Float64Array(2 * column.length);
      more.set(column);
      this.#columns[this.#at] = more;
      column = more;
    }
    column[this.#count] = value;
    this.#at += 1;
  }

  rows(): Rows {
    const count = this.#count;
    const columns = this.#names.map(
      (name, index) => [name, this.#columns[index]!.subarray(0, count)] as const,
    );
    return { count, columns: new Map(columns) };
  }
}
