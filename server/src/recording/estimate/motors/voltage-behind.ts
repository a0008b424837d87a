import { leastSquaresOfSums } from '../../../physics/least-squares';

interface Turning {
  readonly output: Float64Array;
  readonly speed: Float64Array;
}

/** Parts of the pack's sag that come later, s. Common practice. */
const lags = [0.15, 4] as const;

/**
 * The pack's voltage as the motors' own work makes it sag. What is measured is the mean of some milliseconds, and is held
 * until the next: beside motors that answer within as many it comes late, and makes them look slower than they are. So
 * what it sags by is fitted to what the motors take (outputs times squared speeds, and times what they gain in speed),
 * looked at through the same sensor. V.
 */
export function voltageBehind(
  measured: Float64Array,
  motors: readonly Turning[],
  rate: number,
): Float64Array {
  const held = rowsHeld(measured, rate);
  if (held === 0 || motors.length === 0) return measured;
  const features = featuresOf(motors, measured.length, rate);
  const through = features.map((values) => throughSensor(values, held));
  // The first rows still remember what was before them.
  const from = Math.min(measured.length >> 2, Math.ceil(0.5 * rate));
  const sum = (one: Float64Array, other: Float64Array) => {
    let all = 0;
    for (let row = from; row < one.length; row += 1) all += (one[row] as number) * (other[row] as number);
    return all;
  };
  const fit = leastSquaresOfSums(
    through.map((one) => through.map((other) => sum(one, other))),
    through.map((one) => sum(one, measured)),
  );
  if (fit === null) return measured;
  return measured.map((_, row) =>
    features.reduce((all, values, at) => all + (fit.coefficients[at] ?? 0) * (values[row] as number), 0),
  );
}

/** Each of about the size of 1, that the sums are told apart well. */
function featuresOf(motors: readonly Turning[], count: number, rate: number): readonly Float64Array[] {
  const usual = Math.max(
    1,
    ...motors.map(({ speed }) => speed.reduce((sum, one) => sum + one, 0) / speed.length),
  );
  const over = (of: (motor: Turning, row: number) => number) =>
    Float64Array.from({ length: count }, (_, row) => motors.reduce((sum, motor) => sum + of(motor, row), 0));
  const turns = ({ speed }: Turning, row: number) => (speed[row] ?? 0) / usual;
  const gains = (motor: Turning, row: number) =>
    ((turns(motor, Math.min(count - 1, row + 1)) - turns(motor, Math.max(0, row - 1))) * rate) / 100;
  const load = over((motor, row) => (motor.output[row] ?? 0) * turns(motor, row) ** 2);
  return [
    new Float64Array(count).fill(1),
    Float64Array.from({ length: count }, (_, row) => row / count),
    load,
    over((motor, row) => turns(motor, row) ** 2),
    over((motor, row) => (motor.output[row] ?? 0) * gains(motor, row)),
    over(gains),
    ...lags.map((seconds) => behind(load, seconds * rate)),
  ];
}

function behind(values: Float64Array, rows: number): Float64Array {
  let state = values[0] ?? 0;
  return values.map((value) => {
    state += (value - state) / rows;
    return state;
  });
}

/** The mean of as many rows as a value is held, as old as it is on average while it is. */
function throughSensor(values: Float64Array, held: number): Float64Array {
  const sums = new Float64Array(values.length + 1);
  for (let row = 0; row < values.length; row += 1)
    sums[row + 1] = (sums[row] as number) + (values[row] as number);
  const half = Math.max(1, Math.round(held));
  return values.map((_, row) => {
    // From one and a half times held ago to half of it.
    const to = Math.max(1, row + 1 - Math.floor(half / 2));
    const from = Math.max(0, to - half);
    return ((sums[to] as number) - (sums[from] as number)) / (to - from);
  });
}

/** How many rows a sensor of the pack says the same. */
function rowsHeld(voltage: Float64Array, rate: number): number {
  const changes = voltage.reduce(
    (sum, value, row) => sum + (row > 0 && value !== voltage[row - 1] ? 1 : 0),
    0,
  );
  const held = changes === 0 ? 0 : voltage.length / changes;
  return held < 1.5 || held > longestHeld * rate ? 0 : Math.round(held);
}

/** Longer than this a value is not held, but the same, s. */
const longestHeld = 0.06;
