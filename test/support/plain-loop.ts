// A second reckoning of a craft's loops, as plain and slow as may be, from the textbook's definitions: nothing of
// `server/src` is imported, so that an error there can not hide here.
import { type PlausibleCraft, plain } from './plausible-craft';

export type PlainAxis = 'roll' | 'pitch' | 'yaw';

/** Motors and pack at one place. */
export interface PlainPlace {
  readonly name: string;
  readonly throttle: number;
  readonly volts: number;
  readonly speed: number;
}

const air = plain.density;
const turn = 2 * Math.PI;

function thrustOf(craft: PlausibleCraft, speed: number): number {
  return craft.thrustCoefficient * air * (speed / turn) ** 2 * craft.propeller ** 4;
}

function dragOf(craft: PlausibleCraft, speed: number): number {
  return (craft.powerCoefficient * air * (speed / turn) ** 2 * craft.propeller ** 5) / turn;
}

/** Torque that is left to speed a motor up. */
function torqueLeft(craft: PlausibleCraft, volts: number, speed: number): number {
  const current = (volts - speed / craft.speedConstant) / craft.resistance;
  return (current - craft.idleCurrent) / craft.speedConstant - dragOf(craft, speed);
}

function steadySpeed(craft: PlausibleCraft, volts: number): number {
  let [low, high] = [0, volts * craft.speedConstant];
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (torqueLeft(craft, volts, middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function currentAt(craft: PlausibleCraft, volts: number): number {
  return (volts - steadySpeed(craft, volts) / craft.speedConstant) / craft.resistance;
}

/** The pack's voltage under a throttle, by going back and forth until it stays. */
function sagged(craft: PlausibleCraft, open: number, throttle: number): number {
  let [low, high] = [0, open];
  for (let step = 0; step < 60; step += 1) {
    const volts = (low + high) / 2;
    const drawn = 4 * throttle * currentAt(craft, throttle * volts);
    if (open - craft.packResistance * drawn > volts) low = volts;
    else high = volts;
  }
  return (low + high) / 2;
}

/** The throttle at which a pack lets it hover; null: none does. */
function hoverThrottle(craft: PlausibleCraft, open: number): number | null {
  const weight = (craft.mass + craft.packMass) * plain.gravity;
  const lift = (throttle: number) =>
    4 * thrustOf(craft, steadySpeed(craft, throttle * sagged(craft, open, throttle)));
  if (lift(1) < weight) return null;
  let [low, high] = [0, 1];
  for (let step = 0; step < 40; step += 1) {
    const middle = (low + high) / 2;
    if (lift(middle) < weight) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** In the hover, midway and at 90 %, with a full pack and with one that shows its landing voltage in the hover. */
export function plainPlaces(craft: PlausibleCraft): readonly PlainPlace[] {
  const full = craft.cells * plain.full;
  const atFull = placesWith(craft, full, 'pack full');
  const landing = craft.cells * plain.landing;
  const hover = atFull[0];
  if (hover === undefined) return [];
  const speed = hover.speed;
  const current = craft.idleCurrent + craft.speedConstant * dragOf(craft, speed);
  const power = 4 * current * (speed / craft.speedConstant + craft.resistance * current);
  return [
    ...atFull,
    ...placesWith(craft, landing + (craft.packResistance * power) / landing, 'pack due to land'),
  ];
}

function placesWith(craft: PlausibleCraft, open: number, pack: string): readonly PlainPlace[] {
  const hover = hoverThrottle(craft, open);
  if (hover === null) return [];
  const throttles: (readonly [string, number])[] = [['in the hover', hover]];
  if (hover < 0.9)
    throttles.push(
      ['midway from the hover to the top', (hover + 0.9) / 2],
      ['at 90 % of the usable output', 0.9],
    );
  return throttles.map(([name, throttle]) => {
    const volts = sagged(craft, open, throttle);
    return { name: `${name}, ${pack}`, throttle, volts, speed: steadySpeed(craft, throttle * volts) };
  });
}

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
  const damping = slope(dragOf) + 1 / (craft.speedConstant ** 2 * craft.resistance);
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
  let first = 0;
  for (let step = 0; step <= points; step += 1) {
    const now = loop(bottom * (top / bottom) ** (step / points));
    const [re, im] = now;
    nearest = Math.min(nearest, Math.hypot(1 + re, im));
    if (before === null) first = Math.atan2(im, 1 + re);
    else {
      const [lastRe, lastIm] = before;
      turned += angleBetween([1 + lastRe, lastIm], [1 + re, im]);
      const [was, is] = [Math.hypot(lastRe, lastIm), Math.hypot(re, im)];
      if (was >= 1 !== is >= 1) phase = Math.min(phase, 180 - Math.abs((Math.atan2(im, re) * 180) / Math.PI));
      if (lastIm < 0 !== im < 0 && re < 0 && is < 1) gain = Math.min(gain, 1 / is);
    }
    before = now;
  }
  // From an angle of −90° for each integrator, to which the first point comes close, back to none.
  const whole = turned + (first - nearestAngle(first, (-Math.PI / 2) * integrators));
  return { isCalm: Math.abs(whole - (Math.PI / 2) * integrators) < Math.PI, nearest, phase, gain };
}

function angleBetween(from: Number2, to: Number2): number {
  const [re, im] = mul(to, [from[0], -from[1]]);
  return Math.atan2(im, re);
}

/** The angle that an exact start would have had, on the turn nearest to where the first point lies. */
function nearestAngle(angle: number, exact: number): number {
  return exact + turn * Math.round((angle - exact) / turn);
}

/** Highest point (share above the call) of a small step, with motors that are as crooked as they are. */
export function plainOvershoot(
  craft: PlausibleCraft,
  axis: PlainAxis,
  place: PlainPlace,
  inertia: number,
  call: number,
): number {
  const perSample = 8;
  const dt = 1 / craft.gyroRate / perSample;
  const round = perSample * Math.round(craft.gyroRate / craft.controlRate);
  const late = Math.round((waits(craft) - 0.5 / craft.controlRate) / dt);
  const { p, i, d } = gainsOf(craft, axis);
  const gyro = running(butterworth(craft.gyroCutoff, craft.gyroRate));
  const brake = running(butterworth(craft.derivativeCutoff, craft.controlRate));
  const commands: number[] = [];
  let [up, down] = [place.speed, place.speed];
  let [rate, held, seen, last, command, most] = [0, 0, 0, 0, 0, 0];
  for (let step = 0; step * dt < 2.5; step += 1) {
    if (step % perSample === 0) seen = gyro(rate);
    if (step % round === 0) {
      held += i * (call - seen) * round * dt;
      const braked = brake(-(seen - last) / (round * dt));
      last = seen;
      command = p * (call - seen) + held + d * braked;
    }
    commands.push(command);
    const delayed = commands[step - late] ?? 0;
    const told = Math.max(-(1 - place.throttle), Math.min(1 - place.throttle, delayed));
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
