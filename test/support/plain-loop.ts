// A second reckoning of a craft's loops, as plain and slow as may be, from the textbook's definitions: nothing of
// `server/src` is imported, so that an error there can not hide here.
import { dragOf, type PlainPlace, plainMotor, steadySpeed, thrustOf, torqueLeft } from './plain-drive';
import { type PlausibleCraft, plain } from './plausible-craft';

export type PlainAxis = 'roll' | 'pitch' | 'yaw';

const turn = 2 * Math.PI;

/** The rotors' inertia that gives the lag that the script tells, in the hover. */
export function rotorInertia(craft: PlausibleCraft): number {
  const weight = (craft.mass + craft.packMass) * plain.gravity;
  let speed = 1;
  while (4 * thrustOf(craft, speed) < weight) speed *= 1.0001;
  const step = 1e-4 * speed;
  const slope = (torqueLeft(craft, 10, speed + step) - torqueLeft(craft, 10, speed - step)) / (2 * step);
  return -craft.lag * slope;
}

const half = (craft: PlausibleCraft) => craft.spacing / 2 / Math.SQRT2;

function gainsOf(craft: PlausibleCraft, axis: PlainAxis) {
  const own = craft.gain * (axis === 'yaw' ? craft.yawGain : 1);
  return { p: own, i: own * craft.integralRate, d: own * craft.derivativeTime };
}

/** Bilinear Butterworth of second order, from the prototype's poles: b and a by hand. */
function butterworth(cutoff: number, rate: number) {
  const k = Math.tan((Math.PI * cutoff) / rate);
  const scale = 1 + Math.SQRT2 * k + k * k;
  return {
    b: [k ** 2 / scale, (2 * k ** 2) / scale, k ** 2 / scale],
    a: [1, (2 * (k * k - 1)) / scale, (1 - Math.SQRT2 * k + k * k) / scale],
  };
}

type Number2 = readonly [re: number, im: number];
const mul = ([a, b]: Number2, [c, d]: Number2): Number2 => [a * c - b * d, a * d + b * c];
const div = ([a, b]: Number2, [c, d]: Number2): Number2 => {
  const s = c * c + d * d;
  return [(a * c + b * d) / s, (b * c - a * d) / s];
};

function filtered(filter: ReturnType<typeof butterworth>, rate: number, frequency: number): Number2 {
  const sum = (coefficients: readonly number[]): Number2 => {
    let [re, im] = [0, 0];
    for (const [index, value] of coefficients.entries()) {
      re += value * Math.cos((turn * frequency * index) / rate);
      im -= value * Math.sin((turn * frequency * index) / rate);
    }
    return [re, im];
  };
  return div(sum(filter.b), sum(filter.a));
}

/** Half a sample, a round of computing, half of holding, and sixteen bits at 300 000 a second. */
function waits(craft: PlausibleCraft): number {
  return 0.5 / craft.gyroRate + 1.5 / craft.controlRate + 16 / 300_000;
}

/** The open loop at a frequency, straight from the parts. */
export function plainLoop(craft: PlausibleCraft, axis: PlainAxis, place: PlainPlace, inertia: number) {
  const step = 1e-4;
  const at = (throttle: number) => steadySpeed(craft, throttle * place.volts);
  const faster = (at(place.throttle + step) - at(place.throttle - step)) / (2 * step);
  const slope = (of: (craft: PlausibleCraft, speed: number) => number) =>
    (of(craft, place.speed * 1.0001) - of(craft, place.speed * 0.9999)) / (0.0002 * place.speed);
  const damping =
    slope(dragOf) +
    1 / (craft.speedConstant * plainMotor(craft).speedConstant * plainMotor(craft).resistance);
  const lag = inertia / damping;
  const { p, i, d } = gainsOf(craft, axis);
  const [gyro, brake] = [
    butterworth(craft.gyroCutoff, craft.gyroRate),
    butterworth(craft.derivativeCutoff, craft.controlRate),
  ];
  return (frequency: number): Number2 => {
    const w = turn * frequency;
    const [brakeRe, brakeIm] = filtered(brake, craft.controlRate, frequency);
    const control: Number2 = [p - d * w * brakeIm, d * w * brakeRe - i / w];
    const seen = filtered(gyro, craft.gyroRate, frequency);
    const wait: Number2 = [Math.cos(w * waits(craft)), -Math.sin(w * waits(craft))];
    const speed = div([faster, 0], [1, w * lag]);
    const torque: Number2 =
      axis === 'yaw'
        ? mul([4 * slope(dragOf), 4 * inertia * w], speed)
        : mul([4 * half(craft) * slope(thrustOf), 0], speed);
    const rate = div(torque, [0, craft.inertia[axis] * w]);
    return mul(mul(mul(control, seen), wait), rate);
  };
}

export interface PlainMargins {
  readonly isCalm: boolean;
  /** Least distance from −1. */
  readonly nearest: number;
  /** Hz: the crossover with the least phase. */
  readonly crossover: number;
  /** deg, least of all crossovers; and the least gain margin. */
  readonly phase: number;
  readonly gain: number;
}

const points = 3000;

/** By how far 1 + L turns on the way from 0 to the highest frequency: a quarter turn back for each integrator is calm. */
export function plainMargins(
  loop: (frequency: number) => Number2,
  top: number,
  integrators: number,
): PlainMargins {
  const bottom = 0.05;
  let [turned, nearest, phase, gain] = [0, Number.POSITIVE_INFINITY, 180, Number.POSITIVE_INFINITY];
  let before: Number2 | null = null;
  let [first, crossover] = [0, bottom];
  for (let step = 0; step <= points; step += 1) {
    const frequency = bottom * (top / bottom) ** (step / points);
    const now = loop(frequency);
    const [re, im] = now;
    nearest = Math.min(nearest, Math.hypot(1 + re, im));
    if (before === null) first = Math.atan2(im, 1 + re);
    else {
      const [lastRe, lastIm] = before;
      turned += angleBetween([1 + lastRe, lastIm], [1 + re, im]);
      const [was, is] = [Math.hypot(lastRe, lastIm), Math.hypot(re, im)];
      const left = 180 - Math.abs((Math.atan2(im, re) * 180) / Math.PI);
      if (was >= 1 !== is >= 1 && left < phase) [phase, crossover] = [left, frequency];
      if (lastIm < 0 !== im < 0 && re < 0 && is < 1) gain = Math.min(gain, 1 / is);
    }
    before = now;
  }
  // From an angle of −90° for each integrator, to which the first point comes close, back to none.
  const whole = turned + (first - nearestAngle(first, (-Math.PI / 2) * integrators));
  const isCalm = Math.abs(whole - (Math.PI / 2) * integrators) < Math.PI;
  return { isCalm, nearest, crossover, phase, gain };
}

function angleBetween(from: Number2, to: Number2): number {
  const [re, im] = mul(to, [from[0], -from[1]]);
  return Math.atan2(im, re);
}

/** The angle that an exact start would have had, on the turn nearest to where the first point lies. */
function nearestAngle(angle: number, exact: number): number {
  return exact + turn * Math.round((angle - exact) / turn);
}

/** Highest point (share above the call) of a small step in so many seconds, with motors that are as crooked as they are. */
export function plainOvershoot(
  craft: PlausibleCraft,
  axis: PlainAxis,
  place: PlainPlace,
  inertia: number,
  { call, seconds }: { readonly call: number; readonly seconds: number },
): number {
  const perSample = 8;
  const dt = 1 / craft.gyroRate / perSample;
  const round = perSample * Math.round(craft.gyroRate / craft.controlRate);
  const late = Math.round((waits(craft) - 0.5 / craft.controlRate) / dt);
  const { p, i, d } = gainsOf(craft, axis);
  const gyro = running(butterworth(craft.gyroCutoff, craft.gyroRate));
  const brake = running(butterworth(craft.derivativeCutoff, craft.controlRate));
  // Neither above full output nor below none, the two motors alike.
  const room = Math.min(1 - place.throttle, place.throttle);
  const commands: number[] = [];
  let [up, down] = [place.speed, place.speed];
  let [rate, held, seen, last, command, most] = [0, 0, 0, 0, 0, 0];
  for (let step = 0; step * dt < seconds; step += 1) {
    if (step % perSample === 0) seen = gyro(rate);
    if (step % round === 0) {
      held += i * (call - seen) * round * dt;
      const braked = brake(-(seen - last) / (round * dt));
      last = seen;
      command = p * (call - seen) + held + d * braked;
    }
    commands.push(command);
    const delayed = commands[step - late] ?? 0;
    const told = Math.max(-room, Math.min(room, delayed));
    const faster = torqueLeft(craft, (place.throttle + told) * place.volts, up) / inertia;
    const slower = torqueLeft(craft, (place.throttle - told) * place.volts, down) / inertia;
    const torque =
      axis === 'yaw'
        ? 2 * (dragOf(craft, up) + inertia * faster - dragOf(craft, down) - inertia * slower)
        : 2 * half(craft) * (thrustOf(craft, up) - thrustOf(craft, down));
    up += faster * dt;
    down += slower * dt;
    rate += (torque / craft.inertia[axis]) * dt;
    most = Math.max(most, rate / call - 1);
  }
  return most;
}

function running({ b, a }: ReturnType<typeof butterworth>) {
  const [ins, outs] = [
    [0, 0],
    [0, 0],
  ];
  return (value: number): number => {
    const [b0 = 0, b1 = 0, b2 = 0] = b;
    const [, a1 = 0, a2 = 0] = a;
    const out =
      b0 * value + b1 * (ins[0] ?? 0) + b2 * (ins[1] ?? 0) - a1 * (outs[0] ?? 0) - a2 * (outs[1] ?? 0);
    ins.unshift(value);
    ins.pop();
    outs.unshift(out);
    outs.pop();
    return out;
  };
}
